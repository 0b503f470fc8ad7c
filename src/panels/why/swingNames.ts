import type { NamedSwing } from '../../store/whyState';

/** What a swing is called in lists, and at the ends of the ledger. */
export const SWING_NAMES: Readonly<Record<NamedSwing, string>> = {
  reference: 'Reference swing',
  now: 'This swing',
  ghost: 'Ghost',
};

export const swingOptions = (hasGhost: boolean): readonly { value: NamedSwing; text: string }[] =>
  (['reference', 'now', 'ghost'] as const)
    .filter((name) => hasGhost || name !== 'ghost')
    .map((value) => ({ value, text: SWING_NAMES[value] }));
