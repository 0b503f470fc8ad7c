import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { ALL_DIALS } from '../../src/film/explain';
import { fitFilm, propagate } from '../../src/film/fit/fitFilm';
import { sightOf, toImage, type Pinhole } from '../../src/film/pinhole';
import type { Pixel } from '../../src/film/marks';
import { simulate } from '../unit/filmSimulated';
import { createPnp } from './opencv';
import { createRandom } from './random';

// Outside references: the camera of three.js 0.187 (its own matrices and field of view), and solvePnP of OpenCV 4.12 (camera resectioning from
// known points by its own Levenberg-Marquardt). Method: Criminisi, Reid, Zisserman, Single View Metrology, IJCV 40 (2000).

const SIZE = { w: 1080, h: 1920 };

/** Our camera as three's: it looks along +X where three's looks along -Z. */
function threeCamera({ eye, yaw, pitch, roll, focal }: Pinhole): PerspectiveCamera {
  const field = (2 * Math.atan(SIZE.h / 2 / focal) * 180) / Math.PI;
  const camera = new PerspectiveCamera(field, SIZE.w / SIZE.h, 0.01, 100);
  camera.position.set(...eye);
  camera.rotateY(-Math.PI / 2 - yaw);
  camera.rotateX(pitch);
  camera.rotateZ(-roll);
  camera.updateMatrixWorld();
  return camera;
}

test("three's perspective camera sees every point where ours does", () => {
  const random = createRandom(3);
  const between = (a: number, b: number): number => a + (b - a) * random();
  const out = new Float64Array(2);
  for (let i = 0; i < 300; i++) {
    const camera: Pinhole = {
      eye: [between(-8, -3), between(0.2, 2), between(-1.5, 1.5)],
      yaw: between(-0.5, 0.5),
      pitch: between(-0.5, 0.5),
      roll: between(-0.3, 0.3),
      focal: between(900, 4000),
    };
    const point = [between(-1, 1.5), between(0, 2), between(-1, 1.5)] as const;
    toImage(sightOf(camera), SIZE, ...point, out);
    const seen = new Vector3(...point).project(threeCamera(camera));
    expect(out[0]).toBeCloseTo(((seen.x + 1) / 2) * SIZE.w, 6);
    expect(out[1]).toBeCloseTo(((1 - seen.y) / 2) * SIZE.h, 6);
  }
});

describe("OpenCV's solvePnP", () => {
  test('stands where our camera stands for the points and pixels of our own fit, and near it for what was marked', async () => {
    const findEye = await createPnp();
    let inside = 0;
    let compared = 0;
    for (let seed = 1; seed <= 25; seed++) {
      const { marks, expected, camera, world } = simulate(seed)!;
      const fit = fitFilm(expected, marks, ALL_DIALS);
      const out = new Float64Array(2);
      const image = (of: Pinhole, [x, y, z]: readonly number[]): Pixel => {
        toImage(sightOf(of), SIZE, x, y, z, out);
        return [out[0], out[1]];
      };
      // The same points through our camera: the conventions agree to the last digits.
      const own = findEye(
        world.map(({ at }) => at),
        world.map(({ at }) => image(fit.camera, at)),
        SIZE,
        fit.camera,
      );
      own.forEach((value, i) => expect(Math.abs(value - fit.camera.eye[i])).toBeLessThan(1e-6));
      // The marks as they were made, on points that OpenCV is told and we are not: both are off the truth by their own noise.
      const told = findEye(
        world.map(({ at }) => at),
        world.map(({ mark }) => mark),
        SIZE,
        camera,
      );
      told.forEach((value, i) => {
        const { sd } = propagate(fit, (x) => fit.terms.camera(x).eye[i]);
        compared++;
        if (Math.abs(value - fit.camera.eye[i]) < 2.5 * Math.hypot(sd, Math.abs(value - camera.eye[i]))) inside++;
      });
    }
    expect(compared).toBe(75);
    // 2.5 standard deviations hold 98.8 of 100; nine in ten is far from chance either way.
    expect(inside / compared).toBeGreaterThan(0.9);
  });
});
