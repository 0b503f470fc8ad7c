import type { NoShot, Shot } from '../../flight/shot';
import type { Body, Player } from '../../model/body';
import { finishShare, foldForEye } from '../../model/drawnFinish';
import { createPose, placePose, type Pose, type Rig } from '../../model/chain';
import type { Club } from '../../model/club';
import { createJointVector, J, type JointId, type JointVector } from '../../model/joints';
import type { ReferenceSwing } from '../../model/keys';
import type { Curves } from '../../model/motion';
import { STILL, type Movements } from '../../model/movements';
import type { Checkpoints } from '../../reading/checkpoints';
import type { Delivery, DeliveryRule, NotDelivered } from '../../reading/delivery/delivery';
import { findGoingBack, findPositions, type Positions } from '../../reading/positions';
import { swingJoints, withMovements, type Swing } from '../../reading/swing';
import type { Bands } from '../../reading/verdicts';
import { deliverSwing, playOutSwing, readBase, type SwingBase } from '../../solving/playOut';
import { baseOf, baseOn, groundOf, type Base, type Ground, type NoGround } from './baseSwings';
import { exaggerated, toArmAngle, toBands, toMovements, toWeather } from '../document/convert';
import type { ClubChoice, Dialled, Document, SetUp } from '../document/document';
import type { DeskState } from '../desk/state';
import { bandsWithHysteresis } from './verdictHysteresis';
import { dialledOn, pairOf, type SwingOf } from './swings';

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
  /** The reference swing, read: what every dialled swing here is held against. */
  readonly base: SwingBase;
  /** How far the hands stay from where the set-up asks them to be at the top, m. */
  readonly topShortfall: number;
  readonly delivery: Delivery | NotDelivered;
  /** What the delivery makes of the ball, in the player's own frame, with a track of `TRACK_POINTS` once somebody asks for it. */
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
  /** What is drawn is the last swing found, not the one asked for: nothing is claimed of it. */
  readonly isWithheld: boolean;
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

interface Standing {
  readonly ground: Ground;
  readonly status: Derived['status'];
  readonly problem?: string;
}

let lastGround: Ground | undefined;

/** Player, club and reference to draw. While one is being found, or cannot be, the last stays. */
const stand = remember((player: Player, choice: Document['club'], _found: number): Standing => {
  const ground = groundOf(player, choice);
  if (!('problem' in ground)) {
    lastGround = ground;
    return { ground, status: 'ready' };
  }
  const { isSolving, problem } = ground;
  if (!lastGround) throw new Error(problem);
  return isSolving ? { ground: lastGround, status: 'solving' } : { ground: lastGround, status: 'failed', problem };
});

const basisOf = remember(baseOn);
const bandsOf = remember(toBands);
const shown = remember((dialled: Dialled, twice: boolean): Movements =>
  twice ? exaggerated(toMovements(dialled)) : toMovements(dialled),
);

const readReference = remember(readBase);

/** Everything that is read off a swing with nothing adapted yet. */
function readOff(dialled: Swing, base: SwingBase, armAngle: number, ball: Document['ball'], player: Player) {
  const { swing, checkpoints, delivery, shot, impliedPath } = playOutSwing(base, dialled, {
    armAngle,
    rule: ball.rule,
    weather: toWeather(ball, player),
    trackPoints: TRACK_POINTS,
  });
  return {
    swing,
    checkpoints,
    positions: findPositions(swing, checkpoints, goingBackOf(swing.rig, swing.curves, swing.reference)),
    delivery,
    shot,
    impliedPath,
    movements: swing.movements,
  };
}

const ghostOf = remember(
  (base: SwingBase, dialled: Dialled, twice: boolean, armAngle: number, rule: DeliveryRule): Swing => {
    const movements = toMovements(dialled);
    const ghost = withMovements(base.swing, twice ? exaggerated(movements) : movements);
    return deliverSwing(base, ghost, { armAngle, rule }).swing;
  },
);
/** The base of a ghost that stands on another player, club or top. */
const ghostBasis = remember((player: Player, club: ClubChoice, setUp: SetUp, _found: number): Base | NoGround =>
  baseOf({ player, club, setUp }),
);
const readGhostReference = remember(readBase);

/** The backswing's positions stay where they are while movements are dialled. */
const goingBackOf = remember((rig: Rig, curves: Curves, reference: ReferenceSwing) =>
  findGoingBack({ rig, curves, reference, movements: STILL, tempo: 1 }),
);

/** Points of the track that is drawn, evenly in time: a seventh of a second apart on a long drive. */
const TRACK_POINTS = 48;

const put = remember(
  (
    { status, problem }: Standing,
    { ground, swing: referenceSwing, topShortfall }: Base,
    read: SwingBase,
    dialled: Movements,
    trial: Swing | null,
    ghostSwing: Swing | null,
    armAngle: number,
    bands: Bands,
    ball: Document['ball'],
    isExaggerated: boolean,
    isWithheld: boolean,
  ): Derived => {
    const asDialled = trial ?? withMovements(referenceSwing, dialled);
    const readings = readOff(asDialled, read, armAngle, ball, ground.player);
    // What is shown for a moment may be another player's.
    const { body, club } = trial && trial.rig.body !== ground.body ? trial.rig : ground;
    return {
      player: ground.player,
      reference: ground.reference,
      body,
      club,
      ...readings,
      referenceSwing,
      base: read,
      ghostSwing,
      topShortfall,
      referenceCheckpoints: read.checkpoints,
      exaggerated: isExaggerated,
      bands: bandsWithHysteresis(bands, readings.checkpoints),
      exactBands: bands,
      status,
      isWithheld,
      ...(problem === undefined ? {} : { problem }),
    };
  },
);

/** The ghost of what is drawn; nothing while its own reference is still being found. */
function ghostFor(state: DeskState, solid: SwingOf, ghost: SwingOf | null, own: Base, armAngle: number): Swing | null {
  if (!ghost) return null;
  const { player, club, setUp } = ghost;
  const isOwn = player === solid.player && club === solid.club && setUp === solid.setUp;
  const base = isOwn ? own : ghostBasis(player, club, setUp, state.found);
  if ('problem' in base) return null;
  const read = (isOwn ? readReference : readGhostReference)(base.swing, armAngle);
  const dialled = dialledOn(ghost, base.swing, armAngle);
  return ghostOf(read, dialled, state.session.exaggerate, armAngle, state.document.ball.rule);
}

let lastState: DeskState | undefined;
let lastDerived: Derived;

/** What a state of the desk shows. Worked out once; asking again is free. */
export function derive(state: DeskState): Derived {
  if (state !== lastState) {
    lastDerived = workOut(state);
    lastState = state;
  }
  return lastDerived;
}

function workOut(state: DeskState): Derived {
  const { document, session, found, overdue } = state;
  const { solid, ghost } = pairOf(state);
  const standing = stand(solid.player, solid.club, found);
  const basis = basisOf(standing.ground, solid.setUp);
  const armAngle = toArmAngle(document);
  const read = readReference(basis.swing, armAngle);
  return put(
    standing,
    basis,
    read,
    shown(dialledOn(solid, basis.swing, armAngle), session.exaggerate),
    session.trial?.swing ?? null,
    ghostFor(state, solid, ghost, basis, armAngle),
    armAngle,
    bandsOf(document.bands),
    document.ball,
    session.exaggerate,
    standing.status === 'failed' || (overdue && standing.status === 'solving'),
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
  foldForEye(swing.rig, finishShare(swing.reference.times, t), pose);
  return pose;
});

/** Pose at the playhead, with what the bench changed on top. One buffer, filled anew when something changed. */
export const poseOf = (state: DeskState): Pose => place(derive(state).swing, state.session.t, state.session.bench);
