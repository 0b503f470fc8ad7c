import { DIALS, type Movements } from '../../model/movements';
import { withMovements, type Swing } from '../../reading/swing';
import { mixSwings, type Part } from '../../solving/diagnosis/contributions';
import { desk, put } from '../desk/desk';
import { stopTrial } from '../desk/sessionActions';
import type { Trial } from '../desk/whyState';

/** By the clock, s: going over, then standing at the end. Far below the five seconds anything may play by itself. */
const GOING = 1.6;
const STANDING = 1.2;

const wantsStillness = (): boolean =>
  typeof matchMedia === 'function' && matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Movements part of the way from one swing to the other. */
function between(a: Movements, b: Movements, share: number): Movements {
  const blend = (from: number, to: number): number => from + (to - from) * share;
  return {
    ...b,
    ...Object.fromEntries(DIALS.map(({ id }) => [id, blend(a[id], b[id])])),
    ...(a.pelvisRate !== undefined && b.pelvisRate !== undefined && { pelvisRate: blend(a.pelvisRate, b.pelvisRate) }),
    ...(a.pelvisDelay !== undefined &&
      b.pelvisDelay !== undefined && { pelvisDelay: blend(a.pelvisDelay, b.pelvisDelay) }),
  };
}

/** Another set-up is no movement: there is nothing in between to show, so it takes the place of the first one halfway. */
function partWay({ from, to }: { readonly from: Swing; readonly to: Swing }, share: number): Swing {
  const isOther = from.rig !== to.rig || from.curves !== to.curves;
  if (isOther && share < 0.5) return from;
  return isOther ? to : withMovements(to, between(from.movements, to.movements, share));
}

/**
 * Plays one bar of the ledger: from one swing to the other, only this part moves. By the clock; stops by itself and gives the
 * swing now back. With reduced motion the end is shown at once. The playhead stands where the reading is read.
 */
export function playPart(from: Swing, to: Swing, part: Part, at: 'P5' | 'P6' | 'P7', label: string): void {
  const end = mixSwings(from, to, [part]);
  let shown: Trial = { swing: from, label, isPlaying: true };
  let startedAtMs: number | undefined;
  put({ session: { ...desk.getState().session, held: at, playing: false, bench: null, trial: shown } });
  const tick = (nowMs: number): void => {
    // Another has taken its place, or it was stopped.
    if (desk.getState().session.trial !== shown) return;
    startedAtMs ??= nowMs;
    const elapsed = (nowMs - startedAtMs) / 1000;
    if (elapsed >= GOING + STANDING) return stopTrial();
    const share = wantsStillness() ? 1 : Math.min(1, elapsed / GOING);
    shown = { swing: partWay({ from, to: end }, share), label, isPlaying: true };
    put({ session: { ...desk.getState().session, trial: shown } });
    requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);
}
