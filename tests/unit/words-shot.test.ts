import { describe, expect, test } from 'vitest';
import { findShot, STILL_DAY, type NoShot, type Shot } from '../../src/flight/shot';
import { rad } from '../../src/math/angle';
import { CLUBS, clubOf } from '../../src/model/club';
import type { Delivery } from '../../src/reading/delivery/delivery';
import { sayPicture } from '../../src/words/swing/picture';
import { current, desk } from '../../src/store';
import {
  RULE_WORDS,
  sayApex,
  sayCarry,
  sayCurve,
  sayFaceBand,
  sayFaceEnds,
  sayMiss,
  sayNoShot,
  sayOffline,
  sayPlaneDirection,
  sayShape,
  sayShortcomings,
  saySpin,
  saySpinAxis,
  sayStart,
} from '../../src/words';
import { deliveryWith } from './delivered';

const club = clubOf(CLUBS['7-iron']);
const METRIC = { length: 'cm', speed: 'm/s' } as const;
const INCHES = { length: 'in', speed: 'mph' } as const;
const shotOf = (delivery: Delivery): Shot => {
  const shot = findShot(delivery, club, STILL_DAY, 48);
  if ('missing' in shot) throw new Error(shot.missing);
  return shot;
};
/** Face 2 deg open and path 6.5 deg in-to-out: starts right, curves left across the target line for a right-handed player. */
const drawn = shotOf(deliveryWith({ path: rad(6.5), face: rad(2) }));
/** Face 2 deg closed and path 6.5 deg out-to-in. */
const faded = shotOf(deliveryWith({ path: rad(-6.5), face: rad(-2) }));

describe('a face between left and returned', () => {
  const banded = { face: rad(2), faceLeft: rad(4), faceReturned: rad(-1) };

  test('is said as it is drawn and with both ends of its band, in one short sentence', () => {
    expect(sayFaceBand(banded).text).toBe('2° open, 1° closed to 4° open');
    expect(sayFaceBand(banded).spoken).toBe('Face 2 degrees open, 1 degree closed to 4 degrees open');
    expect(sayFaceBand(banded).spoken.split(' ').length).toBeLessThanOrEqual(15);
    expect(sayFaceBand({ face: rad(2), faceLeft: rad(2.1), faceReturned: rad(1.9) }).text).toBe('2° open');
    expect(sayFaceEnds(banded)).toBe('1° closed to 4° open');
    expect(sayFaceEnds({ faceLeft: rad(2.1), faceReturned: rad(1.9) })).toBe('');
  });

  test('gives start and curve a band, from left to right as everybody sees it', () => {
    const end = (startDeg: number, curveM: number) => ({ startDeg, curveM, offlineM: 0 });
    const flight = { ...drawn.flight, startDeg: 2, curveM: 5 };
    const shot = { ...drawn, flight, ends: { left: end(4, 12), returned: end(-1, -3) } };
    expect(sayStart(shot, 'right').text).toBe('2° right, 1° left to 4° right');
    expect(sayStart(shot, 'left').text).toBe('2° left, 4° left to 1° right');
    expect(sayCurve(shot, 'right', METRIC).text).toBe('5 m right, 3 m left to 12 m right');
  });

  test('a curve that is drawn past both ends is the end of its own band', () => {
    const ends = { left: { ...drawn.flight, curveM: 17 }, returned: { ...drawn.flight, curveM: 20 } };
    const past: Shot = { ...drawn, flight: { ...drawn.flight, curveM: 21 }, ends };
    expect(sayCurve(past, 'right', METRIC).text).toBe('21 m right, 17 m right to 21 m right');
    expect(sayCurve(past, 'left', METRIC).text).toBe('21 m left, 21 m left to 17 m left');
  });

  test('starts and curves at each end as a shot struck there does', () => {
    const [left, returned] = [deliveryWith({ face: rad(5) }), deliveryWith({ face: rad(-1) })];
    const between = deliveryWith({
      face: rad(2),
      returnTakes: { roll: 0, flexion: 0, isInRange: true },
      ends: [left.ends[0], returned.ends[0]],
    });
    const { ends, flight } = shotOf(between);
    for (const [end, at] of [
      [ends!.left, left],
      [ends!.returned, returned],
    ] as const) {
      const { startDeg, curveM, offlineM } = shotOf(at).flight;
      expect(end).toEqual({ startDeg, curveM, offlineM });
    }
    expect(ends!.returned.startDeg).toBeLessThan(flight.startDeg);
    expect(flight.startDeg).toBeLessThan(ends!.left.startDeg);
  });
});

describe('a shot in words', () => {
  test('in-to-out with a face closed to that is a push that curves left, for a right-handed player', () => {
    expect(sayShape(drawn, 'right').sentence).toMatch(
      /^Push-(draw|hook): starts a little right, curves (hard )?left\.$/,
    );
    expect(sayStart(drawn, 'right').text).toMatch(/right$/);
    expect(sayCurve(drawn, 'right', METRIC).text).toMatch(/ m left$/);
    expect(saySpinAxis(drawn, 'right').text).toMatch(/tilted left$/);
  });

  test('out-to-in with a face open to that is a pull that curves right', () => {
    expect(sayShape(faded, 'right').sentence).toMatch(
      /^Pull-(fade|slice): starts a little left, curves (hard )?right\.$/,
    );
  });

  test('the same strike left-handed has the same name and the other side', () => {
    expect(sayShape(drawn, 'left').name).toBe(sayShape(drawn, 'right').name);
    expect(sayShape(drawn, 'left').how).toMatch(/^starts a little left, curves (hard )?right$/);
    expect(sayOffline(drawn, 'left', METRIC).text).not.toBe(sayOffline(drawn, 'right', METRIC).text);
  });

  test('a left-handed draw starts left, curves and is tilted to the right, in every row and for the screen reader', () => {
    expect(sayShape(drawn, 'left').sentence).toMatch(
      /^Push-(draw|hook): starts a little left, curves (hard )?right\.$/,
    );
    expect(sayShape(faded, 'left').sentence).toMatch(
      /^Pull-(fade|slice): starts a little right, curves (hard )?left\.$/,
    );
    const rows = [sayStart(drawn, 'left'), sayCurve(drawn, 'left', METRIC), saySpinAxis(drawn, 'left')];
    expect(rows.map(({ text }) => text.split(' ').at(-1))).toEqual(['left', 'right', 'right']);
    expect(rows.map(({ spoken }) => spoken.split(' ').at(-1))).toEqual(['left', 'right', 'right']);
    const away = (handed: 'right' | 'left') => sayOffline(drawn, handed, METRIC).text.split(' ').at(-1);
    expect([away('right'), away('left')]).toEqual(drawn.flight.offlineM > 0 ? ['right', 'left'] : ['left', 'right']);
  });

  test('the picture in words says which hand the figure plays with', () => {
    for (const handed of ['left', 'right'] as const) {
      const derived = { ...current(), player: { statureM: 1.78, handed } };
      expect(sayPicture(derived, desk.getState())).toMatch(new RegExp(`^A wooden figure, ${handed}-handed, `));
    }
  });

  test('carry stands with its honest width, in metres or yards, heights in metres or feet', () => {
    const carry = Math.round(drawn.flight.carryM);
    expect(sayCarry(drawn, METRIC).text).toBe(`${carry} ± ${Math.round(drawn.width / 2)} m`);
    expect(sayCarry(drawn, INCHES).text).toBe(
      `${Math.round(drawn.flight.carryM / 0.9144)} ± ${Math.round(drawn.width / 2 / 0.9144)} yd`,
    );
    expect(sayApex(drawn, INCHES).text).toBe(`${Math.round(drawn.flight.apexM / 0.3048)} ft`);
  });

  test('spin is given in hundreds: the model knows no finer', () => {
    expect(saySpin(drawn).text).toMatch(/^\d+00 rpm$/);
  });

  test('a straight shot has no side', () => {
    const straight = shotOf(deliveryWith({}));
    expect(sayShape(straight, 'right').sentence).toBe('Straight: starts on line, flies straight.');
    expect(sayStart(straight, 'right').text).toBe('on line');
    expect(sayCurve(straight, 'right', METRIC).text).toBe('none');
  });

  test('the plane points in-to-out when it points right of the target for a right-handed player', () => {
    expect(sayPlaneDirection(rad(3)).text).toBe('3° in-to-out');
    expect(sayPlaneDirection(rad(-3)).text).toBe('3° out-to-in');
  });
});

describe('what does not come off, in words', () => {
  test('a miss says toe or heel, high or low, early or late', () => {
    const off = deliveryWith({ miss: { toe: 0.05, high: -0.03, late: 0.004 }, headSpeed: 40 });
    expect(sayMiss(off, METRIC).map(({ text }) => text)).toEqual([
      '5 cm toward the toe',
      '3 cm low',
      '16 cm late (4 ms)',
    ]);
    const other = deliveryWith({ miss: { toe: -0.05, high: 0.03, late: -0.004 }, headSpeed: 40 });
    expect(sayMiss(other, METRIC).map(({ text }) => text)).toEqual([
      '5 cm toward the heel',
      '3 cm high',
      '16 cm early (4 ms)',
    ]);
  });

  test('a head that passes a face away strikes no ball', () => {
    const shot = findShot(deliveryWith({ miss: { toe: 0.06, high: 0, late: 0 } }), club);
    expect(shot).toEqual({ missing: 'misses' });
    expect(sayNoShot(shot as NoShot)).toBe('The head misses the ball.');
  });

  test('the closest and a short trail arm are said, and nothing when all is well', () => {
    expect(sayShortcomings(deliveryWith({}), METRIC)).toEqual([]);
    const short = deliveryWith({ status: 'closest', miss: { toe: 0.03, high: 0.04, late: 0 }, reachShortfall: 0.04 });
    expect(sayShortcomings(short, METRIC)).toEqual([
      "Out of the arms' range: this is the closest, 5 cm off the ball.",
      'Trail arm 4 cm short of the grip at impact.',
    ]);
  });

  test('both rules name what they assume', () => {
    for (const { means } of Object.values(RULE_WORDS)) expect(means).toMatch(/^Assumed: /);
  });

  test('every sentence has at most 15 words', () => {
    const missing = [
      'no-shaft-parallel',
      'too-late',
      'never-at-the-ball',
      'misses',
      'no-contact',
      'never-rises',
      'never-lands',
    ] as const;
    const sentences = [
      ...missing.map((each) => sayNoShot({ missing: each })),
      ...Object.values(RULE_WORDS).flatMap(({ means }) => means.split(/(?<=\.) /)),
    ];
    for (const sentence of sentences) expect(sentence.split(/\s+/).length).toBeLessThanOrEqual(15);
  });
});
