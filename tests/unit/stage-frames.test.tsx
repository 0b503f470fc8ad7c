import { useThree, type RootState } from '@react-three/fiber';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { DeskFrame } from '../../src/stage/deskFrame';
import { useStageFrames } from '../../src/stage/useStageFrames';
import { setMovement } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { idleContext, mount } from './mounted';

// The browser's frames, one at a time by hand.
let due = new Map<number, () => void>();
let given = 0;
const frame = (): void => {
  const now = due;
  due = new Map();
  for (const work of now.values()) work();
};
beforeEach(() => {
  due.clear();
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => {
    due.set(++given, work);
    return given;
  });
  vi.stubGlobal('cancelAnimationFrame', (id: number) => due.delete(id));
  clearDesk();
});
const opened: ReturnType<typeof mount>[] = [];
afterEach(async () => {
  settle();
  for (const { root } of opened.splice(0)) {
    root.unmount();
    // Its effects end with the next task.
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  vi.unstubAllGlobals();
});

/** A stage without a scene, and how often it was drawn. */
function stage(onPosed: (ask: RootState['invalidate']) => void = () => undefined, context = idleContext) {
  function Frames() {
    const invalidate = useThree((state) => state.invalidate);
    useStageFrames(new DeskFrame(), () => onPosed(invalidate));
    return null;
  }
  const mounted = mount(<Frames />, { frameloop: 'demand', context });
  opened.push(mounted);
  return mounted;
}
/** Lets frames go by until none is asked for, or ten have. */
function settle(): number {
  let count = 0;
  while (due.size > 0 && count < 10) {
    frame();
    count++;
  }
  return count;
}

describe('frames of the stage', () => {
  test('come once however often they are asked for, and then no more', () => {
    const { render } = stage();
    settle();
    render.mockClear();
    setMovement('leadWristFlexion', 5);
    setMovement('leadWristFlexion', 6);
    expect(render).not.toHaveBeenCalled();
    expect(due.size).toBe(1);
    frame();
    expect(render).toHaveBeenCalledTimes(1);
    expect(due.size).toBe(0);
  });

  test('come for a canvas of another size', () => {
    const { render, setSize } = stage();
    settle();
    render.mockClear();
    setSize(801, 600);
    settle();
    expect(render).toHaveBeenCalledTimes(1);
  });

  test('are tried again until the graphics processor takes them, and pose nothing until then', () => {
    let pending = false;
    const posed = vi.fn();
    const { render } = stage(posed, { ...idleContext, getSyncParameter: () => (pending ? idleContext.UNSIGNALED : 4) });
    settle();
    setMovement('leadWristFlexion', 7);
    settle();
    pending = true;
    setMovement('leadWristFlexion', 8);
    settle();
    render.mockClear();
    posed.mockClear();
    setMovement('leadWristFlexion', 9);
    expect(settle()).toBe(10);
    expect(render).not.toHaveBeenCalled();
    expect(posed).not.toHaveBeenCalled();
    pending = false;
    settle();
    expect(render).toHaveBeenCalledTimes(1);
    expect(due.size).toBe(0);
  });

  test('asked for while one is drawn are the next', () => {
    const drawn: number[] = [];
    stage((ask) => {
      drawn.push(drawn.length);
      if (drawn.length < 3) ask();
    });
    frame();
    expect(drawn).toEqual([0]);
    settle();
    expect(drawn).toEqual([0, 1, 2]);
  });

  test('do not come once the stage is gone', async () => {
    const { render, root, canvas } = stage();
    settle();
    render.mockClear();
    setMovement('leadWristFlexion', 11);
    root.unmount();
    // React takes it apart in its own time: until a change brings no more frame.
    let flexion = 11;
    await vi.waitFor(() => {
      settle();
      render.mockClear();
      setMovement('leadWristFlexion', ++flexion);
      settle();
      expect(render).not.toHaveBeenCalled();
    });
    setMovement('leadWristFlexion', ++flexion);
    canvas.dispatchEvent(new Event('webglcontextrestored'));
    settle();
    expect(render).not.toHaveBeenCalled();
  });

  test('come when a lost context is back, shadow and all', () => {
    const { render, canvas, gl } = stage();
    settle();
    render.mockClear();
    gl.shadowMap.needsUpdate = false;
    canvas.dispatchEvent(new Event('webglcontextrestored'));
    settle();
    expect(render).toHaveBeenCalledTimes(1);
    expect(gl.shadowMap.needsUpdate).toBe(true);
  });
});
