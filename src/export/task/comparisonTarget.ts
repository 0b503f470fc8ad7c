/** What a swing is compared with: the chosen plan, the swing kept for comparison, or the reference. In this order, the first that is there. */
export const COMPARISON_IDS = ['plan', 'ghost', 'reference'] as const;
export type ComparisonId = (typeof COMPARISON_IDS)[number];
export const COMPARISON_LABELS: Readonly<Record<ComparisonId, string>> = {
  plan: 'After the change',
  ghost: 'Kept for comparison',
  reference: 'Reference',
};

/** Whether there is such a swing to compare with. */
export const isThere = (id: ComparisonId, hasGhost: boolean, hasPlan: boolean): boolean =>
  id === 'reference' || (id === 'ghost' ? hasGhost : hasPlan);
