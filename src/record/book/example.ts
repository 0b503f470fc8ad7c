import type { Document } from '../../store/document/document';
import { DEFAULT_DOCUMENT, STILL_DIALLED, type Dialled } from '../../store/document/document';
import type { Seen } from '../../store/document/sighting';
import { draftPlan } from '../../store/plan/draftPlan';
import { RECORD_VERSION, type BookRecord, type Computed, type LessonRecord, type PlayerRecord } from './recordTypes';

/** Our own invention, marked as such wherever it shows. Ids are fixed: it is there once or not at all. */
export const EXAMPLE_ID = 'example-player-1';

/** Whether an id belongs to the built-in example. */
export const isOfExampleId = (id: string): boolean => id.startsWith('example-');

const MADE_MS = Date.UTC(2026, 0, 1);
const base = { version: RECORD_VERSION, createdMs: MADE_MS, changedMs: MADE_MS } as const;

const PLAYER: PlayerRecord = {
  kind: 'player',
  ...base,
  id: EXAMPLE_ID,
  name: 'Example: Juniper',
  body: { statureM: 1.78, handed: 'right' },
  clubs: ['7-iron'],
  notes: 'An invented player. Look around, then remove her with one tap.',
  archived: false,
  example: true,
};

interface Sketch {
  readonly date: string;
  readonly dialled: Partial<Dialled>;
  /** Seen above the trail bicep and in front of the hands, cm, each with its give or take. */
  readonly seen: readonly [p5: number, give5: number, p6: number, give6: number];
  readonly notes: string;
}
const SKETCHES: readonly Sketch[] = [
  {
    date: '2026-01-12',
    dialled: { leadWristFlexionDeg: -22, rotationDelayMs: -10 },
    seen: [5, 2, 20, 4],
    notes: 'Cups the wrist at the start down. Starts left, curves right.',
  },
  { date: '2026-01-26', dialled: { leadWristFlexionDeg: -18, rotationDelayMs: -8 }, seen: [4, 2, 17, 4], notes: '' },
  {
    date: '2026-02-09',
    dialled: { leadWristFlexionDeg: -9, rotationDelayMs: -6 },
    seen: [2.5, 2, 8, 3],
    notes: 'Feels "far too flat". It is not.',
  },
  { date: '2026-02-23', dialled: { leadWristFlexionDeg: -4 }, seen: [1, 2, 3, 3], notes: 'Holds with half swings.' },
];

const documentOf = (dialled: Partial<Dialled>): Document => ({
  ...DEFAULT_DOCUMENT,
  player: PLAYER.body,
  movements: { ...STILL_DIALLED, ...dialled },
});

/** An invented player with four lessons, so that an empty book shows what it is for. The model computes its readings. */
export function makeExample(compute: (document: Document) => Computed): readonly BookRecord[] {
  const first = { ...STILL_DIALLED, ...SKETCHES[0].dialled };
  const offer = { from: first, movements: STILL_DIALLED, targetCm: compute(documentOf({})) };
  const plan = draftPlan('exampleplan1', offer, null);
  const lessons = SKETCHES.map(({ date, dialled, seen, notes }, at): LessonRecord => {
    const [cm5, give5, cm6, give6] = seen;
    const noted: Seen = {
      leadArmParallel: { cm: cm5, plusMinusCm: give5, from: 'eye' },
      shaftParallel: { cm: cm6, plusMinusCm: give6, from: 'eye' },
    };
    const now = { ...documentOf(dialled), seen: noted, plan };
    return {
      kind: 'lesson',
      ...base,
      createdMs: MADE_MS + at,
      id: `example-lesson-${at + 1}`,
      playerId: EXAMPLE_ID,
      date,
      now,
      computedCm: compute(now),
      notes,
    };
  });
  return [PLAYER, ...lessons];
}
