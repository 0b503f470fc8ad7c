/** What can be shown to others: everything here is fetched when it is asked for. */
export * from './clip/formats';
export { COMPARISON_IDS, COMPARISON_LABELS, isThere, type ComparisonId } from './task/comparisonTarget';
export { fileName, Stopped, type TaskControl, type Made, type Progress } from './task/exportTask';
export type { Arrangement, CameraId } from './clip/storyboard';
export type { ClipWish } from './clip/clipJob';
export { toAddress, toCodeAddress } from './link/link';
export { codeOf, codePath } from './picture/qrCode';
