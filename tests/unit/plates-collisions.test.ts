import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { STILL, type Movements } from '../../src/model/movements';
import { readCheckpoints, type CheckpointId } from '../../src/reading/checkpoints';
import { createSwing, withMovements, type Swing } from '../../src/reading/swing';
import { DEFAULT_BANDS } from '../../src/reading/verdicts';
import { seedReference } from '../../src/solving/reference/seed';
import { solveReference } from '../../src/solving/reference/reference';
import { HANDLE_RADIUS, PIN_RADIUS, type Annotation } from '../../src/plates/annotation/annotation';
import { boxAround, doBoxesMeet, doesLineCross, isInside } from '../../src/plates/annotation/boxes';
import type { Box } from '../../src/plates/plate/frame';
import { annotatePlate, fitPicture } from '../../src/plates/plate/plateDrawing';

// The plate has to be readable wherever the sliders stand, for every player and club, at every size it is shown.
const STATURES = [1.4, 1.62, 1.78, 1.93, 2.1] as const;
const CLUB_CHOICE = ['driver', '7-iron', 'sand wedge'] as const satisfies readonly ClubId[];
/** Pictures as the four screens have them, css px: tablet, laptop, upright tablet, docked, docked upright, phone. */
const PICTURES = [
  { width: 295, height: 316 },
  { width: 344, height: 350 },
  { width: 388, height: 247 },
  { width: 234, height: 188 },
  { width: 212, height: 148 },
  { width: 175, height: 118 },
] as const;
const BOTH: readonly CheckpointId[] = ['leadArmParallel', 'shaftParallel'];

const swings = new Map<string, Swing>();
/** A fitted reference for the middle player, quick starts for the rest: what counts here is that pictures differ. */
function swingOf(statureM: number, clubId: ClubId): Swing {
  const key = `${statureM} ${clubId}`;
  let swing = swings.get(key);
  if (!swing) {
    const body = bodyOf({ statureM, handed: 'right' });
    const club = clubOf(CLUBS[clubId]);
    swing = createSwing(body, club, statureM === 1.78 ? solveReference(body, club).reference : seedReference(body));
    swings.set(key, swing);
  }
  return swing;
}

interface Shown {
  readonly swing: Swing;
  readonly movements: Movements;
  readonly handed: 'right' | 'left';
  readonly pictures: readonly (typeof PICTURES)[number][];
  readonly ghost: boolean;
}

/** What stands on a plate in each of the pictures; nothing for a checkpoint that is not reached. */
function annotationsOf(id: CheckpointId, { swing, movements, handed, pictures, ghost }: Shown): Annotation[] {
  const checkpoint = readCheckpoints(withMovements(swing, movements))[id];
  const common = {
    id,
    checkpoint,
    bands: DEFAULT_BANDS,
    units: { length: 'cm' },
    handed,
    reference: readCheckpoints(swing)[id],
    ghost: ghost ? readCheckpoints(withMovements(swing, { ...STILL, leadWristFlexion: rad(-12) }))[id] : undefined,
  } as const;
  return pictures.flatMap(
    (picture) => annotatePlate({ ...common, letters: fitPicture(id, picture).letters })?.annotation ?? [],
  );
}

/** What is wrong with a plate, in words; empty when all is well. */
function findFaults(a: Annotation): string[] {
  const faults: string[] = [];
  if (!a.dimension) return ['no room for the number'];
  const things: [string, Box][] = [
    ['number', a.dimension.figure.box],
    ['ring', boxAround(a.handle.at, HANDLE_RADIUS)],
    ['pin', boxAround(a.pin, PIN_RADIUS)],
    ...a.captions.map(({ text, box }): [string, Box] => [text, box]),
    ...a.others.flatMap(({ caption }): [string, Box][] => (caption ? [[caption.text, caption.box]] : [])),
    ...(a.scaleBar ? [['scale bar', a.scaleBar.caption.box] as [string, Box]] : []),
  ];
  things.forEach(([name, box], i) => {
    if (!isInside(box, a.view)) faults.push(`${name} is cut`);
    for (const [other, otherBox] of things.slice(i + 1))
      if (doBoxesMeet(box, otherBox)) faults.push(`${name} lies on ${other}`);
    for (const { text, leader } of a.captions)
      if (leader && text !== name && doesLineCross(leader, box)) faults.push(`the leader of ${text} crosses ${name}`);
  });
  return faults;
}

/** Checks both plates in all pictures, and answers how many there were. */
function check(shown: Shown): number {
  const annotations = BOTH.flatMap((id) => annotationsOf(id, shown));
  expect(annotations.flatMap(findFaults)).toEqual([]);
  return annotations.length;
}

const move = (wristDeg: number, rate: number, delayMs: number, tiltDeg: number): Movements => ({
  ...STILL,
  leadWristFlexion: rad(wristDeg),
  rotationRate: rate,
  rotationDelay: delayMs / 1000,
  trailSideBend: rad(tiltDeg),
});
/** Each slider alone from end to end. */
const ALONE: readonly Movements[] = [
  ...Array.from({ length: 21 }, (_, i) => move(-40 + 4 * i, 1, 0, 0)),
  ...Array.from({ length: 17 }, (_, i) => move(0, 0.6 + 0.05 * i, 0, 0)),
  ...Array.from({ length: 11 }, (_, i) => move(0, 1, -40 + 8 * i, 0)),
  ...Array.from({ length: 11 }, (_, i) => move(0, 1, 0, -15 + 3 * i)),
];

describe('nothing that has to be read is cut or lies on something else', () => {
  test.each(STATURES)(
    'for a player of %f m, driver to wedge, each slider from end to end, at every size',
    (statureM) => {
      let seen = 0;
      for (const clubId of CLUB_CHOICE) {
        const swing = swingOf(statureM, clubId);
        for (const movements of ALONE)
          seen += check({ swing, movements, handed: 'right', pictures: PICTURES, ghost: false });
      }
      // Nearly every one of them is reached; a check of nothing would pass too.
      expect(seen).toBeGreaterThan(0.9 * CLUB_CHOICE.length * ALONE.length * PICTURES.length * BOTH.length);
    },
  );

  test('with all sliders anywhere at once, either hand, with and without a ghost', () => {
    const shown = fc.record({
      swing: fc
        .tuple(fc.constantFrom(...STATURES), fc.constantFrom(...CLUB_CHOICE))
        .map(([h, club]) => swingOf(h, club)),
      movements: fc
        .tuple(
          fc.integer({ min: -40, max: 40 }),
          fc.integer({ min: 60, max: 140 }).map((percent) => percent / 100),
          fc.integer({ min: -40, max: 40 }),
          fc.integer({ min: -15, max: 15 }),
        )
        .map((dials) => move(...dials)),
      handed: fc.constantFrom<'right' | 'left'>('right', 'left'),
      pictures: fc.constant(PICTURES),
      ghost: fc.boolean(),
    });
    fc.assert(
      fc.property(shown, (drawn) => void check(drawn)),
      { numRuns: 600 },
    );
  });

  test('the check finds a number that is cut, a name on a ring and a plate without a number', () => {
    const swing = swingOf(1.78, '7-iron');
    const shown = {
      swing,
      movements: move(-20, 1, 0, 0),
      handed: 'right',
      pictures: [PICTURES[0]],
      ghost: false,
    } as const;
    const [good] = annotationsOf('leadArmParallel', shown);
    expect(findFaults(good)).toEqual([]);
    const { dimension, captions } = good;
    const cut = { ...dimension!, figure: { ...dimension!.figure, box: { ...dimension!.figure.box, left: -1 } } };
    expect(findFaults({ ...good, dimension: cut })).toContain('number is cut');
    const onRing = { ...captions[0], box: boxAround(good.handle.at, 5) };
    expect(findFaults({ ...good, captions: [onRing] })).toContain('ring lies on trail bicep');
    expect(findFaults({ ...good, dimension: undefined })).toEqual(['no room for the number']);
  });

  test('head and hands are told apart even where one covers the other: between the names lies half a letter of paper', () => {
    const swing = swingOf(1.78, '7-iron');
    let close = 0;
    for (const picture of PICTURES) {
      const { letters } = fitPicture('shaftParallel', picture);
      if (letters.isBare) continue;
      for (let wristDeg = -30; wristDeg <= 30; wristDeg++) {
        for (const handed of ['right', 'left'] as const) {
          const shown = {
            swing,
            movements: move(wristDeg, 1, 0, 0),
            handed,
            pictures: [picture],
            ghost: false,
          } as const;
          const [{ captions, pin, axis }] = annotationsOf('shaftParallel', shown);
          expect(captions.map(({ text }) => text)).toEqual(['head', 'hands']);
          const [head, hands] = captions.map(({ box }) => box);
          const across = Math.max(head.left, hands.left) - Math.min(head.right, hands.right);
          const down = Math.max(head.top, hands.top) - Math.min(head.bottom, hands.bottom);
          expect(Math.max(across, down)).toBeGreaterThanOrEqual(0.5 * letters.caption - 1e-9);
          if (Math.abs(axis.from.x - pin.x) < 16) close++;
        }
      }
    }
    expect(close).toBeGreaterThan(50);
  });

  test('in usual swings every name is on the plate where there is room for captions', () => {
    const swing = swingOf(1.78, '7-iron');
    for (const wristDeg of [-20, -10, 0, 10, 20]) {
      const shown = {
        swing,
        movements: move(wristDeg, 1, 0, 0),
        handed: 'right',
        pictures: [PICTURES[0]],
        ghost: false,
      } as const;
      const [arm] = annotationsOf('leadArmParallel', shown);
      const [shaft] = annotationsOf('shaftParallel', shown);
      expect(arm.captions.map(({ text }) => text)).toEqual(['trail bicep']);
      expect(shaft.captions.map(({ text }) => text)).toEqual(['head', 'hands']);
      for (const { scaleBar, others } of [arm, shaft]) {
        expect(scaleBar).toBeDefined();
        for (const { caption } of others) expect(caption).toBeDefined();
      }
    }
  });
});
