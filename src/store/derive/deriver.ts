import type { Player } from '../../model/body';
import { createPose, placePose, type Pose, type Rig } from '../../model/chain';
import { finishShare, foldForEye } from '../../model/drawnFinish';
import { createJointVector, J, type JointId, type JointVector } from '../../model/joints';
import type { ReferenceSwing } from '../../model/keys';
import type { Curves } from '../../model/motion';
import { STILL, type Movements } from '../../model/movements';
import type { DeliveryRule } from '../../reading/delivery/delivery';
import { findGoingBack, findPositions } from '../../reading/positions';
import { swingJoints, withMovements, type Swing } from '../../reading/swing';
import { deliverSwing, playOutSwing, readBase, type SwingBase } from '../../solving/playOut';
import { exaggerated, toArmAngle, toBands, toFaceReturned, toMovements, toWeather } from '../document/convert';
import { DEFAULT_DOCUMENT, type ClubChoice, type Dialled, type Document, type SetUp } from '../document/document';
import type { DeskState } from '../desk/state';
import { createBaseSwings, type Base, type BaseSwings, type Ground } from './baseSwings';
import type { Derived } from './derived';
import { NO_REFERENCES, type References } from './references';
import { remember } from './remember';
import type { SwingOf } from '../desk/whyState';
import { dialledOn, pairOf } from './swings';
import { bandsWithHysteresis } from './verdictHysteresis';

/** Works out what states of the desk show. The answers follow from the state alone; the last ones are kept, for whoever owns it. */
export interface Deriver {
  /** Worked out once per change; asking again for the same state is free. */
  readonly derive: (state: DeskState) => Derived;
  /** Joints at the playhead, model units, with what the bench changed on top. One buffer, reused. */
  readonly jointsOf: (state: DeskState) => JointVector;
  /** Pose at the playhead, with what the bench changed on top. One buffer, filled anew when something changed. */
  readonly poseOf: (state: DeskState) => Pose;
}

/** Which swing stands on the desk, and what is said of it. */
interface Standing {
  readonly ground: Ground;
  readonly status: Derived['status'];
  readonly problem?: string;
}

/** Points of the track that is drawn, evenly in time: a seventh of a second apart on a long drive. */
const TRACK_POINTS = 48;

/** While a reference is being found, or cannot be, the last good ground stays; before there was one, that of a fresh desk. */
function standOn(
  { groundOf }: BaseSwings,
  player: Player,
  choice: ClubChoice,
  references: References,
  last: Ground | null,
): Standing {
  const ground = groundOf(player, choice, references);
  if (!('problem' in ground)) return { ground, status: 'ready' };
  const { isSolving, problem } = ground;
  const instead = last ?? groundOf(DEFAULT_DOCUMENT.player, DEFAULT_DOCUMENT.club, NO_REFERENCES);
  if ('problem' in instead) throw new Error(problem);
  return isSolving ? { ground: instead, status: 'solving' } : { ground: instead, status: 'failed', problem };
}

/** A swing that is drawn beside the solid one. */
function playGhost(
  base: SwingBase,
  dialled: Dialled,
  twice: boolean,
  armAngle: number,
  rule: DeliveryRule,
  faceReturned: number,
): Swing {
  const movements = toMovements(dialled);
  const ghost = withMovements(base.swing, twice ? exaggerated(movements) : movements);
  return deliverSwing(base, ghost, { armAngle, rule, faceReturned }).swing;
}

/** A deriver with nothing worked out yet. `bases`: shared with others whose swings are to be the same objects. */
export function createDeriver(bases: BaseSwings = createBaseSwings()): Deriver {
  const stand = remember((player: Player, choice: ClubChoice, references: References, last: Ground | null) =>
    standOn(bases, player, choice, references, last),
  );
  const basisOf = remember(bases.baseOn);
  const bandsOf = remember(toBands);
  const shown = remember((dialled: Dialled, twice: boolean): Movements =>
    twice ? exaggerated(toMovements(dialled)) : toMovements(dialled),
  );
  const readReference = remember(readBase);
  /** The backswing's positions stay where they are while movements are dialled. */
  const goingBackOf = remember((rig: Rig, curves: Curves, reference: ReferenceSwing) =>
    findGoingBack({ rig, curves, reference, movements: STILL, tempo: 1 }),
  );

  /** Everything that is read off a swing with nothing adapted yet. */
  const readOff = remember(
    (
      base: SwingBase,
      dialled: Movements,
      trial: Swing | null,
      armAngle: number,
      ball: Document['ball'],
      player: Player,
    ) => {
      const asDialled = trial ?? withMovements(base.swing, dialled);
      const { swing, checkpoints, delivery, shot, impliedPath } = playOutSwing(base, asDialled, {
        armAngle,
        rule: ball.rule,
        faceReturned: toFaceReturned(ball),
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
    },
  );
  const judgeAll = remember(bandsWithHysteresis);

  const ghostOf = remember(playGhost);
  /** Each of other bodies, played out as a ghost is. */
  const fanOf = remember(
    (
      base: SwingBase,
      fan: readonly Dialled[],
      twice: boolean,
      armAngle: number,
      ball: Document['ball'],
    ): readonly Swing[] =>
      fan.map((dialled) => playGhost(base, dialled, twice, armAngle, ball.rule, toFaceReturned(ball))),
  );
  /** The base of a ghost that stands on another player, club or top. */
  const ghostBasis = remember((player: Player, club: ClubChoice, setUp: SetUp, references: References) =>
    bases.baseOf({ player, club, setUp }, references),
  );
  const readGhostReference = remember(readBase);

  /** The ghost of what is drawn; nothing while its own reference is still being found. */
  const ghostFor = (state: DeskState, solid: SwingOf, ghost: SwingOf | null, own: Base, armAngle: number) => {
    if (!ghost) return null;
    const { player, club, setUp } = ghost;
    const isOwn = player === solid.player && club === solid.club && setUp === solid.setUp;
    const base = isOwn ? own : ghostBasis(player, club, setUp, state.references);
    if ('problem' in base) return null;
    const read = (isOwn ? readReference : readGhostReference)(base.swing, armAngle);
    const dialled = dialledOn(ghost, base.swing, armAngle);
    const { ball } = state.document;
    return ghostOf(read, dialled, state.session.exaggerate, armAngle, ball.rule, toFaceReturned(ball));
  };

  const putTogether = remember(
    (
      { ground, status, problem }: Standing,
      { ground: topped, swing: referenceSwing, topShortfall }: Base,
      base: SwingBase,
      read: ReturnType<typeof readOff>,
      judged: ReturnType<typeof bandsWithHysteresis>,
      trial: Swing | null,
      ghostSwing: Swing | null,
      fanSwings: readonly Swing[],
      exactBands: Derived['exactBands'],
      isExaggerated: boolean,
      isWithheld: boolean,
    ): Derived => {
      // What is shown for a moment may be another player's.
      const { body, club } = trial && trial.rig.body !== topped.body ? trial.rig : topped;
      return {
        player: topped.player,
        reference: topped.reference,
        ground,
        body,
        club,
        ...read,
        referenceSwing,
        base,
        ghostSwing,
        fanSwings,
        topShortfall,
        referenceCheckpoints: base.checkpoints,
        exaggerated: isExaggerated,
        ...judged,
        exactBands,
        status,
        isWithheld,
        ...(problem === undefined ? {} : { problem }),
      };
    },
  );

  const workOut = (state: DeskState): Derived => {
    const { document, session, references, lastGround, overdue } = state;
    const { solid, ghost } = pairOf(state);
    const standing = stand(solid.player, solid.club, references, lastGround);
    const basis = basisOf(standing.ground, solid.setUp);
    const armAngle = toArmAngle(document);
    const base = readReference(basis.swing, armAngle);
    const dialled = shown(dialledOn(solid, basis.swing, armAngle), session.exaggerate);
    const trial = session.trial?.swing ?? null;
    const read = readOff(base, dialled, trial, armAngle, document.ball, basis.ground.player);
    const exactBands = bandsOf(document.bands);
    return putTogether(
      standing,
      basis,
      base,
      read,
      judgeAll(exactBands, read.checkpoints, state.verdicts),
      trial,
      ghostFor(state, solid, ghost, basis, armAngle),
      fanOf(base, session.fan, session.exaggerate, armAngle, document.ball),
      exactBands,
      session.exaggerate,
      standing.status === 'failed' || (overdue && standing.status === 'solving'),
    );
  };
  const derive = remember(workOut);

  const joints = createJointVector();
  const bend = remember((swing: Swing, t: number, bench: DeskState['session']['bench']): JointVector => {
    swingJoints(swing, t, joints);
    for (const id of Object.keys(bench ?? {}) as JointId[]) joints[J[id]] = bench![id]!;
    return joints;
  });
  const pose = createPose();
  const place = remember((swing: Swing, t: number, bench: DeskState['session']['bench']): Pose => {
    placePose(swing.rig, bend(swing, t, bench), pose);
    foldForEye(swing.rig, finishShare(swing.reference.times, t), pose);
    return pose;
  });

  return {
    derive,
    jointsOf: (state) => bend(derive(state).swing, state.session.t, state.session.bench),
    poseOf: (state) => place(derive(state).swing, state.session.t, state.session.bench),
  };
}
