import { CLUB_PARTS, fillPartRows } from '../figure/rigidPartShader';
import { usePose, useScene } from './sceneContext';

/** The club: posed here, drawn with the figure in the batch of solids; on its own it would cost three more draw calls. */
export function Club() {
  const { solids } = useScene();
  usePose(({ placement }) => fillPartRows(solids.rows, placement, CLUB_PARTS));
  return null;
}
