import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { TRADE_RULES } from '../../src/edge/tradeRules';
import { toRule } from '../../src/edge/rule';
import { toText } from '../../src/export/link/link';
import { readRuleHash, toRuleAddress } from '../../src/export/link/ruleLink';
import { STILL } from '../../src/model/movements';
import { solveFamily } from '../../src/solving/family/family';
import type { Difference } from '../../src/solving/family/signs';
import { DEFAULT_DOCUMENT } from '../../src/store';
import { readRule } from '../../src/store/rules/keptRules';
import { sayBody, sayWhatTells, sayEnd, sayFamily } from '../../src/words/why/family';
import { gainsCsv, sayGains } from '../../src/words/why/gains';
import { sayCase, sayCount, sayRule, saySplit, sayTooFew } from '../../src/words/why/rule';
import { referenceSwing } from '../reference/solvingPlayers';

const CM = { length: 'cm' } as const;
const words = (text: string): number => text.split(/\s+/).filter(Boolean).length;

describe('words about other bodies', () => {
  test('say what two bodies differ in, from where it is seen', () => {
    const chest: Difference = {
      sign: { id: 'chestTurn', view: 'faceOn', kind: 'angle', noticeable: rad(5) },
      at: 'shaftParallel',
      change: rad(12),
      size: 2.4,
    };
    expect(sayWhatTells(chest, CM).text).toBe('Face on, shaft parallel: the chest is 12° more open');
    expect(sayWhatTells(chest, CM).spoken).toBe('Face on, shaft parallel: the chest is 12 degrees more open');
    const hands: Difference = {
      sign: { id: 'handDepth', view: 'fromAbove', kind: 'length', noticeable: 0.03 },
      at: 'leadArmParallel',
      change: -0.06,
      size: 2,
    };
    expect(sayWhatTells(hands, CM).text).toBe('From above, lead arm parallel: the hands are 6 cm farther back');
  });

  test('name an end by what it is mostly made of', () => {
    expect(sayEnd({ group: 'leadWrist', dial: 'leadWristFlexion', sign: -1 })).toBe('mostly a cupped wrist');
    expect(sayEnd({ group: 'rotation', dial: 'rotationRate', sign: 1 })).toBe('mostly more turn');
  });

  test('say on the steps of the sliders what a body moves', () => {
    expect(sayBody({ ...STILL, leadWristFlexion: rad(-8.2), rotationRate: 1.1004 }, CM)).toBe(
      'cupped 8°, 10 % more turn',
    );
    expect(sayBody(STILL, CM)).toBe('as the reference');
  });

  test('lead with at most 15 words', () => {
    const found = solveFamily({
      swing: referenceSwing(),
      seen: { leadArmParallel: { value: 0.03, plusMinus: 0.02 } },
      count: 3,
    });
    for (const isMarked of [true, false]) expect(words(sayFamily(found, isMarked))).toBeLessThanOrEqual(15);
    for (const status of ['missing', 'out-of-reach'] as const) {
      expect(words(sayFamily({ status, evaluations: 0 }, true))).toBeLessThanOrEqual(15);
    }
  });
});

describe('words about rules', () => {
  test('make a sentence of the four parts', () => {
    expect(sayRule(TRADE_RULES[0].rule)).toBe(
      'For any player, when the shaft is steep at lead arm parallel, bow the wrist 10°, expect line over the bicep at lead arm parallel falls by 1 cm or more.',
    );
    expect(
      sayRule({
        who: { statureM: { from: 1.6, to: 1.75 }, clubs: ['driver'] },
        when: [{ movement: 'rotationRate', moreThan: 1.05 }],
        expect: [{ at: 'ball', reading: 'pathDeg', lessThan: 0 }],
      }),
    ).toBe('For 1.6 to 1.75 m, driver, when body turn over 105 %, expect path at the ball under 0°.');
  });

  test('never round a share to all or to none that is not', () => {
    const count = {
      tried: 2000,
      met: 1000,
      held: 999,
      unread: 0,
      isDone: true,
      interval: { low: 0.9944, high: 0.99997 },
    };
    expect(sayCount(count)).toEqual({ text: 'Holds in 999 of 1000 swings.', interval: '99.4 to 100 %' });
  });

  test('say what fails, on which side, and how often on the other', () => {
    const split = {
      id: 'lag',
      threshold: rad(95),
      side: 'below',
      here: { n: 80, of: 100 },
      elsewhere: { n: 3, of: 900 },
    } as const;
    expect(saySplit(split)).toBe('Fails mostly when lag is under 95°: 80 of 100. Otherwise 3 of 900.');
  });

  test('say that too few are too few', () => {
    const count = { tried: 10_000, met: 12, held: 12, unread: 0, isDone: true, interval: { low: 0, high: 1 } };
    expect(sayTooFew(count)).toBe('Met by 12 of 10000 swings: too few to say.');
  });

  test('say a counterexample by what differs from the reference', () => {
    const tried = {
      player: { stature: 1.7, club: '9-iron' },
      top: { handDepth: 0.04, handHeight: 0, turn: 0, wristSet: 0 },
      dials: Float64Array.from([rad(-11), 1, 0.005, 0, 0]),
    } as const;
    expect(sayCase({ differs: 4, tried })).toBe('1.7 m, 9-iron, hands deeper 4 cm, cupped 11°, 5 ms late');
  });
});

describe('a rule in a link', () => {
  test('comes back as it was', () => {
    for (const rule of TRADE_RULES) {
      const back = readRuleHash(new URL(toRuleAddress(rule, 'https://example.org/x/#old')).hash);
      expect(back).toEqual(rule);
      if ('rule' in back!) expect(toRule(back.rule)).toEqual(toRule(rule.rule));
    }
  });

  test('that is damaged says so, and a document’s link is none', () => {
    const address = toRuleAddress(TRADE_RULES[0], 'https://example.org/');
    expect(readRuleHash(`${new URL(address).hash.slice(0, -3)}AAA`)).toEqual({ problem: 'it is damaged' });
    expect(readRuleHash(`#${toText(DEFAULT_DOCUMENT)}`)).toBeUndefined();
  });

  test('with words that no rule has is refused with the place and what is known', () => {
    expect(readRule({ name: 'x', rule: { expect: [{ at: 'top', is: 'steep' }] } })).toEqual({
      problem: expect.stringContaining('rule.expect[0].at') as string,
    });
  });
});

describe('words about who gains', () => {
  const gain = {
    stature: 1.78,
    club: '7-iron',
    leadArmParallel: -0.021,
    shaftParallel: -0.064,
    path: rad(4),
    faceLeft: rad(-5),
    faceReturned: 0,
  } as const;
  test('write one row a height and club, units in the head', () => {
    expect(gainsCsv('leadWristFlexion', [gain]).split('\r\n')).toEqual([
      'Bowing the wrist 10°, computed by the model',
      'statureM,club,bicepGapCm,headDepthCm,pathDeg,faceLeftDeg,faceReturnedDeg',
      '1.78,7-iron,-2.100,-6.400,4.000,-5.000,0.000',
    ]);
  });
  test('say whom it moves most', () => {
    const taller = { ...gain, stature: 1.93, club: 'driver', shaftParallel: -0.1 } as const;
    expect(sayGains('leadWristFlexion', [gain, taller])).toBe(
      'It moves the head at shaft parallel most for 1.93 m with the driver.',
    );
  });
});
