import type { Body, Player } from '../model/body';
import { createPose, placePose, type Pose } from '../model/chain';
import type { Club } from '../model/club';
import { createJointVector, J, type JointId, type JointVector } from '../model/joints';
import type { ReferenceSwing } from '../model/keys';
import { STILL, type Movements } from '../model/movements';
import { readCheckpoints, type Checkpoints } from '../reading/checkpoints';
import { findPositions, type Positions } from '../reading/positions';
import { createSwing, swingJoints, withMovements, type Swing } from '../reading/swing';
import type { Bands } from '../reading/verdicts';
import { exaggerated, toArmAngle, toBands, toBodyAndClub, toMovements } from './convert';
import type { Dialled, Document } from './document';
import { forgetFailures, referenceFor } from './references';
import type { DeskState } from './state';

/** Everything the screens draw and say, worked out once per change from the document and the session. */
export interface Derived {
  /** The player and club that are drawn: the last whose reference was found. */
  readonly player: Player;
  readonly body: Body;
  readonly club: Club;
  readonly reference: ReferenceSwing;
  readonly swing: Swing;
  readonly referenceSwing: Swing;
  /** The swing held for comparison. */
  readonly ghostSwing: Swing | null;
  readonly checkpoints: Checkpoints;
  readonly referenceCheckpoints: Checkpoints;
  readonly positions: Positions;
  /** What is drawn, model units: doubled when `exaggerated`. */
  readonly movements: Movements;
  readonly exaggerated: boolean;
  readonly bands: Bands;
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

const swingOf = remember((ground: Ground, setUp: Document['setUp']): Swing =>
  createSwing(ground.body, ground.club, ground.reference, STILL, setUp.downswingMs / 1000),
);
const bandsOf = remember(toBands);
const shown = remember((dialled: Dialled, twice: boolean): Movements =>
  twice ? exaggerated(toMovements(dialled)) : toMovements(dialled),
);
const ghostOf = remember((swing: Swing, dialled: Dialled | null, twice: boolean): Swing | null =>
  dialled ? withMovements(swing, twice ? exaggerated(toMovements(dialled)) : toMovements(dialled)) : null,
);
const readReference = remember((swing: Swing, armAngle: number): Checkpoints => readCheckpoints(swing, armAngle));

const put = remember(
  (
    standing: Standing,
    referenceSwing: Swing,
    movements: Movements,
    ghostSwing: Swing | null,
    armAngle: number,
    bands: Bands,
    isExaggerated: boolean,
  ): Derived => {
    const swing = withMovements(referenceSwing, movements);
    const checkpoints = readCheckpoints(swing, armAngle);
    const { ground, status, problem } = standing;
    return {
      ...ground,
      swing,
      referenceSwing,
      ghostSwing,
      checkpoints,
      referenceCheckpoints: readReference(referenceSwing, armAngle),
      positions: findPositions(swing, checkpoints),
      movements,
      exaggerated: isExaggerated,
      bands,
      status,
      ...(problem === undefined ? {} : { problem }),
    };
  },
);

/** What a state of the desk shows. Worked out once; asking again is free. */
export function derive({ document, session, found }: DeskState): Derived {
  const standing = stand(document.player, document.club, found);
  const referenceSwing = swingOf(standing.ground, document.setUp);
  return put(
    standing,
    referenceSwing,
    shown(document.movements, session.exaggerate),
    ghostOf(referenceSwing, session.ghost, session.exaggerate),
    toArmAngle(document),
    bandsOf(document.bands),
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
