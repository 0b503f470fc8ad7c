/** What can be shown to others: everything here is fetched when it is asked for. */
export * from './formats';
export { AFTER_LABELS, type AfterId } from './after';
export { fileName, Stopped, type Companion, type Made, type Progress } from './making';
export type { Arrangement, CameraId } from './storyboard';
export type { ClipWish } from './filmJob';
export { toAddress } from './link';
export { codeOf, codePath } from './code';
