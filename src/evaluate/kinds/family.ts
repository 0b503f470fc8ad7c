import { exactOptional } from 'valibot';
import { numberIn, oneOf, type FieldsOf } from '../../checking/schemas';
import { toDeg } from '../../math/angle';
import { dialOf, DIALS } from '../../model/movements';
import { CHECKPOINTS } from '../../reading/checkpointTable';
import { withMovements } from '../../reading/swing';
import { findDifferences, readSigns, type Difference } from '../../solving/family/signs';
import { solveFamily } from '../../solving/family/family';
import type { EndName, Member } from '../../solving/family/question';
import { inCm, toCm } from '../../edge/units';
import { clubSchema, movementsSchema, playerSchema, toEdgeMovements, toMovements } from '../golfer';
import { allowSchema, armAngleSchema, faceReturnedSchema, orLineError, toArmAngle } from '../judging';
import { groundOf } from '../references';
import { toSightings, seenSchema } from './match';

/** What the camera sees, each reading with its margin, and how many of the bodies that give it are laid out. */
export const familyFields = {
  player: playerSchema,
  club: clubSchema,
  seen: seenSchema,
  count: exactOptional(numberIn(0, 1000)),
  from: exactOptional(movementsSchema),
  allow: exactOptional(allowSchema),
  range: exactOptional(oneOf(['usual', 'limits'])),
  checkpointArmDeg: exactOptional(armAngleSchema),
  faceReturned: exactOptional(faceReturnedSchema),
};

const USUAL_COUNT = 9;
/** Signs named of two members: what is plainest to see. */
const SIGNS_NAMED = 5;

/**
 * The bodies that give one picture, from one end of the widest direction to the other. `differs`: by what each is told from the member
 * with the smallest change, the plainest first; `ends.differ`: the two ends from each other.
 */
export function runFamily(line: FieldsOf<typeof familyFields>): object {
  const ground = groundOf(line.player, line.club);
  const armAngle = toArmAngle(line.checkpointArmDeg);
  const found = orLineError(() =>
    solveFamily({
      swing: ground.swing,
      seen: toSightings(line.seen),
      count: line.count ?? USUAL_COUNT,
      ...(line.from && { from: toMovements(line.from) }),
      ...(line.allow && { allow: line.allow }),
      ...(line.range && { range: line.range }),
      armAngle,
    }),
  );
  if (found.status !== 'found') {
    return { status: found.status, ...(found.readings && { closest: inCm(found.readings) }), members: [] };
  }
  const { members, smallest, ends, direction, width, deaf } = found;
  const base = ground.base(armAngle);
  const seen = members.map(({ movements }) =>
    readSigns(base, withMovements(ground.swing, movements), {
      armAngle,
      ...(line.faceReturned !== undefined && { faceReturned: line.faceReturned }),
    }),
  );
  const apart = (a: Float64Array, b: Float64Array): object[] =>
    findDifferences(a, b).slice(0, SIGNS_NAMED).map(toEdgeDifference);
  return {
    status: found.status,
    range: found.range,
    smallest,
    direction: Object.fromEntries(DIALS.map(({ field }, i) => [field, direction[i]])),
    width,
    ends: {
      names: ends.map(toEdgeEnd),
      differ: apart(seen[0], seen[seen.length - 1]),
    },
    alwaysSame: deaf.map((id) => dialOf(id).field),
    members: members.map((member, i) => ({
      ...toEdgeMember(member),
      differs: i === smallest ? [] : apart(seen[smallest], seen[i]),
    })),
  };
}

const toEdgeMember = ({ movements, readings, place, effort, isUsual }: Member): object => ({
  movements: toEdgeMovements(movements),
  readings: inCm(readings),
  place,
  effort,
  usual: isUsual,
});

const toEdgeEnd = ({ group, dial, sign }: EndName): object => ({ mostly: group, moves: dialOf(dial).field, sign });

const toEdgeDifference = ({ sign, at, change, size }: Difference): object => ({
  sign: sign.id,
  view: sign.view,
  at: at === 'ball' ? at : CHECKPOINTS[at].position,
  ...(sign.kind === 'angle' ? { deg: toDeg(change) } : { cm: toCm(change) }),
  timesNoticeable: size,
});
