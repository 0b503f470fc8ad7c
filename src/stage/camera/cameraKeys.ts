import { rad } from '../../math/angle';
import type { StageControls } from './stageControls';

const TURN: number = rad(6);
const ZOOM = 1.12;

/**
 * Turns and zooms by key while `keyed` itself has the focus: arrows, plus and minus, Home for the whole view again, F for the whole
 * screen. Answers what to do at the end.
 */
export function listenToKeys(
  keyed: HTMLElement,
  controls: StageControls,
  onMoved: () => void,
  onHome: () => void,
  onFullScreen: () => void,
): () => void {
  const move = (act: () => unknown) => (): void => {
    act();
    onMoved();
  };
  const turn = (azimuth: number, polar: number): (() => void) => move(() => controls.rotate(azimuth, polar, true));
  const nearer = move(() => controls.zoomBy(1 / ZOOM));
  const actions: Record<string, () => void> = {
    ArrowLeft: turn(-TURN, 0),
    ArrowRight: turn(TURN, 0),
    ArrowUp: turn(0, -TURN),
    ArrowDown: turn(0, TURN),
    '+': nearer,
    '=': nearer,
    '-': move(() => controls.zoomBy(ZOOM)),
    Home: onHome,
    f: onFullScreen,
  };
  const key = (event: KeyboardEvent): void => {
    if (event.target !== keyed || event.ctrlKey || event.metaKey || event.altKey) return;
    const action = actions[event.key];
    if (!action) return;
    event.preventDefault();
    event.stopPropagation();
    action();
  };
  keyed.addEventListener('keydown', key);
  return () => keyed.removeEventListener('keydown', key);
}
