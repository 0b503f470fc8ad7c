import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { exactOptional } from 'valibot';
import { oneOf, type FieldsOf } from '../../checking/schemas';
import { toDeg } from '../../math/angle';
import { DELIVERY_RULES } from '../../reading/delivery/delivery';
import { withMovements } from '../../reading/swing';
import { solveContributions, type Shares } from '../../solving/diagnosis/contributions';
import { askLedger } from '../../solving/diagnosis/question';
import { clubSchema, movementsSchema, playerSchema, toMovements } from '../golfer';
import { armAngleSchema, toArmAngle } from '../judging';
import { groundOf } from '../references';
import { READING_FIELDS, readingBehind } from '../../edge/units';

const IMPLIED_PATH = 'impliedPathDeg';

/** The same player and club with two sets of movements, and the reading whose difference is shared out. */
export const contributionsFields = {
  player: playerSchema,
  club: clubSchema,
  from: movementsSchema,
  to: movementsSchema,
  at: oneOf(CHECKPOINT_IDS),
  reading: oneOf([...READING_FIELDS, IMPLIED_PATH]),
  checkpointArmDeg: exactOptional(armAngleSchema),
};

/** Who contributed how much: parts sum to the difference. Where a mixture has no answer: which, and what had changed in it. */
export function runContributions(line: FieldsOf<typeof contributionsFields>): object {
  const ground = groundOf(line.player, line.club);
  const armAngle = toArmAngle(line.checkpointArmDeg);
  const reading = readingBehind(line.reading);
  const toEdge = reading?.toEdge ?? toDeg;
  const ask = askLedger({
    at: line.at,
    reading: reading?.id ?? 'impliedPath',
    base: ground.base(armAngle),
    armAngle,
    rule: DELIVERY_RULES[0],
  });
  const shared = solveContributions(
    withMovements(ground.swing, toMovements(line.from)),
    withMovements(ground.swing, toMovements(line.to)),
    ask,
  );
  if ('missing' in shared) return { missing: shared.missing, gone: shared.gone };
  const shares = ({ leadWrist, rotation, sideTilt }: Shares): object => ({
    leadWrist: toEdge(leadWrist),
    rotation: toEdge(rotation),
    sideTilt: toEdge(sideTilt),
  });
  return {
    from: toEdge(shared.from),
    to: toEdge(shared.to),
    parts: shares(shared.parts),
    alone: shares(shared.alone),
    last: shares(shared.last),
  };
}
