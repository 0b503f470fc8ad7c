import { exactOptional } from 'valibot';
import { numberIn, type FieldsOf } from '../../checking/schemas';
import { toDeg } from '../../math/angle';
import { DIALS, STILL } from '../../model/movements';
import { withDials } from '../../solving/diagnosis/judged';
import { createReferenceBook } from '../../solving/rule/players';
import type { FeatureId } from '../../solving/rule/features';
import type { Shrunk } from '../../solving/rule/shrink';
import { solveRule } from '../../solving/rule/solveRule';
import type { Split } from '../../solving/rule/split';
import { ruleFields, toRule } from '../../edge/rule';
import { RULE_SEED } from '../../edge/tradeRules';
import { featureAtEdge } from '../../edge/features';
import { toCm } from '../../edge/units';
import { toEdgeMovements } from '../golfer';
import { armAngleSchema, bandsSchema, faceReturnedSchema, orLineError, toArmAngle, toBands } from '../judging';

/** A rule in its four parts, and how it is tried. */
export const ruleLineFields = {
  ...ruleFields,
  seed: exactOptional(numberIn(0, 2 ** 31 - 1)),
  trials: exactOptional(numberIn(1, 100_000)),
  bands: exactOptional(bandsSchema),
  checkpointArmDeg: exactOptional(armAngleSchema),
  faceReturned: exactOptional(faceReturnedSchema),
};

/** Cache: reference swings that were looked for, by player, club and lag. */
const book = createReferenceBook();

/**
 * How often a rule holds on swings drawn at random, by seed: held in how many of how many, the exact 95 % interval, what tells failures from
 * successes best, and the simplest swing on which it fails.
 */
export function runRule(line: FieldsOf<typeof ruleLineFields>): object {
  const { seed = RULE_SEED, trials, bands, checkpointArmDeg, faceReturned, who, when, do: change, expect } = line;
  const written = { ...(who && { who }), ...(when && { when }), ...(change && { do: change }), expect };
  const answer = orLineError(() =>
    solveRule(
      {
        of: toRule(written),
        seed: Math.round(seed),
        ...(trials !== undefined && { trials: Math.round(trials) }),
        bands: toBands(bands),
        armAngle: toArmAngle(checkpointArmDeg),
        ...(faceReturned !== undefined && { faceReturned }),
      },
      book,
    ),
  );
  const { status, tried, met, held, unread, interval, split, counterexample } = answer;
  return {
    status,
    tried,
    met,
    held,
    unread,
    ...(met > 0 && { share: held / met, interval: { ...interval, level: 0.95, method: 'Clopper-Pearson' } }),
    ...(status !== 'tried' && { message: sayTooFew(met, tried) }),
    ...(split && { split: toEdgeSplit(split) }),
    ...(counterexample && { counterexample: toEdgeCase(counterexample) }),
  };
}

const sayTooFew = (met: number, tried: number): string =>
  `Met by ${met} of ${tried} swings: too few to say. Widen what the rule asks for.`;

function toEdgeSplit({ id, threshold, side, here, elsewhere }: Split<FeatureId>): object {
  const { field, unit } = featureAtEdge(id);
  return { failsWhen: field, [side]: Math.round((threshold / unit) * 1e6) / 1e6, fails: here, otherwise: elsewhere };
}

function toEdgeCase({ tried, differs }: Shrunk): object {
  const { player, top, dials } = tried;
  const setUp = {
    handDepthCm: toCm(top.handDepth),
    handHeightCm: toCm(top.handHeight),
    turnDeg: toDeg(top.turn),
    wristSetDeg: toDeg(top.wristSet),
  };
  return {
    differs,
    player: { statureM: player.stature, ...(player.lag !== undefined && { lagDeg: toDeg(player.lag) }) },
    club: player.club,
    setUp,
    movements: toEdgeMovements(withDials(STILL, dials)),
    moved: DIALS.filter(({ id }, i) => Math.abs(dials[i] - STILL[id]) > 1e-9).map(({ field }) => field),
  };
}
