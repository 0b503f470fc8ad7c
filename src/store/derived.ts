import { findShot, type NoShot, type Shot } from '../flight/shot';
import type { Body, Player } from '../model/body';
import { createPose, createRig, placePose, type Pose } from '../model/chain';
import type { Club } from '../model/club';
import { createJointVector, J, type JointId, type JointVector } from '../model/joints';
import type { ReferenceSwing } from '../model/keys';
import { STILL, type Movements } from '../model/movements';
import { applyTopSetUp } from '../model/setUp';
import { readCheckpoints, type Checkpoints } from '../reading/checkpoints';
import {
  deliver,
  impliedPath,
  strikeOf,
  type Delivery,
  type DeliveryRule,
  type NotDelivered,
  type ReferenceStrike,
} from '../reading/delivery';
import { findPositions, type Positions } from '../reading/positions';
import { createSwing, swingJoints, withMovements, type Swing } from '../reading/swing';
import type { Bands } from '../reading/verdicts';
import { exaggerated, toArmAngle, toBands, toBodyAndClub, toMovements, toTopSetUp, toWeather } from './convert';
import type { Dialled, Document } from './document';
import { forgetFailures, referenceFor } from './references';
import type { DeskState } from './state';
import { steadyBands } from './steady';
import { pairOf } from './whyState';

/** Everything the screens draw and say, worked out once per change from the document and the session. */
export interface Derived {
  /** The player and club that are drawn: the last whose reference was found. */
  readonly player: Player;
  readonly body: Body;
  readonly club: Club;
  /** With the player's own top of the backswing. */
  readonly reference: ReferenceSwing;
  /** From shaft parallel on the arms adapt so that the head meets the ball: everything drawn or read later comes from here. */
  readonly swing: Swing;
  readonly referenceSwing: Swing;
  /** How far the hands stay from where the set-up asks them to be at the top, m. */
  readonly topShortfall: number;
  readonly delivery: Delivery | NotDelivered;
  /** What the delivery makes of the ball, in the player's own frame, with a track of `TRACK_POINTS`. */
  readonly shot: Shot | NoShot;
  /** Path at the ball if the change at shaft parallel carries through, rad, + in-to-out; null when it is not reached. */
  readonly impliedPath: number | null;
  /** The swing held for comparison. */
  readonly ghostSwing: Swing | null;
  readonly checkpoints: Checkpoints;
  readonly referenceCheckpoints: Checkpoints;
  readonly positions: Positions;
  /** What is drawn, model units: doubled when `exaggerated`. */
  readonly movements: Movements;
  readonly exaggerated: boolean;
  /** What the screens judge by: a verdict that stands on an edge of the band does not flicker. */
  readonly bands: Bands;
  /** What the solvers aim at, m. */
  readonly exactBands: Bands;
  readonly status: 'ready' | 'solving' | 'failed';
  /** What went wrong, in words, when `status` is 'failed'. */
  readonly problem?: string;
}

/** Keeps the last answer for the last arguments. */
function remember<A extends readonly unknown[], R>(work: (...args: A) => R): (...args: A) => R {
  let last: { args: A; answer: R } | undefined;
  return (...args) => {
    if (last && args.every((arg, i) => Object.is(arg, last!.args[i]))) return last.answer;
    last = { args, answer: work(...args) };
    return last.answer;
  };
}

interface Ground {
  readonly player: Player;
  readonly body: Body;
  readonly club: Club;
  readonly reference: ReferenceSwing;
}
interface Standing {
  readonly ground: Ground;
  readonly status: Derived['status'];
  readonly problem?: string;
}

let lastGround: Ground | undefined;

/** Player, club and reference to draw. While one is being found, or cannot be, the last stays. */
const stand = remember((player: Player, choice: Document['club'], _found: number): Standing => {
  let problem: string;
  try {
    const { body, club } = toBodyAndClub({ player, club: choice });
    const found = referenceFor(body, club);
    if ('reference' in found) {
      lastGround = { player, body, club, reference: found.reference };
      return { ground: lastGround, status: 'ready' };
    }
    if ('solving' in found && lastGround) return { ground: lastGround, status: 'solving' };
    if ('failed' in found) forgetFailures();
    problem = 'failed' in found ? found.failed : 'The first reference swing is still being found.';
  } catch (error) {
    problem = error instanceof Error ? error.message : String(error);
  }
  if (!lastGround) throw new Error(problem);
  return { ground: lastGround, status: 'failed', problem };
});

interface Basis {
  readonly ground: Ground;
  readonly swing: Swing;
  readonly topShortfall: number;
}
/** The reference with the player's own top and tempo, nothing dialled. */
const basisOf = remember(({ body, club, player, reference: solved }: Ground, setUp: Document['setUp']): Basis => {
  const { reference, shortfall } = applyTopSetUp(createRig(body, club), solved, toTopSetUp(setUp));
  const swing = createSwing(body, club, reference, STILL, setUp.downswingMs / 1000);
  return { ground: { player, body, club, reference }, swing, topShortfall: shortfall };
});
const bandsOf = remember(toBands);
const shown = remember((dialled: Dialled, twice: boolean): Movements =>
  twice ? exaggerated(toMovements(dialled)) : toMovements(dialled),
);

interface ReferenceRead {
  readonly checkpoints: Checkpoints;
  readonly strike: ReferenceStrike | undefined;
}
const readReference = remember((swing: Swing, armAngle: number): ReferenceRead => {
  const checkpoints = readCheckpoints(swing, armAngle);
  return { checkpoints, strike: strikeOf(swing, checkpoints) };
});

/** A swing with nothing adapted yet, read and delivered. */
function playOut(dialled: Swing, read: ReferenceRead, armAngle: number, rule: DeliveryRule) {
  const checkpoints = readCheckpoints(dialled, armAngle);
  if (!read.strike) return { checkpoints, swing: dialled, delivery: { missing: 'no-shaft-parallel' } as const };
  return { checkpoints, ...deliver(dialled, checkpoints, read.strike, rule) };
}

const ghostOf = remember(
  (
    reference: Swing,
    read: ReferenceRead,
    dialled: Dialled | null,
    twice: boolean,
    armAngle: number,
    rule: DeliveryRule,
  ): Swing | null => {
    if (!dialled) return null;
    const movements = toMovements(dialled);
    return playOut(withMovements(reference, twice ? exaggerated(movements) : movements), read, armAngle, rule).swing;
  },
);

/** Points of the track that is drawn, evenly in time: a seventh of a second apart on a long drive. */
const TRACK_POINTS = 48;

const put = remember(
  (
    { status, problem }: Standing,
    { ground, swing: referenceSwing, topShortfall }: Basis,
    read: ReferenceRead,
    dialled: Movements,
    trial: Swing | null,
    ghostSwing: Swing | null,
    armAngle: number,
    bands: Bands,
    ball: Document['ball'],
    isExaggerated: boolean,
  ): Derived => {
    const { swing, checkpoints, delivery } = playOut(
      trial ?? withMovements(referenceSwing, dialled),
      read,
      armAngle,
      ball.rule,
    );
    return {
      ...ground,
      swing,
      referenceSwing,
      ghostSwing,
      topShortfall,
      checkpoints,
      referenceCheckpoints: read.checkpoints,
      positions: findPositions(swing, checkpoints),
      delivery,
      shot: findShot(delivery, ground.club, toWeather(ball, ground.player), TRACK_POINTS),
      impliedPath: (read.strike && impliedPath(checkpoints, read.strike)) ?? null,
      movements: swing.movements,
      exaggerated: isExaggerated,
      bands: steadyBands(bands, checkpoints),
      exactBands: bands,
      status,
      ...(problem === undefined ? {} : { problem }),
    };
  },
);

/** What a state of the desk shows. Worked out once; asking again is free. */
export function derive({ document, session, found }: DeskState): Derived {
  const standing = stand(document.player, document.club, found);
  const basis = basisOf(standing.ground, document.setUp);
  const armAngle = toArmAngle(document);
  const read = readReference(basis.swing, armAngle);
  const { solid, ghost } = pairOf(session, document.movements);
  return put(
    standing,
    basis,
    read,
    shown(solid, session.exaggerate),
    session.trial?.swing ?? null,
    ghostOf(basis.swing, read, ghost, session.exaggerate, armAngle, document.ball.rule),
    armAngle,
    bandsOf(document.bands),
    document.ball,
    session.exaggerate,
  );
}

const joints = createJointVector();
const bend = remember((swing: Swing, t: number, bench: DeskState['session']['bench']): JointVector => {
  swingJoints(swing, t, joints);
  for (const id of Object.keys(bench ?? {}) as JointId[]) joints[J[id]] = bench![id]!;
  return joints;
});

/** Joints at the playhead, model units, with what the bench changed on top. One buffer, reused. */
export const jointsOf = (state: DeskState): JointVector =>
  bend(derive(state).swing, state.session.t, state.session.bench);

const pose = createPose();
const place = remember((swing: Swing, t: number, bench: DeskState['session']['bench']): Pose => {
  placePose(swing.rig, bend(swing, t, bench), pose);
  return pose;
});

/** Pose at the playhead, with what the bench changed on top. One buffer, filled anew when something changed. */
export const poseOf = (state: DeskState): Pose => place(derive(state).swing, state.session.t, state.session.bench);
