import { createRequire } from 'node:module';
import type { Pinhole } from '../../src/film/pinhole';
import type { Pixel, PictureSize } from '../../src/film/marks';

/** What is used of OpenCV 4.12 compiled to WebAssembly. Its camera looks along +z, with x right and y down. */
interface Matrix {
  readonly data64F: Float64Array;
  delete(): void;
}
interface OpenCv {
  readonly CV_64F: number;
  readonly SOLVEPNP_ITERATIVE: number;
  readonly Mat: new () => Matrix;
  matFromArray(rows: number, columns: number, type: number, values: readonly number[]): Matrix;
  solvePnP(
    points: Matrix,
    images: Matrix,
    camera: Matrix,
    distortion: Matrix,
    rotation: Matrix,
    translation: Matrix,
    guess: boolean,
    flags: number,
  ): boolean;
  Rodrigues(vector: Matrix, matrix: Matrix): void;
}

/** What the package exports: itself once it is ready, until then something that calls back. */
type Loading = Partial<OpenCv> & { then?: (done: (ready: OpenCv) => void) => void };

/** Loads OpenCV, which takes about a second. It is handed over in a box: with its own "then" a promise would wait for it forever. */
const loadOpenCv = (): Promise<{ readonly cv: OpenCv }> =>
  new Promise((resolve) => {
    const loading = createRequire(import.meta.url)('@techstark/opencv-js') as Loading;
    if (loading.then) loading.then((cv) => resolve({ cv }));
    else resolve({ cv: loading as OpenCv });
  });

/** Where OpenCV's solvePnP puts the eye of a camera of known focal length that sees world points (m) at these pixels, m. */
export async function createPnp(): Promise<
  (points: readonly (readonly number[])[], images: readonly Pixel[], size: PictureSize, camera: Pinhole) => number[]
> {
  const { cv } = await loadOpenCv();
  return (points, images, size, { focal }) => {
    const matrices = {
      points: cv.matFromArray(points.length, 3, cv.CV_64F, points.flat()),
      images: cv.matFromArray(
        images.length,
        2,
        cv.CV_64F,
        images.flatMap(([u, v]) => [u, v]),
      ),
      camera: cv.matFromArray(3, 3, cv.CV_64F, [focal, 0, size.w / 2, 0, focal, size.h / 2, 0, 0, 1]),
      distortion: cv.matFromArray(4, 1, cv.CV_64F, [0, 0, 0, 0]),
      rotation: new cv.Mat(),
      translation: new cv.Mat(),
      turned: new cv.Mat(),
    };
    const { rotation, translation, turned } = matrices;
    cv.solvePnP(
      matrices.points,
      matrices.images,
      matrices.camera,
      matrices.distortion,
      rotation,
      translation,
      false,
      cv.SOLVEPNP_ITERATIVE,
    );
    cv.Rodrigues(rotation, turned);
    const r = turned.data64F;
    const t = translation.data64F;
    const eye = [0, 1, 2].map((i) => -(r[i] * t[0] + r[i + 3] * t[1] + r[i + 6] * t[2]));
    for (const matrix of Object.values(matrices)) matrix.delete();
    return eye;
  };
}
