import { expect, test } from 'vitest';
import { GpuBackpressure } from '../../src/stage/gpuBackpressure';

/** A graphics processor that finishes a picture when told to. */
function processor() {
  const open = new Set<object>();
  let isLost = false;
  let sent = 0;
  return {
    gl: {
      SYNC_GPU_COMMANDS_COMPLETE: 1,
      SYNC_STATUS: 2,
      UNSIGNALED: 3,
      fenceSync: () => {
        if (isLost) return null;
        const fence = {};
        open.add(fence);
        return fence;
      },
      getSyncParameter: (fence: object) => (isLost ? null : open.has(fence) ? 3 : 4),
      deleteSync: () => undefined,
      flush: () => (sent += 1),
    } as unknown as WebGL2RenderingContext,
    finishOne: () => open.delete([...open][0]),
    lose: () => (isLost = true),
    sent: () => sent,
  };
}

test('a third picture waits until the first of two is done', () => {
  const { gl, finishOne } = processor();
  const pace = new GpuBackpressure(gl);
  for (let i = 0; i < 2; i++) {
    expect(pace.isBusy()).toBe(false);
    pace.mark();
  }
  expect(pace.isBusy()).toBe(true);
  finishOne();
  expect(pace.isBusy()).toBe(false);
  pace.mark();
  expect(pace.isBusy()).toBe(true);
});

test('pictures that nobody shows are sent off before a third waits for them, once', () => {
  const { gl, sent, finishOne } = processor();
  const pace = new GpuBackpressure(gl);
  pace.mark();
  expect(pace.isBusy()).toBe(false);
  expect(sent()).toBe(0);
  pace.mark();
  for (let i = 0; i < 3; i++) expect(pace.isBusy()).toBe(true);
  expect(sent()).toBe(1);
  finishOne();
  expect(pace.isBusy()).toBe(false);
  pace.mark();
  expect(pace.isBusy()).toBe(true);
  expect(sent()).toBe(2);
});

test('a lost context holds nothing back, before or after its return', () => {
  const { gl, lose } = processor();
  const pace = new GpuBackpressure(gl);
  pace.mark();
  pace.mark();
  lose();
  expect(pace.isBusy()).toBe(false);
  pace.mark();
  pace.mark();
  expect(pace.isBusy()).toBe(false);
});
