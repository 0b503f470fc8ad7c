import { useFrame } from '@react-three/fiber';
import type { PerspectiveCamera } from 'three';
import { Vector3 } from 'three';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { rad } from '../../src/math/angle';
import { PITCH_LIMITS, type View } from '../../src/scene/camera/view';
import { cameraStore } from '../../src/stage/camera/cameraStore';
import { StageCamera } from '../../src/stage/camera/StageCamera';
import { DeskFrame } from '../../src/stage/deskFrame';
import { FRAME_ORDER } from '../../src/stage/useStageFrames';
import { desk, setPlayer, setPlayhead, setView, stagePicture, swingSpan } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { mount, PlainCanvas } from './mounted';

const [WIDTH, HEIGHT] = [800, 600];
let isStill = true;
let page: EventTarget & { hidden?: boolean };
let windowEvents: EventTarget;

beforeEach(() => {
  clearDesk();
  isStill = true;
  cameraStore.setState(cameraStore.getInitialState(), true);
  page = new EventTarget();
  windowEvents = new EventTarget();
  vi.stubGlobal('DOMRect', class {});
  vi.stubGlobal('document', page);
  vi.stubGlobal('window', windowEvents);
  vi.stubGlobal('matchMedia', () => Object.assign(new EventTarget(), { matches: isStill }));
});
/** Stages that stand: one of them would take part in the next test, since all share the desk. */
const standing: { unmount: () => void }[] = [];
afterEach(async () => {
  for (const root of standing.splice(0)) root.unmount();
  await new Promise((resolve) => setTimeout(resolve, 20));
  vi.unstubAllGlobals();
});

/** The stage's camera on a canvas that draws nothing. */
function stage() {
  const frame = new DeskFrame();
  const keyed = new EventTarget();
  function Desk() {
    useFrame(() => frame.update(), FRAME_ORDER.show);
    return null;
  }
  const mounted = mount(
    <>
      <Desk />
      <StageCamera frame={frame} keyed={keyed as HTMLElement} isHeld={{ current: false }} />
    </>,
    { width: WIDTH, height: HEIGHT },
  );
  standing.push(mounted.root);
  let time = 0;
  const go = (frames = 4, step = 1 / 60): void => {
    for (let i = 0; i < frames; i++) mounted.advance((time += step));
  };
  const pointer = (target: EventTarget, type: string, x: number, y: number, more: object = {}): void => {
    const event = Object.assign(new Event(type), {
      pointerId: 1,
      pointerType: 'touch',
      clientX: x,
      clientY: y,
      ...more,
    });
    target.dispatchEvent(event);
  };
  const { canvas } = mounted;
  const down = (x: number, y: number, more?: object): void => pointer(canvas, 'pointerdown', x, y, more);
  const moveTo = (x: number, y: number, more?: object): void =>
    pointer(canvas.ownerDocument, 'pointermove', x, y, more);
  const lift = (x: number, y: number, more?: object): void => pointer(canvas.ownerDocument, 'pointerup', x, y, more);
  const press = (key: string): boolean =>
    keyed.dispatchEvent(Object.assign(new Event('keydown', { cancelable: true }), { key }));
  const camera = mounted.camera as PerspectiveCamera;
  /** Where on the picture a place of the right-handed world is, px from the upper left corner. */
  const seen = ([x, y, z]: readonly number[]): [number, number] => {
    camera.updateMatrixWorld();
    const p = new Vector3(x, y, z * frame.mirror).project(camera);
    return [((p.x + 1) / 2) * WIDTH, ((1 - p.y) / 2) * HEIGHT];
  };
  go();
  return { ...mounted, frame, go, down, moveTo, lift, press, seen, camera, pointer };
}
const view = (): View => stagePicture.getState().drawn!.view;
const CHEST = [0, 1.2, 0.1];

describe('a drag', () => {
  test.each(['right', 'left'] as const)('turns the picture with the finger, for a %s-handed player too', (handed) => {
    setPlayer({ statureM: 1.78, handed });
    const { camera, down, moveTo, lift, go } = stage();
    const before = camera.position.clone();
    down(400, 300);
    moveTo(460, 300);
    lift(460, 300);
    go();
    // A finger to the right takes what is in front to the right: the camera goes to the left round the target, as seen from above.
    const turn = (p: Vector3): number => Math.atan2(p.x, p.z);
    const turned = ((turn(camera.position) - turn(before) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI;
    expect(turned).toBeLessThan(rad(-10));
    expect(turned).toBeGreaterThan(rad(-30));
    expect(desk.getState().session.view).toBe('free');
  });

  test('turns by 170 degrees a height of the picture, however its moves are dealt out to frames', () => {
    for (const moves of [1, 7]) {
      clearDesk();
      cameraStore.setState(cameraStore.getInitialState(), true);
      const { down, moveTo, lift, go } = stage();
      const { yaw } = view();
      down(100, 300);
      for (let i = 1; i <= moves; i++) moveTo(100 + (HEIGHT * i) / moves, 300);
      lift(100 + HEIGHT, 300);
      // And once more, before a frame has been drawn.
      down(100, 300);
      moveTo(100 + HEIGHT / 10, 300);
      lift(100 + HEIGHT / 10, 300);
      go(6);
      expect(Math.cos(view().yaw - yaw)).toBeCloseTo(Math.cos(rad(187)), 3);
    }
  });

  test('stops before the camera tips over', () => {
    const { down, moveTo, lift, go } = stage();
    down(400, 10);
    moveTo(400, 2000);
    lift(400, 2000);
    go();
    expect(view().pitch).toBeCloseTo(PITCH_LIMITS.max, 6);
    down(400, 10);
    moveTo(400, -3000);
    lift(400, -3000);
    go();
    expect(view().pitch).toBeCloseTo(PITCH_LIMITS.min, 6);
  });

  test.each([
    ['the second button', { button: 2, buttons: 2 }],
    ['the middle button', { button: 1, buttons: 4 }],
    ['shift', { button: 0, buttons: 1, shiftKey: true }],
  ])('with %s moves what is looked at along with the pointer', (_, more) => {
    const { down, moveTo, lift, go, seen } = stage();
    const { target } = view();
    const before = seen(target);
    const mouse = { pointerType: 'mouse', ...more };
    down(400, 300, mouse);
    moveTo(460, 270, mouse);
    lift(460, 270, mouse);
    go();
    const after = seen(target);
    expect(after[0] - before[0]).toBeCloseTo(60, 0);
    expect(after[1] - before[1]).toBeCloseTo(-30, 0);
    expect(view().distance).toBeGreaterThan(1);
  });

  test.each([
    ['a cancelled pointer', (on: ReturnType<typeof stage>) => on.pointer(on.canvas, 'pointercancel', 440, 300)],
    ['a window that loses the focus', () => windowEvents.dispatchEvent(new Event('blur'))],
    [
      'a hidden page',
      () => {
        page.hidden = true;
        page.dispatchEvent(new Event('visibilitychange'));
      },
    ],
  ])('ends where it is with %s', (_, end) => {
    const on = stage();
    on.down(400, 300);
    on.moveTo(440, 300);
    end(on);
    on.go();
    const held = view();
    on.moveTo(600, 300);
    on.go();
    expect(view()).toEqual(held);
  });

  test('goes on for a moment and comes to rest, unless motion is reduced', () => {
    const turnedAfter = (still: boolean, frames: number): number => {
      isStill = still;
      clearDesk();
      cameraStore.setState(cameraStore.getInitialState(), true);
      const { down, moveTo, lift, go } = stage();
      const { yaw } = view();
      down(400, 300);
      moveTo(500, 300);
      lift(500, 300);
      go(frames);
      return Math.abs(view().yaw - yaw);
    };
    const whole = turnedAfter(true, 3);
    expect(turnedAfter(false, 1)).toBeLessThan(0.5 * whole);
    expect(turnedAfter(false, 120)).toBeCloseTo(whole, 4);
  });
});

test('two fingers keep what lies under them: half as far apart shows it half as large', () => {
  const { down, moveTo, lift, go } = stage();
  const { distance } = view();
  const second = { pointerId: 2 };
  down(300, 300);
  down(500, 300, second);
  for (let i = 1; i <= 10; i++) {
    moveTo(300 + 5 * i, 300);
    moveTo(500 - 5 * i, 300, second);
  }
  lift(350, 300);
  lift(450, 300, second);
  go();
  expect(view().distance / distance).toBeGreaterThan(1.9);
  expect(view().distance / distance).toBeLessThan(2.1);
});

test('the wheel brings nearer what the pointer is at, and leaves it there', () => {
  const { canvas, camera, go, seen } = stage();
  const { distance } = view();
  const [x, y] = seen(CHEST);
  for (let i = 0; i < 3; i++) {
    canvas.dispatchEvent(
      Object.assign(new Event('wheel', { cancelable: true }), {
        deltaY: -100,
        deltaMode: 0,
        deltaX: 0,
        clientX: x,
        clientY: y,
      }),
    );
    go();
  }
  expect(view().distance).toBeLessThan(0.8 * distance);
  const after = seen(CHEST);
  expect(Math.hypot(after[0] - x, after[1] - y)).toBeLessThan(25);
  expect(camera.position.length()).toBeGreaterThan(0.5);
});

test('keys turn and zoom, Home shows the first view again, and other keys are left to the page', () => {
  const { press, go } = stage();
  const first = view();
  expect(press('ArrowRight')).toBe(false);
  go();
  expect(view().yaw - first.yaw).toBeCloseTo(rad(6), 6);
  press('ArrowUp');
  press('ArrowUp');
  go();
  expect(view().pitch - first.pitch).toBeCloseTo(rad(12), 6);
  press('-');
  go();
  expect(view().distance / first.distance).toBeCloseTo(1.12, 6);
  press('+');
  go();
  expect(view().distance / first.distance).toBeCloseTo(1, 6);
  press('Home');
  go();
  expect(view().yaw).toBeCloseTo(first.yaw, 9);
  expect(view().pitch).toBeCloseTo(first.pitch, 9);
  expect(press('x')).toBe(true);
});

test.each([
  ['free', undefined],
  ['faceOn', 'faceOn'],
] as const)(
  'a double tap shows the whole view again that was chosen last (%s), one tap and a drag do not',
  (asked, named) => {
    if (named) setView(named);
    const { press, down, lift, moveTo, go } = stage();
    const first = view();
    const tap = (x: number, y: number): void => {
      const primary = { isPrimary: true, button: 0 };
      down(x, y, primary);
      lift(x, y, primary);
      go();
    };
    press('ArrowRight');
    press('-');
    go();
    tap(100, 100);
    expect(desk.getState().session.view).toBe('free');
    expect(view().distance / first.distance).toBeCloseTo(1.12, 6);
    // Too far from the first to be a second tap.
    tap(300, 100);
    expect(view().distance / first.distance).toBeCloseTo(1.12, 6);
    tap(304, 103);
    expect(view().distance).toBeCloseTo(first.distance, 9);
    expect(view().yaw).toBeCloseTo(first.yaw, 9);
    expect(desk.getState().session.view).toBe(asked);
    // A tap and a drag from the same place turn the picture.
    tap(100, 100);
    down(100, 100, { isPrimary: true, button: 0 });
    moveTo(160, 100, { isPrimary: true });
    lift(160, 100, { isPrimary: true });
    go();
    expect(view().yaw).not.toBeCloseTo(first.yaw, 3);
  },
);

describe('a view that is asked for', () => {
  test('is cut to where motion is reduced, and the own view comes back as it was left', () => {
    const { down, moveTo, lift, go } = stage();
    down(400, 300);
    moveTo(350, 330);
    lift(350, 330);
    go();
    const own = view();
    setView('faceOn');
    go(1);
    expect(view().yaw).toBeCloseTo(0, 9);
    setView('free');
    go(1);
    const back = view();
    expect(back.yaw).toBeCloseTo(own.yaw, 9);
    expect(back.pitch).toBeCloseTo(own.pitch, 9);
    expect(back.distance).toBeCloseTo(own.distance, 9);
    back.target.forEach((v, i) => expect(v).toBeCloseTo(own.target[i], 9));
  });

  test('is turned to smoothly the short way round, field of view and all, and is reached within a second', () => {
    isStill = false;
    const { go } = stage();
    setView('downTheLine');
    go(90);
    const from = view();
    setView('overhead');
    const yaws: number[] = [];
    const fovs: number[] = [];
    for (let i = 0; i < 60; i++) {
      go(1);
      yaws.push(view().yaw);
      fovs.push(view().fov);
    }
    expect(from.yaw).toBeCloseTo(rad(-90), 4);
    expect(yaws.at(-1)).toBeCloseTo(0, 2);
    expect(fovs.at(-1)).toBeCloseTo(rad(26), 3);
    // Never back, never past it.
    yaws.reduce((before, now) => {
      expect(now).toBeGreaterThanOrEqual(before - 1e-9);
      expect(now).toBeLessThan(1e-3);
      return now;
    }, from.yaw);
    expect(yaws[0] - from.yaw).toBeLessThan(rad(20));
  });

  test('is turned to by a camera that has slept as by one that has not', () => {
    isStill = false;
    const { go } = stage();
    go(60);
    const { yaw } = view();
    setView('faceOn');
    go(1, 20);
    expect(Math.abs(view().yaw - yaw)).toBeLessThan(rad(20));
  });

  test('of a left-handed player is the mirror image, and is turned back for a right-handed one', () => {
    setView('downTheLine');
    const { camera, go } = stage();
    const places = (['right', 'left', 'right'] as const).map((handed) => {
      setPlayer({ statureM: 1.78, handed });
      go(1);
      return camera.position.clone();
    });
    const [right, left, again] = places;
    expect(Math.abs(right.z)).toBeGreaterThan(0.05);
    expect(left.x).toBeCloseTo(right.x, 6);
    expect(left.y).toBeCloseTo(right.y, 6);
    expect(left.z).toBeCloseTo(-right.z, 6);
    expect(again.distanceTo(right)).toBeLessThan(1e-6);
  });

  test('through the player’s eyes leaves out his head, and no other does', () => {
    const { frame, go } = stage();
    expect(frame.standpoint).toBe('outside');
    setView('playersEyes');
    go(2);
    expect(frame.standpoint).toBe('eyes');
    setView('faceOn');
    go(2);
    expect(frame.standpoint).toBe('outside');
  });

  test('opens up with the playhead at once, in a camera that is not on its way', () => {
    isStill = false;
    setView('faceOn');
    const { go } = stage();
    go(90);
    const early = view().distance;
    setPlayhead(swingSpan().to);
    go(1);
    const late = view().distance;
    expect(late).toBeGreaterThan(early * 1.02);
    go(30);
    expect(view().distance).toBe(late);
  });
});

test('a canvas hears the camera, the page does not: touch scrolls everything else', () => {
  const { canvas } = stage();
  expect(canvas.style).toMatchObject({ touchAction: 'none' });
  expect(new PlainCanvas(1, 1).style).toEqual({});
});
