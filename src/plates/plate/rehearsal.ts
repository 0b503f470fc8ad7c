import { deg, toRad } from '../../math/angle';
import { current, desk, deriveAside } from '../../store';
import { LivePlate } from './livePlate';

/**
 * Steps of it. Browsers compile what runs often better and better, and in threads of their own, which take the processor from the
 * drag that made them: this many steps later they have little left to do.
 */
export const STEPS = 1500;
/** Steps from one end of the slider to the other and back. */
const PERIOD = 30;
/** Most that a turn of it may take, ms: a finger that comes down meanwhile does not notice. */
const TURN_MS = 12;
/** The desk must have been left alone for this long, ms. */
const ALONE_MS = 1500;
/** A plate's picture, css px. */
const SIZE = { width: 320, height: 300 };

/**
 * Drags the lead wrist to and fro on plates of its own that stand nowhere, at idle moments, so that the first real drag runs as one of
 * the later ones. Nothing of the desk changes, and nothing is drawn.
 */
export function rehearse(): void {
  if (typeof requestIdleCallback !== 'function') return;
  const gesture = { label: '', before: desk.getState().document };
  let shown = current();
  const source = { state: () => ({ ...desk.getState(), gesture }), derived: () => shown };
  const plates = (['leadArmParallel', 'shaftParallel'] as const).map((id) =>
    standIn(new LivePlate(id, PATTERNS, source)),
  );
  let step = 0;
  let seen = desk.getState();
  const wait = (): void => void setTimeout(() => requestIdleCallback(turn), ALONE_MS);
  const turn = (deadline: IdleDeadline): void => {
    const state = desk.getState();
    if (state !== seen || state.gesture) {
      seen = state;
      wait();
      return;
    }
    const end = performance.now() + Math.min(TURN_MS, deadline.timeRemaining());
    while (step < STEPS && performance.now() < end) {
      shown = deriveAside(state, toRad(deg(30 * Math.sin((step / PERIOD) * 2 * Math.PI))));
      for (const plate of plates) plate.draw();
      step++;
    }
    if (step < STEPS) requestIdleCallback(turn);
  };
  wait();
}

const PATTERNS = { hatch: '', dots: '' };

/** A plate on elements that are not on the page. */
function standIn(plate: LivePlate): LivePlate {
  for (const name of ['plate', 'word', 'reach', 'why', 'shortWhy', 'ring'] as const) {
    plate.hold(name)(document.createElement('div'));
  }
  const picture = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  plate.hold('picture')(picture);
  for (const name of ['under', 'over'] as const) {
    const group = document.createElementNS('http://www.w3.org/2000/svg', 'g');
    picture.append(group);
    plate.hold(name)(group);
  }
  plate.dress(SIZE, undefined);
  return plate;
}
