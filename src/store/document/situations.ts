import { STILL_DIALLED, type Dialled } from './document';

export type SituationId =
  'reference' | 'cupped' | 'bent' | 'early' | 'fast' | 'overHip' | 'stuck' | 'cuppedAndFast' | 'bentAndLate';

export interface Situation {
  readonly id: SituationId;
  readonly label: string;
  readonly dialled: Dialled;
}

const dial = (id: SituationId, label: string, part: Partial<Dialled>): Situation => ({
  id,
  label,
  dialled: { ...STILL_DIALLED, ...part },
});

/** Ready-made situations: one tap shows what a coach meets every day. */
export const SITUATIONS: readonly Situation[] = [
  dial('reference', 'Reference', {}),
  dial('cupped', 'Cupped wrist', { leadWristFlexionDeg: -20 }),
  dial('bent', 'Bent too far the other way', { leadWristFlexionDeg: 24 }),
  dial('early', 'Turns too early', { rotationDelayMs: -30, rotationRate: 1.04 }),
  dial('fast', 'Turns too fast', { rotationRate: 1.2 }),
  dial('overHip', 'Leans over the front hip', { trailSideBendDeg: -6, pelvisShiftCm: 2 }),
  dial('stuck', 'Stuck behind', { rotationRate: 0.86, trailSideBendDeg: 6 }),
  dial('cuppedAndFast', 'Cupped and too fast', { leadWristFlexionDeg: -16, rotationRate: 1.08, rotationDelayMs: -12 }),
  dial('bentAndLate', 'Bowed, late and leaning back', {
    leadWristFlexionDeg: 14,
    rotationDelayMs: 16,
    trailSideBendDeg: 4,
  }),
];
