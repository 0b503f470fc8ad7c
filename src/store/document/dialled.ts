/** The dials as typed and shown: degrees, factor, milliseconds, centimetres. The stored truth, never converted back. */
export interface Dialled {
  readonly leadWristFlexionDeg: number;
  readonly rotationRate: number;
  readonly rotationDelayMs: number;
  readonly trailSideBendDeg: number;
  readonly pelvisShiftCm: number;
  /** The pelvis turning on its own; null while it follows the chest. */
  readonly pelvis: PelvisAlone | null;
}
interface PelvisAlone {
  readonly rate: number;
  readonly delayMs: number;
}
export const STILL_DIALLED: Dialled = {
  leadWristFlexionDeg: 0,
  rotationRate: 1,
  rotationDelayMs: 0,
  trailSideBendDeg: 0,
  pelvisShiftCm: 0,
  pelvis: null,
};
