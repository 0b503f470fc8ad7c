import { deg, toRad } from '../../math/angle';
import type { Weather } from '../../flight/shot';
import { bodyOf, type Body, type Player } from '../../model/body';
import { CLUBS, clubOf, type Club, type ClubSpec } from '../../model/club';
import { DIALS, STILL, type Movements } from '../../model/movements';
import type { TopSetUp } from '../../model/setUp';
import { DEFAULT_FACE_RETURNED } from '../../reading/delivery/delivery';
import type { Bands } from '../../reading/verdicts';
import {
  dialValue,
  MY_CLUB,
  withDial,
  type BallFlight,
  type ClubChoice,
  type Dialled,
  type Document,
  type SetUp,
} from './document';

type Loose = { -readonly [id in keyof Movements]: Movements[id] };

/** What is dialled, in the model's units. */
export function toMovements(dialled: Dialled): Movements {
  const model: Loose = { ...STILL };
  for (const dial of DIALS) model[dial.id] = dialValue(dialled, dial.id) * dial.edgeUnit;
  if (dialled.pelvis) {
    model.pelvisRate = dialled.pelvis.rate;
    model.pelvisDelay = dialled.pelvis.delayMs / 1000;
  }
  return model;
}

/** Model units to the slider's, brought onto the dials' steps. What the model leaves alone stays exactly as it is. */
export function toDialled(movements: Movements, now: Dialled): Dialled {
  return DIALS.reduce((dialled, { id, edgeUnit }) => withDial(dialled, id, movements[id] / edgeUnit), now);
}

/** Twice the deviation from the reference, for showing only. */
export function exaggerated(m: Movements): Movements {
  const doubled: Loose = { ...m };
  for (const dial of DIALS) doubled[dial.id] = dial.neutral + 2 * (m[dial.id] - dial.neutral);
  if (m.pelvisRate !== undefined) doubled.pelvisRate = 1 + 2 * (m.pelvisRate - 1);
  if (m.pelvisDelay !== undefined) doubled.pelvisDelay = 2 * m.pelvisDelay;
  return doubled;
}

/** What was typed for the chosen club. */
const clubSpecOf = (choice: ClubChoice): ClubSpec =>
  choice.id === MY_CLUB ? (choice.my ?? { ...CLUBS['7-iron'], name: MY_CLUB }) : CLUBS[choice.id];

/** The club as it is held and built for the player. */
const heldAs = ({ lagDeg, lie, ...choice }: ClubChoice): ClubSpec => ({
  ...clubSpecOf(choice),
  ...(typeof lagDeg === 'number' && { lagDeg }),
  ...(lie !== undefined && { lie }),
});

/** Body and club of the document in the model's units. Throws `SetupError` for a set-up that cannot be. */
export const toBodyAndClub = (document: Pick<Document, 'player' | 'club'>): { body: Body; club: Club } => ({
  body: bodyOf(document.player),
  club: clubOf(heldAs(document.club)),
});

/** The top of the backswing in the model's units. */
export const toTopSetUp = ({ handDepthCm, handHeightCm, turnDeg, wristSetDeg }: SetUp): TopSetUp => ({
  handDepth: handDepthCm / 100,
  handHeight: handHeightCm / 100,
  turn: toRad(deg(turnDeg)),
  wristSet: toRad(deg(wristSetDeg)),
});

/** How far the face is returned, 0 (left as it comes) to 1 (square): what was set, or what is assumed. */
export const toFaceReturned = ({ faceReturned = DEFAULT_FACE_RETURNED }: BallFlight): number => faceReturned;

/** The day as the player's own frame has it: a left-handed player is the mirror image. */
export const toWeather = ({ tailWindMps, crossWindMps, altitudeM }: BallFlight, { handed }: Player): Weather => ({
  tailWind: tailWindMps,
  crossWind: crossWindMps * (handed === 'left' ? -1 : 1),
  altitude: altitudeM,
});

/** Bands in the model's metres. */
export const toBands = ({ leadArmParallel: p5, shaftParallel: p6 }: Document['bands']): Bands => ({
  leadArmParallel: { low: p5.lowCm / 100, high: p5.highCm / 100 },
  shaftParallel: { low: p6.lowCm / 100, high: p6.highCm / 100 },
});

/** Reading angle in the model's radians. */
export const toArmAngle = (document: Document): number => toRad(deg(document.checkpointArmDeg));
