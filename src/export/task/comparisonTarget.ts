/** What the swing is set against: the smallest change that puts it on plane, the swing kept for comparison, or the reference. */
export type AfterId = 'plan' | 'ghost' | 'reference';
export const AFTER_LABELS: Readonly<Record<AfterId, string>> = {
  plan: 'After the change',
  ghost: 'Kept for comparison',
  reference: 'Reference',
};

/** Whether there is such a swing to set against. */
export const isThere = (id: AfterId, hasGhost: boolean, hasPlan: boolean): boolean =>
  id === 'reference' || (id === 'ghost' ? hasGhost : hasPlan);
