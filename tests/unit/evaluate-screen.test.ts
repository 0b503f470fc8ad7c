import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { USUAL_GIVE_CM, type Seen } from '../../src/store/document/sighting';
import { answerLine } from '../../src/evaluate/answer';
import { toDeg } from '../../src/math/angle';
import { DIALS, type MovementId } from '../../src/model/movements';
import type { Part } from '../../src/solving/diagnosis/contributions';
import type { Answer } from '../../src/solving/diagnosis/solverJobs';
import { desk, put, setDrawer, STILL_DIALLED, type Dialled, type Document } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { setWhy } from '../../src/store/desk/whyActions';
import type { LedgerReading } from '../../src/store/desk/whyState';
import { ledgerOf } from '../../src/store/desk/ledger';
import { startEffects } from '../../src/store/effects/startEffects';
import { askedNow, solverClient } from '../../src/store/solver/solverClient';
import './searchHere';

// The same player, club and swing asked for in both places: what the drawers show, and what a line of `evaluate` prints.

interface Case {
  readonly name: string;
  readonly player: Document['player'];
  readonly club: Exclude<Document['club']['id'], 'my club'>;
  readonly dialled: Partial<Dialled>;
  /** Absent: the model's own. */
  readonly faceReturned?: number;
}
const CASES: readonly Case[] = [
  {
    name: 'cupped and fast, 7-iron',
    player: { statureM: 1.78, handed: 'right' },
    club: '7-iron',
    dialled: { leadWristFlexionDeg: -16, rotationRate: 1.06 },
  },
  {
    name: 'bowed, late and leaning, tall with a driver',
    player: { statureM: 1.9, handed: 'right' },
    club: 'driver',
    dialled: { leadWristFlexionDeg: 14, rotationDelayMs: 40, trailSideBendDeg: 8 },
    faceReturned: 0.2,
  },
  {
    name: 'early and shifted, short and left-handed with a wedge',
    player: { statureM: 1.62, handed: 'left' },
    club: 'pitching wedge',
    dialled: { rotationDelayMs: -40, pelvisShiftCm: 4, leadWristFlexionDeg: -6 },
    faceReturned: 1,
  },
];

const FIELDS = DIALS.map(({ field, edgeUnit, id }) => ({ field, edgeUnit, id }));
/** What a drawer prints of movements: in the sliders' units. */
const toEdge = (movements: Readonly<Record<MovementId, number>>): object =>
  Object.fromEntries(FIELDS.map(({ field, edgeUnit, id }) => [field, digits(movements[id] / edgeUnit)]));
/** More digits than any screen prints, fewer than the unit's own rounding. */
const digits = (value: number): number => Number(value.toFixed(9)) + 0;
const printed = (values: Readonly<Record<string, number>>): object =>
  Object.fromEntries(Object.entries(values).map(([key, value]) => [key, digits(value)]));
const cm = ({ leadArmParallel, shaftParallel }: { leadArmParallel: number; shaftParallel: number }): object => ({
  bicepGapCm: digits(leadArmParallel * 100),
  headDepthCm: digits(shaftParallel * 100),
});

type Numbers = Readonly<Record<string, number>>;
interface Way {
  readonly uses: readonly string[];
  readonly status: string;
  readonly movements: Numbers;
  readonly change: Numbers;
  readonly readings: Numbers;
  readonly short: Numbers;
  readonly effort: number;
  readonly misfit: number;
  readonly sideEffects: {
    readonly missing?: string;
    readonly pathDeg: number;
    readonly faceDeg: number;
    readonly flight: { readonly missing?: string; readonly carryM: number };
  };
  readonly exact: { readonly movements: Numbers; readonly effort: number };
}
interface Line {
  readonly status: string;
  readonly plans: readonly Way[];
  readonly explanations: readonly Way[];
  readonly from: number;
  readonly to: number;
  readonly parts: Numbers;
  readonly alone: Numbers;
  readonly last: Numbers;
}
function evaluate(line: object): Line {
  const { text, failed } = answerLine({ number: 1, text: JSON.stringify(line) });
  if (failed) throw new Error(text);
  return JSON.parse(text) as Line;
}
function asked<K extends Answer['kind']>(kind: K): Extract<Answer, { kind: K }> {
  const { answer } = askedNow();
  if (answer?.kind !== kind) throw new Error(`no ${kind} but ${JSON.stringify(answer)}`);
  return answer as Extract<Answer, { kind: K }>;
}
function lay({ player, club, dialled, faceReturned }: Case): void {
  const { document } = desk.getState();
  const ball = { ...document.ball, ...(faceReturned !== undefined && { faceReturned }) };
  put({
    document: { ...document, player, club: { id: club, my: null }, movements: { ...STILL_DIALLED, ...dialled }, ball },
  });
}
/** The reference stays as it is on a line: a dial that is left out. */
const onLine = ({ player, club, dialled, faceReturned }: Case): object => ({
  player,
  club,
  now: dialled,
  faceReturned,
});

startEffects();
solverClient.follow();
beforeEach(clearDesk);
afterEach(() => {
  setDrawer(null);
  clearDesk();
});

describe.each(CASES)('$name: a line answers what the drawer shows', (one) => {
  const { player, club, dialled } = one;
  const who = { player, club };

  test.each(['edge', 'inside'] as const)('plans that aim at the %s of a band', (aim) => {
    lay(one);
    setWhy({ aim });
    setDrawer('plan');
    const screen = asked('plan');
    const line = evaluate({ kind: 'plan', ...onLine(one), ...(aim === 'inside' && { marginCm: USUAL_GIVE_CM }) });
    expect(line.status).toBe(screen.status);
    expect(screen.plans.length).toBeGreaterThan(1);
    expect(
      line.plans.map((plan) => ({
        uses: plan.uses,
        status: plan.status,
        movements: printed(plan.movements),
        change: printed(plan.change),
        readings: printed(plan.readings),
        short: printed(plan.short),
        effort: digits(plan.effort),
        path: plan.sideEffects.missing ?? digits(plan.sideEffects.pathDeg),
        face: plan.sideEffects.missing ?? digits(plan.sideEffects.faceDeg),
        carry: plan.sideEffects.missing ?? plan.sideEffects.flight.missing ?? digits(plan.sideEffects.flight.carryM),
      })),
    ).toEqual(
      screen.plans.map(({ uses, status, movements, change, readings, short, effort, effects }) => ({
        uses,
        status,
        movements: toEdge(movements),
        change: toEdge(change),
        readings: cm(readings),
        short: cm(short),
        effort: digits(effort),
        path: 'missing' in effects.delivery ? effects.delivery.missing : digits(toDeg(effects.delivery.path)),
        face: 'missing' in effects.delivery ? effects.delivery.missing : digits(toDeg(effects.delivery.face)),
        carry: 'missing' in effects.shot ? effects.shot.missing : digits(effects.shot.flight.carryM),
      })),
    );
  });

  test('every plan stands on the steps of the dials, near the exact one', () => {
    const { plans } = evaluate({ kind: 'plan', ...onLine(one) });
    for (const plan of plans) {
      for (const { id, field } of FIELDS) {
        const { step, edgeUnit } = DIALS.find((dial) => dial.id === id)!;
        const steps = plan.movements[field] / (step / edgeUnit);
        expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-6);
        // Two steps to each side are looked at.
        expect(Math.abs(plan.movements[field] - plan.exact.movements[field])).toBeLessThan((2.001 * step) / edgeUnit);
      }
    }
  });

  test('explanations of what was seen', () => {
    lay(one);
    const seen: Seen = {
      leadArmParallel: { cm: 3.2, plusMinusCm: 1, from: 'eye' },
      shaftParallel: { cm: 4, plusMinusCm: 3, from: 'eye' },
    };
    put({ document: { ...desk.getState().document, seen } });
    setDrawer('seen');
    const { explanations } = asked('match');
    const line = evaluate({
      kind: 'match',
      ...who,
      seen: {
        leadArmParallel: { bicepGapCm: 3.2, plusMinusCm: 1 },
        shaftParallel: { headDepthCm: 4, plusMinusCm: 3 },
      },
    });
    expect(explanations.length).toBeGreaterThan(3);
    expect(
      line.explanations.map(({ uses, status, movements, readings, misfit, effort }) => ({
        uses,
        status,
        movements: printed(movements),
        readings: printed(readings),
        misfit: digits(misfit),
        effort: digits(effort),
      })),
    ).toEqual(
      explanations.map(({ uses, status, movements, readings, misfit, effort }) => ({
        uses,
        status,
        movements: toEdge(movements),
        readings: cm(readings),
        misfit: digits(misfit),
        effort: digits(effort),
      })),
    );
  });

  test.each([
    ['leadArmParallel:bicepGap', 'bicepGapCm', 100],
    ['shaftParallel:headDepth', 'headDepthCm', 100],
    ['leadArmParallel:reachRatio', 'trailReachRatio', 1],
    ['shaftParallel:planeDirection', 'planeDirectionDeg', toDeg(1)],
    ['shaftParallel:impliedPath', 'impliedPathDeg', toDeg(1)],
  ] satisfies readonly (readonly [LedgerReading, string, number])[])('the ledger of %s', (reading, field, unit) => {
    lay(one);
    setWhy({ reading, from: 'reference', to: 'now' });
    setDrawer('ledger');
    const ledger = ledgerOf(desk.getState());
    if ('problem' in ledger || 'missing' in ledger.shared) throw new Error('no ledger');
    const { from, to, parts, alone, last } = ledger.shared;
    const line = evaluate({
      kind: 'contributions',
      ...who,
      from: {},
      to: dialled,
      at: reading.split(':')[0],
      reading: field,
    });
    const shares = (all: Readonly<Record<Part, number>>): object => ({
      leadWrist: digits(all.leadWrist * unit),
      rotation: digits(all.rotation * unit),
      sideTilt: digits(all.sideTilt * unit),
    });
    expect(digits(line.from)).toBe(digits(from * unit));
    expect(digits(line.to)).toBe(digits(to * unit));
    expect(printed(line.parts)).toEqual(shares(parts));
    expect(printed(line.alone)).toEqual(shares(alone));
    expect(printed(line.last)).toEqual(shares(last));
    // The set-up is the same on both sides.
    expect(parts.setUp).toBe(0);
  });
});
