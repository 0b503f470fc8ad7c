import type { WrittenRule } from './rule';

/** A rule with the name it is kept, listed and shared under. */
export interface NamedRule {
  readonly name: string;
  readonly rule: WrittenRule;
}

/**
 * Rules that are heard on practice tees (common practice, without a published source), put as rules that can be tried. How they come out
 * stands in `assets/tradeRules.json`, which `.config/tradeRules.ts` works out.
 */
export const TRADE_RULES: readonly NamedRule[] = [
  {
    name: 'Steep? Bow the wrist 10°',
    rule: {
      when: [{ at: 'leadArmParallel', is: 'steep' }],
      do: [{ movement: 'leadWristFlexionDeg', by: 10 }],
      expect: [{ at: 'leadArmParallel', reading: 'bicepGapCm', movesBy: -1 }],
    },
  },
  {
    name: 'A cupped wrist is a steep shaft',
    rule: {
      when: [{ movement: 'leadWristFlexionDeg', lessThan: -10 }],
      expect: [{ at: 'leadArmParallel', is: 'steep' }],
    },
  },
  {
    name: 'More turn throws the head in front',
    rule: {
      do: [{ movement: 'rotationRate', by: 0.1 }],
      expect: [{ at: 'shaftParallel', reading: 'headDepthCm', movesBy: 2 }],
    },
  },
  {
    name: 'Side bend shallows both checkpoints',
    rule: {
      do: [{ movement: 'trailSideBendDeg', by: 4 }],
      expect: [
        { at: 'leadArmParallel', reading: 'bicepGapCm', movesBy: -0.2 },
        { at: 'shaftParallel', reading: 'headDepthCm', movesBy: -2 },
      ],
    },
  },
  {
    name: 'On plane at lead arm is on plane at shaft',
    rule: {
      when: [{ at: 'leadArmParallel', is: 'on plane' }],
      expect: [{ at: 'shaftParallel', is: 'on plane' }],
    },
  },
  {
    name: 'Head in front swings out-to-in',
    rule: {
      when: [{ at: 'shaftParallel', is: 'in front' }],
      expect: [{ at: 'shaftParallel', reading: 'impliedPathDeg', lessThan: 0 }],
    },
  },
];

/** The seed that every rule is tried with. */
export const RULE_SEED = 1;
