import { exactOptional } from 'valibot';
import { oneOf, type FieldsOf } from '../../checking/schemas';
import { toDeg } from '../../math/angle';
import { isReached } from '../../reading/checkpoints';
import type { Checkpoint, CheckpointId } from '../../reading/checkpoints';
import { verdictAt, verdictWords } from '../../reading/verdicts';
import { DELIVERY_RULES } from '../../reading/delivery/delivery';
import { playOut } from '../../solving/playOut';
import { toEdgeDelivery, toEdgeShot } from '../strike';
import { clubSchema, movementsSchema, playerSchema, setUpSchema, toMovements, toTopSetUp } from '../golfer';
import { armAngleSchema, faceReturnedSchema, toArmAngle } from '../judging';
import { groundOf, withTop, type Ground } from '../references';
import { toEdgeReadings } from '../../edge/units';

const MS_PER_S = 1000;

/** A player's reference swing with movements on top of it, read at both checkpoints. */
export const swingFields = {
  player: playerSchema,
  club: clubSchema,
  movements: exactOptional(movementsSchema),
  setUp: exactOptional(setUpSchema),
  rule: exactOptional(oneOf(DELIVERY_RULES)),
  faceReturned: exactOptional(faceReturnedSchema),
  checkpointArmDeg: exactOptional(armAngleSchema),
};

/**
 * Both checkpoints with their readings and verdicts, the delivery, and the flight on a still day at sea level. `timeMs` counts from the top of the backswing. Readings say lead and trail,
 * so they are the same for the left-handed mirror image; so are delivery and flight, in the frame of the right-handed one.
 */
export function runSwing(line: FieldsOf<typeof swingFields>): object {
  const armAngle = toArmAngle(line.checkpointArmDeg);
  const ground = groundOf(line.player, line.club);
  const base = line.setUp ? withTop(ground, toTopSetUp(line.setUp), armAngle) : ground.base(armAngle);
  const { checkpoints, delivery, shot } = playOut(base, toMovements(line.movements), {
    armAngle,
    ...(line.rule && { rule: line.rule }),
    ...(line.faceReturned !== undefined && { faceReturned: line.faceReturned }),
  });
  const answer = (id: CheckpointId): object =>
    toAnswer(checkpoints[id], base.checkpoints[id], ground, ground.swing.tempo);
  const verdict = (id: CheckpointId): string => verdictWords(id, verdictAt(id, checkpoints[id]));
  return {
    leadArmParallel: answer('leadArmParallel'),
    shaftParallel: answer('shaftParallel'),
    verdict: { leadArmParallel: verdict('leadArmParallel'), shaftParallel: verdict('shaftParallel') },
    delivery: toEdgeDelivery(delivery),
    flight: toEdgeShot(shot),
  };
}

function toAnswer(read: Checkpoint, reference: Checkpoint, { path }: Ground, tempo: number): object {
  if (!isReached(read)) return read;
  const readings = toEdgeReadings(read.readings);
  if (isReached(reference)) {
    const turned = read.readings.planeDirection - reference.readings.planeDirection;
    readings['impliedPathDeg'] = toDeg(path + turned);
  }
  return { timeMs: read.t * tempo * MS_PER_S, readings };
}
