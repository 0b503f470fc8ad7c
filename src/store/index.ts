export * from './document/document';
export * from './desk/session';
export { POSITION_IDS, type PositionId, type Positions } from '../reading/positions';
export { current, currentPose, desk, jointsOf, put, subscribe, throughCameras } from './desk/desk';
export type { DeskState } from './desk/state';
export type { Derived } from './derive/derived';
export * from './desk/actions';
export * from './desk/sessionActions';
export { pause, play } from './desk/playback';
export { SITUATIONS, type SituationId } from './document/situations';
export { toMovements } from './document/convert';
export { isAnswerFirst } from './solver/answering';
export { stagePicture, type StagePicture } from './desk/stagePicture';
export { exposeProbe, noteDrawn } from './desk/probe';
export { startDesk } from './effects/bootstrap';
export { CAMERA_LIMITS, USUAL_CAMERAS, type CameraPlace } from './document/cameras';
export type { ThroughCameras } from './derive/throughCameras';
export {
  SET_UP_LIMITS,
  BALL_LIMITS,
  BAND_LIMIT_CM,
  ARM_ANGLE_LIMITS_DEG,
  FACE_RETURNED_LIMITS,
} from './document/limits';
export { useDerived, useDesk } from './react/useDesk';
export { useOverdue } from './react/useOverdue';
export { putText, useWritten } from './react/useWritten';
export type { CheckpointId } from '../reading/checkpoints';
