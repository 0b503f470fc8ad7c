import { Vector3, type PerspectiveCamera } from 'three';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createPins, PIN_IDS, PIN_SIZE, placePins, type PinId } from '../../src/scene/figure/jointPins';
import { StageCamera } from '../../src/stage/camera/StageCamera';
import { DeskFrame } from '../../src/stage/deskFrame';
import { PinHandles } from '../../src/stage/pins/PinHandles';
import { DIAL_OF } from '../../src/stage/pins/pinStore';
import {
  desk,
  dialValue,
  edgeDial,
  holdAt,
  setMovement,
  setPlayer,
  setView,
  stagePicture,
  undo,
  type ViewId,
} from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { mount } from './mounted';

const [WIDTH, HEIGHT] = [800, 600];
let page: EventTarget & { hidden?: boolean };

beforeEach(() => {
  clearDesk();
  page = new EventTarget();
  vi.stubGlobal('DOMRect', class {});
  vi.stubGlobal('document', page);
  vi.stubGlobal('window', new EventTarget());
  vi.stubGlobal('matchMedia', () => Object.assign(new EventTarget(), { matches: true }));
});
afterEach(() => vi.unstubAllGlobals());

/** Where the pins of what a frame shows are: places and ways, in the world. */
function pinsOf(frame: DeskFrame): Record<PinId, { readonly at: number[]; readonly way: number[] }> {
  const out = createPins();
  placePins(frame.figure!, frame.placement, frame.shown!.pose, out);
  const entries = PIN_IDS.map((id, i) => {
    const from = i * PIN_SIZE;
    return [id, { at: [...out.subarray(from, from + 3)], way: [...out.subarray(from + 3, from + 6)] }] as const;
  });
  return Object.fromEntries(entries) as ReturnType<typeof pinsOf>;
}

/** The stage's camera and pins on a canvas that draws nothing. */
function stage() {
  const frame = new DeskFrame();
  frame.size.set(WIDTH, HEIGHT);
  const mounted = mount(
    <>
      <PinHandles frame={frame} />
      <StageCamera frame={frame} keyed={new EventTarget() as HTMLElement} isHeld={{ current: false }} />
    </>,
    { width: WIDTH, height: HEIGHT },
  );
  let time = 0;
  const go = (): void => {
    for (let i = 0; i < 3; i++) {
      frame.update();
      mounted.advance((time += 1 / 60));
    }
  };
  const { canvas } = mounted;
  const pointer = (target: EventTarget, type: string, [x, y]: readonly number[], more: object): void => {
    const event = new Event(type, { bubbles: true });
    Object.assign(event, {
      pointerId: 1,
      pointerType: 'touch',
      clientX: x,
      clientY: y,
      button: 0,
      buttons: 1,
      ...more,
    });
    target.dispatchEvent(event);
    go();
  };
  const camera = mounted.camera as PerspectiveCamera;
  const onScreen = ([x, y, z]: readonly number[]): [number, number] => {
    camera.updateMatrixWorld();
    const p = new Vector3(x, y, z * frame.mirror).project(camera);
    return [((p.x + 1) / 2) * WIDTH, ((1 - p.y) / 2) * HEIGHT];
  };
  go();
  return {
    frame,
    go,
    onScreen,
    down: (at: readonly number[], more = {}) => pointer(canvas, 'pointerdown', at, more),
    moveTo: (at: readonly number[], more = {}) => pointer(canvas.ownerDocument, 'pointermove', at, more),
    lift: (at: readonly number[], more = {}) => pointer(canvas.ownerDocument, 'pointerup', at, more),
  };
}

const valueOf = (pin: PinId): number => dialValue(desk.getState().document.movements, DIAL_OF[pin]);

describe.each(PIN_IDS)('the pin of the %s', (id) => {
  test.each([
    ['P5', 'right'],
    ['P6', 'right'],
    ['P5', 'left'],
  ] as const)('at %s of a %s-handed player goes the way its dial moves it', (position, handed) => {
    setPlayer({ statureM: 1.78, handed });
    holdAt(position);
    // At one instant: a playhead held at a position would come to another.
    const { t } = desk.getState().session;
    desk.setState({ session: { ...desk.getState().session, held: null, t } });
    const { frame, go } = stage();
    const { way } = pinsOf(frame)[id];
    // What moves with the joint: the club's head with the wrist, the pins themselves with the trunk.
    const place = (): number[] => (id === 'leadWrist' ? [...frame.shown!.pose.subarray(24, 27)] : pinsOf(frame)[id].at);
    const before = place();
    const { neutral, step } = edgeDial(DIAL_OF[id]);
    setMovement(DIAL_OF[id], neutral + 3 * step);
    go();
    const moved = place().map((x, axis) => x - before[axis]);
    const size = Math.hypot(...moved);
    expect(size).toBeGreaterThan(1e-4);
    expect(moved.reduce((sum, x, axis) => sum + x * way[axis], 0) / size).toBeGreaterThan(0.6);
  });

  test.each(['touch', 'mouse', 'pen'] as const)(
    'dragged by %s moves its dial, in one undo step, and turns no picture',
    (pointerType) => {
      const { frame, onScreen, down, moveTo, lift } = stage();
      const { at, way } = pinsOf(frame)[id];
      const from = onScreen(at);
      const to = onScreen(at.map((x, axis) => x + 0.12 * way[axis]));
      const before = stagePicture.getState().drawn!.view;
      const start = valueOf(id);
      const { past } = desk.getState().history;
      const kind = { pointerType };
      down(from, kind);
      for (const share of [0.25, 0.5, 0.75, 1])
        moveTo(
          from.map((x, i) => x + share * (to[i] - x)),
          kind,
        );
      expect(desk.getState().history.past).toBe(past);
      lift(to, kind);
      expect(valueOf(id)).toBeGreaterThan(start);
      expect(desk.getState().history.past.length).toBe(past.length + 1);
      expect(desk.getState().gesture).toBeNull();
      expect(stagePicture.getState().drawn!.view).toEqual(before);
      undo();
      expect(valueOf(id)).toBe(start);
    },
  );

  test('dragged back to where it was leaves no step, and a cancelled drag stays where it is', () => {
    const { frame, onScreen, down, moveTo, lift } = stage();
    const from = onScreen(pinsOf(frame)[id].at);
    const { past } = desk.getState().history;
    down(from);
    moveTo([from[0] + 30, from[1] + 30]);
    moveTo(from);
    lift(from);
    expect(desk.getState().history.past).toEqual(past);
  });
});

test('two taps on a pin reset its dial, in one undo step; one tap, and a tap with a drag, do not', () => {
  const { frame, go, onScreen, down, moveTo, lift } = stage();
  setMovement('leadWristFlexion', 12);
  go();
  const { past } = desk.getState().history;
  const at = onScreen(pinsOf(frame).leadWrist.at);
  const tap = (): void => {
    down(at);
    // A finger trembles.
    moveTo([at[0] + 3, at[1] - 2]);
    lift([at[0] + 3, at[1] - 2]);
  };
  tap();
  expect(valueOf('leadWrist')).toBe(12);
  const other = onScreen(pinsOf(frame).chest.at);
  down(other);
  lift(other);
  tap();
  expect(valueOf('leadWrist')).toBe(12);
  tap();
  expect(valueOf('leadWrist')).toBe(edgeDial('leadWristFlexion').neutral);
  expect(desk.getState().history.past.length).toBe(past.length + 1);
  undo();
  expect(valueOf('leadWrist')).toBe(12);
});

test('beside the pins a drag turns the picture and moves no dial', () => {
  const { down, moveTo, lift } = stage();
  const { movements } = desk.getState().document;
  const { yaw } = stagePicture.getState().drawn!.view;
  down([40, 60]);
  moveTo([140, 60]);
  lift([140, 60]);
  expect(desk.getState().document.movements).toBe(movements);
  expect(stagePicture.getState().drawn!.view.yaw).not.toBeCloseTo(yaw, 3);
});

test.each<[string, () => void]>([
  ['the swing plays', () => desk.setState({ session: { ...desk.getState().session, playing: true } })],
  [
    'a joint is set on the bench',
    () => desk.setState({ session: { ...desk.getState().session, bench: { trunkTilt: 0.1 } } }),
  ],
  ['the player’s eyes are looked through', () => setView('playersEyes' satisfies ViewId)],
])('no pin is offered while %s', (_, begin) => {
  const { frame, go } = stage();
  expect(frame.shown!.pins).toBeDefined();
  begin();
  go();
  expect(frame.shown!.pins === undefined || frame.standpoint === 'eyes').toBe(true);
});
