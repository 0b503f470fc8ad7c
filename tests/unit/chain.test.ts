import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { AT, type Pose } from '../../src/model/chain';
import { placeTrailArm } from '../../src/model/trailArm';
import { act, at, body, rigWith } from './chain-acted';

// Directions in words: +X toward the target, +Y up, +Z from the golfer toward the ball.
const TO_TARGET = [1, 0, 0];
const FROM_TARGET = [-1, 0, 0];
const UP = [0, 1, 0];
const DOWN = [0, -1, 0];
const TO_BALL = [0, 0, 1];
const lengthBetween = (p: Pose, a: number, b: number): number =>
  Math.hypot(p[a] - p[b], p[a + 1] - p[b + 1], p[a + 2] - p[b + 2]);
const trunk = 0.288 * 2;
const half = 0.129 * 2;
const arm = (0.186 + 0.146 + 0.054) * 2;

/** The club of a golfer whose shaft lies along the thumb side: a right angle between hand and shaft. */
const square = rigWith({ gripAngleDeg: 90 });

describe('standing upright with the lead arm straight ahead', () => {
  const p = act();

  test('the shoulders stand above the pelvis, the lead one toward the target', () => {
    expect(at(p, AT.pelvis)).toEqual([0, 1, 0]);
    expect(at(p, AT.midShoulder)).toEqual([0, 1 + trunk, 0]);
    expect(at(p, AT.leadShoulder)).toEqual([half, 1 + trunk, 0]);
    expect(at(p, AT.trailShoulder)).toEqual([-half, 1 + trunk, 0]);
  });

  test('the arm points toward the ball and the hand is an arm away', () => {
    expect(at(p, AT.armDirection)).toEqual(TO_BALL);
    expect(p[AT.leadGrip + 2]).toBeCloseTo(arm, 12);
  });

  test('the shaft leaves the hand 52 deg up on the thumb side; the head lies a shaft away, the trail grip a hand gap', () => {
    const shaft = [0, Math.sin(rad(52)), Math.cos(rad(52))];
    shaft.forEach((x, i) => {
      expect(p[AT.shaftDirection + i]).toBeCloseTo(x, 12);
      expect(p[AT.head + i]).toBeCloseTo(p[AT.leadGrip + i] + 0.9 * x, 12);
      expect(p[AT.trailGrip + i]).toBeCloseTo(p[AT.leadGrip + i] + 0.1 * x, 12);
    });
  });
});

describe('the pelvis', () => {
  test.each([
    ['shifting it carries everything toward the target', 'pelvisSway', [0.1, 0, 0]],
    ['raising it carries everything up', 'pelvisHeight', [0, 0.1, 0]],
    ['thrusting it carries everything toward the ball', 'pelvisThrust', [0, 0, 0.1]],
  ] as const)('%s', (_, joint, by) => {
    const still = act();
    const moved = act({ [joint]: joint === 'pelvisHeight' ? 1.1 : 0.1 });
    for (const point of [AT.pelvis, AT.leadShoulder, AT.leadGrip, AT.head, AT.trailElbow, AT.bicep]) {
      by.forEach((d, i) => expect(moved[point + i] - still[point + i]).toBeCloseTo(d, 12));
    }
  });

  test('turned a quarter open, its front looks at the target; the arms stay where they are', () => {
    const p = act({ pelvisTurn: 90 });
    expect(at(p, AT.pelvisAxes + 6)).toEqual(TO_TARGET);
    expect(at(p, AT.head)).toEqual(at(act(), AT.head));
  });

  test('bent forward, its upper side tips toward the ball', () => {
    expect(at(act({ pelvisBend: 90 }), AT.pelvisAxes + 3)).toEqual(TO_BALL);
  });

  test('tilted to the side, the lead hip rises', () => {
    expect(at(act({ pelvisSideTilt: 90 }), AT.pelvisAxes)).toEqual(UP);
  });

  test('tilts first, bends next, turns last: turned and tilted, its front stays level', () => {
    const p = act({ pelvisSideTilt: 90, pelvisTurn: 90 });
    expect(at(p, AT.pelvisAxes + 6)).toEqual(UP);
  });
});

describe('the trunk', () => {
  test('bent forward a quarter turn, the shoulders lie over the ball side and the arm hangs down', () => {
    const p = act({ trunkBend: 90 });
    expect(at(p, AT.midShoulder)).toEqual([0, 1, trunk]);
    expect(at(p, AT.armDirection)).toEqual(DOWN);
  });

  test('tilted, the upper body leans away from the target', () => {
    expect(at(act({ trunkTilt: 90 }), AT.midShoulder)).toEqual([-trunk, 1, 0]);
  });

  test('turned a quarter open, chest and arm look at the target and the lead shoulder lies behind', () => {
    const p = act({ thoraxTurn: 90 });
    expect(at(p, AT.armDirection)).toEqual(TO_TARGET);
    expect(at(p, AT.leadShoulder)).toEqual([0, 1 + trunk, -half]);
  });

  test('turned a quarter away, as at the top, the arm points away from the target', () => {
    expect(at(act({ thoraxTurn: -90 }), AT.armDirection)).toEqual(FROM_TARGET);
  });
});

describe('the shoulders', () => {
  test('reaching forward takes the lead shoulder to the chest side and leaves the direction of the arm', () => {
    const p = act({ leadProtraction: 90 });
    expect(at(p, AT.leadShoulder)).toEqual([0, 1 + trunk, half]);
    expect(at(p, AT.armDirection)).toEqual(TO_BALL);
  });

  test('reaching forward takes the trail shoulder to the chest side too', () => {
    expect(at(act({ trailProtraction: 90 }), AT.trailShoulder)).toEqual([0, 1 + trunk, half]);
  });
});

describe('the lead arm', () => {
  test('adducted a quarter turn, it points across the chest to the trail side', () => {
    expect(at(act({ leadArmAdduction: 90 }), AT.armDirection)).toEqual(FROM_TARGET);
  });

  test('elevated it points up, lowered it hangs down', () => {
    expect(at(act({ leadArmElevation: 90 }), AT.armDirection)).toEqual(UP);
    expect(at(act({ leadArmElevation: -90 }), AT.armDirection)).toEqual(DOWN);
  });

  test('adducts first, elevates next: across the chest and lifted, it points up, not across', () => {
    expect(at(act({ leadArmAdduction: 90, leadArmElevation: 90 }), AT.armDirection)).toEqual(UP);
  });

  test('rolled a quarter, the thumb turns to the trail side and takes the shaft along', () => {
    expect(at(act({}, square), AT.shaftDirection)).toEqual(UP);
    expect(at(act({ leadArmRoll: 90 }, square), AT.shaftDirection)).toEqual(FROM_TARGET);
  });
});

describe('the lead wrist', () => {
  const straight = rigWith({ gripAngleDeg: 0 });

  test('bowing it with the thumb up moves a shaft in line with the arm to the trail side', () => {
    expect(at(act({ leadWristFlexion: 90 }, straight), AT.shaftDirection)).toEqual(FROM_TARGET);
  });

  test('cupping it with the thumb up moves that shaft to the lead side', () => {
    expect(at(act({ leadWristFlexion: -90 }, straight), AT.shaftDirection)).toEqual(TO_TARGET);
  });

  test('bowing it with the thumb to the trail side, as at the top, lays that shaft down', () => {
    expect(at(act({ leadArmRoll: 90, leadWristFlexion: 90 }, straight), AT.shaftDirection)).toEqual(DOWN);
  });

  test('cupping it there stands the shaft up', () => {
    expect(at(act({ leadArmRoll: 90, leadWristFlexion: -90 }, straight), AT.shaftDirection)).toEqual(UP);
  });

  test('cocking brings the shaft toward the forearm, uncocking lines it up with the arm', () => {
    expect(at(act({ leadWristRadial: 38 }), AT.shaftDirection)).toEqual(UP);
    expect(at(act({ leadWristRadial: -52 }), AT.shaftDirection)).toEqual(TO_BALL);
  });

  test('flexes with the forearm, deviates with the hand: bowed a quarter, cocking lifts the shaft all the same', () => {
    const p = act({ leadWristFlexion: 90, leadWristRadial: 90 }, straight);
    expect(at(p, AT.shaftDirection)).toEqual(UP);
  });
});

describe('the face, arm hanging and shaft pointing down to the ball', () => {
  const hang = { leadArmElevation: -90 };

  test('without loft it looks at the target', () => {
    expect(at(act(hang, rigWith({ loftDeg: 5 })), AT.faceNormal)[0]).toBeCloseTo(Math.cos(rad(5)), 12);
  });

  test('loft turns it up, by the whole loft once the sole lies flat', () => {
    // Shaft 60 deg to the ground, as the lie asks: hand 30 deg more uncocked than at the right angle.
    const p = act({ ...hang, leadWristRadial: 30 - 52 });
    expect(p[AT.shaftDirection + 1]).toBeCloseTo(-Math.sin(rad(60)), 12);
    expect(p[AT.faceNormal + 1]).toBeCloseTo(Math.sin(rad(30)), 12);
    expect(at(p, AT.toeDirection)).toEqual(TO_BALL);
  });

  test('a stronger grip closes it: it looks left of the target and less up', () => {
    const neutral = act(hang);
    const strong = act(hang, rigWith({ gripTurnDeg: 20 }));
    expect(neutral[AT.faceNormal + 2]).toBeGreaterThan(strong[AT.faceNormal + 2]);
    expect(strong[AT.faceNormal + 2]).toBeLessThan(0);
    expect(at(strong, AT.shaftDirection)).toEqual(at(neutral, AT.shaftDirection));
  });

  test('bowing the wrist leaves the head behind the hands and takes loft off the face', () => {
    const straight = act(hang);
    const bowed = act({ ...hang, leadWristFlexion: 20 });
    expect(bowed[AT.head]).toBeLessThan(straight[AT.head]);
    expect(bowed[AT.faceNormal + 1]).toBeLessThan(straight[AT.faceNormal + 1]);
  });
});

test('with the shaft at a right angle to the hand, bowing closes the face as much as a stronger grip does', () => {
  const bowed = act({ leadWristFlexion: 25 }, square);
  const strong = act({}, rigWith({ gripAngleDeg: 90, gripTurnDeg: 25 }));
  for (const direction of [AT.shaftDirection, AT.faceNormal, AT.toeDirection]) {
    expect(at(bowed, direction)).toEqual(at(strong, direction));
  }
});

describe('the trail arm', () => {
  test('hangs its elbow below the line from shoulder to grip', () => {
    const p = act({ leadArmAdduction: 40, trailProtraction: 20 });
    const middle = (p[AT.trailShoulder + 1] + p[AT.trailGrip + 1]) / 2;
    expect(p[AT.reachRatio]).toBeLessThan(1);
    expect(p[AT.trailElbow + 1]).toBeLessThan(middle);
  });

  test('the bicep is the middle of the upper arm', () => {
    const p = act({ leadArmAdduction: 40 });
    for (let i = 0; i < 3; i++)
      expect(p[AT.bicep + i]).toBeCloseTo((p[AT.trailShoulder + i] + p[AT.trailElbow + i]) / 2, 12);
  });

  test('out of reach it is straight, says by how much, and has no number that is not one', () => {
    const p = act({ leadArmAdduction: -60 });
    const reach = body.upperArm + body.forearm + body.grip;
    expect(p[AT.reachRatio]).toBeGreaterThan(1);
    expect(p[AT.reachShortfall]).toBeCloseTo((p[AT.reachRatio] - 1) * reach, 12);
    expect([...p].every(Number.isFinite)).toBe(true);
  });

  test('keeps its lengths when it lies along the pole, where the elbow could go anywhere', () => {
    const p = act();
    // The grip straight below the pole's own direction: outward, down and a little forward of the trail shoulder.
    [-0.2, -1, 0.35].forEach((d, i) => (p[AT.trailGrip + i] = p[AT.trailShoulder + i] + d * 0.5));
    placeTrailArm(body.upperArm, body.forearm + body.grip, p);
    expect(lengthBetween(p, AT.trailShoulder, AT.trailElbow)).toBeCloseTo(body.upperArm, 9);
    expect(lengthBetween(p, AT.trailElbow, AT.trailGrip)).toBeCloseTo(body.forearm + body.grip, 9);
  });

  test('has no number that is not one when shoulder and grip meet', () => {
    const p = act();
    for (let i = 0; i < 3; i++) p[AT.trailGrip + i] = p[AT.trailShoulder + i];
    placeTrailArm(body.upperArm, body.forearm + body.grip, p);
    expect([...p].every(Number.isFinite)).toBe(true);
  });
});
