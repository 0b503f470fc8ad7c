import type { Page } from 'playwright-core';

/** Where the picture is looked at from, in the world's axes: +X to the target of a right-handed player, +Y up, +Z to the ball. */
export interface Eye {
  /** m */
  readonly at: readonly number[];
  /** Unit directions: from what is looked at to the eye, and to the right in the picture. */
  readonly back: readonly number[];
  readonly right: readonly number[];
}

/**
 * For `init`: notes the camera as it is handed to the graphics processor, drawn or not. A program that shows in perspective is the
 * picture's; the light, which looks at shadows, has none.
 */
export const NOTE_EYE = (): void => {
  const proto = WebGL2RenderingContext.prototype;
  const places = new WeakMap<WebGLUniformLocation, { readonly name: string; readonly program: WebGLProgram }>();
  const inPerspective = new WeakMap<WebGLProgram, boolean>();
  const find = Reflect.get(proto, 'getUniformLocation');
  Reflect.set(
    proto,
    'getUniformLocation',
    function (this: WebGL2RenderingContext, program: WebGLProgram, name: string) {
      const place = find.call(this, program, name);
      if (place) places.set(place, { name, program });
      return place;
    },
  );
  const set = Reflect.get(proto, 'uniformMatrix4fv') as (...args: unknown[]) => void;
  Reflect.set(proto, 'uniformMatrix4fv', function (this: WebGL2RenderingContext, ...args: unknown[]) {
    const place = places.get(args[0] as WebGLUniformLocation);
    const matrix = args[2] as Float32Array;
    if (place?.name === 'projectionMatrix') {
      inPerspective.set(place.program, matrix[11] === -1);
      if (matrix[11] === -1) Object.assign(globalThis, { eyeToPicture: Array.from(matrix) });
    }
    if (place?.name === 'viewMatrix' && inPerspective.get(place.program))
      Object.assign(globalThis, { worldToEye: Array.from(matrix) });
    set.apply(this, args);
  });
};

/** Where in the picture a place in the world (m) is, shares of its width and height from the upper left corner. */
export async function findInPicture(page: Page, [x, y, z]: readonly number[]): Promise<readonly [number, number]> {
  const [eye, lens] = await page.evaluate(() =>
    ['worldToEye', 'eyeToPicture'].map((name) => Reflect.get(globalThis, name) as number[]),
  );
  const through = (m: number[], p: number[]): number[] =>
    [0, 1, 2, 3].map((row) => p.reduce((sum, part, i) => sum + m[4 * i + row] * part, 0));
  const [u, v, , w] = through(lens, through(eye, [x, y, z, 1]));
  return [(u / w + 1) / 2, (1 - v / w) / 2];
}

/** The camera of the frame drawn last. */
export async function findEye(page: Page): Promise<Eye> {
  const m = await page.evaluate(() => Reflect.get(globalThis, 'worldToEye') as number[] | undefined);
  if (!m) throw new Error('No frame has been drawn since NOTE_EYE.');
  // Column by column: its rows are the eye's axes in the world.
  const at = [0, 1, 2].map((i) => -(m[4 * i] * m[12] + m[4 * i + 1] * m[13] + m[4 * i + 2] * m[14]));
  return { at, back: [m[2], m[6], m[10]], right: [m[0], m[4], m[8]] };
}
