/** What the swing is set against: the smallest change that puts it on plane, the swing kept for comparison, or the reference. */
export type ComparisonId = 'plan' | 'ghost' | 'reference';
export const COMPARISON_LABELS: Readonly<Record<ComparisonId, string>> = {
  plan: 'After the change',
  ghost: 'Kept for comparison',
  reference: 'Reference',
};

/** Whether there is such a swing to set against. */
export const isThere = (id: ComparisonId, hasGhost: boolean, hasPlan: boolean): boolean =>
  id === 'reference' || (id === 'ghost' ? hasGhost : hasPlan);
