import { DIALS, dialOf, STILL } from '../../model/movements';
import { toDeg } from '../../math/angle';
import { DIAL_INDEX, withDials } from '../../solving/diagnosis/judged';
import type { Shrunk } from '../../solving/rule/shrink';
import type { Change, TrialConditions } from '../../solving/rule/rule';
import { toArmAngle, toBands, toDialled, toFaceReturned } from '../document/convert';
import { PLAIN_SET_UP, STILL_DIALLED, type Document } from '../document/document';
import { change, endGesture } from '../desk/actions';
import { desk, put } from '../desk/desk';

const tidy = (value: number): number => Number(value.toFixed(4)) + 0;

/** How rules are tried: by the desk's bands, reading angle and rule for delivery. */
export const trialConditions = (document: Document): TrialConditions => ({
  bands: toBands(document.bands),
  armAngle: toArmAngle(document),
  rule: document.ball.rule,
  faceReturned: toFaceReturned(document.ball),
});

/** Puts a counterexample on the desk, as one undo step; what the rule makes of it stands beside it as ghost. */
export function loadCounterexample({ tried: { player, top, dials } }: Shrunk, changes: readonly Change[]): void {
  endGesture();
  const values = Array.from({ length: DIALS.length }, (_, i) => dials[i]);
  const after = values.slice();
  for (const { id, by } of changes) after[DIAL_INDEX[id]] += by;
  const movements = toDialled(withDials(STILL, values), STILL_DIALLED);
  change('Counterexample', (document) => ({
    ...document,
    player: { statureM: player.stature, handed: document.player.handed },
    club: {
      id: player.club,
      my: document.club.my,
      ...(player.lag !== undefined && { lagDeg: tidy(toDeg(player.lag)) }),
    },
    setUp: {
      ...PLAIN_SET_UP,
      handDepthCm: tidy(top.handDepth * 100),
      handHeightCm: tidy(top.handHeight * 100),
      turnDeg: tidy(toDeg(top.turn)),
      wristSetDeg: tidy(toDeg(top.wristSet)),
    },
    movements,
  }));
  const ghost = changes.length > 0 ? toDialled(withDials(STILL, after), STILL_DIALLED) : null;
  put({ session: { ...desk.getState().session, ghost } });
}

/** One unit of a movement that tables are told for, model units: ten degrees, ten per cent, ten milliseconds. */
export const GAIN_UNITS = {
  leadWristFlexion: 10 * dialOf('leadWristFlexion').edgeUnit,
  rotationRate: 0.1,
  rotationDelay: 10 * dialOf('rotationDelay').edgeUnit,
  trailSideBend: 5 * dialOf('trailSideBend').edgeUnit,
  pelvisShift: 5 * dialOf('pelvisShift').edgeUnit,
} as const;
