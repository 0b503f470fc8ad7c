import type { IUniform, Material, WebGLProgramParametersWithUniforms } from 'three';
import { MATRIX_SIZE, PART, PART_IDS } from '../../figure/partIds';
import { patchShader } from './patchShader';

/** Three rows of four numbers a part: small enough for plain shader uniforms, which every graphics card reads fast. */
export type PartRows = { readonly value: Float32Array };

/** The parts of the figure, and behind them the ball. */
const PARTS = PART_IDS.length + 1;

/** Room for the matrix of every part and of the ball, as the shader reads it. */
export const createPartRows = (): PartRows => ({ value: new Float32Array(PARTS * 12) });

/** A run of parts: the first, and the one behind the last. */
export type PartRun = readonly [from: number, to: number];
export const BODY_PARTS: PartRun = [0, PART.grip];
export const WHOLE_FIGURE: PartRun = [0, PART_IDS.length];
export const CLUB_PARTS: PartRun = [PART.grip, PART_IDS.length];

/** Takes over a run of parts of a placement (columns) as rows, but for the parts in `hidden`, which shrink to nothing. */
export function fillPartRows(
  { value }: PartRows,
  placement: Float64Array,
  [first, end]: PartRun,
  hidden: readonly number[] = [],
): void {
  for (let from = first * MATRIX_SIZE; from < end * MATRIX_SIZE; from += MATRIX_SIZE) {
    for (let row = 0; row < 3; row++) {
      const to = from + row * 4;
      value[to] = placement[from + row];
      value[to + 1] = placement[from + 3 + row];
      value[to + 2] = placement[from + 6 + row];
      value[to + 3] = placement[from + 9 + row];
    }
  }
  for (const part of hidden) {
    for (let row = 0; row < 3; row++) value.fill(0, part * 12 + row * 4, part * 12 + row * 4 + 3);
  }
}

/** Puts the ball, which does not turn, at a place (m). */
export function fillBallRows({ value }: PartRows, place: ArrayLike<number>): void {
  for (let row = 0; row < 3; row++) {
    const to = PART_IDS.length * 12 + row * 4;
    value[to + row] = 1;
    value[to + 3] = place[row];
  }
}

/** Shader text for a vertex that belongs rigidly to one part. */
export const RIGID_PART_SHADER = {
  declare: /* glsl */ `
attribute float part;
uniform vec4 partRows[${PARTS * 3}];
vec3 carryNormal(vec3 n) {
  int i = int(part + .5) * 3;
  return vec3(dot(partRows[i].xyz, n), dot(partRows[i + 1].xyz, n), dot(partRows[i + 2].xyz, n));
}
vec3 carryPoint(vec3 p) {
  int i = int(part + .5) * 3;
  vec4 q = vec4(p, 1.);
  return vec3(dot(partRows[i], q), dot(partRows[i + 1], q), dot(partRows[i + 2], q));
}`,
} as const;

/** What is done to the shape of a part before it is carried: a function `shapePoint(vec3)` and what it needs. */
export interface PartShape {
  readonly uniforms: Readonly<Record<string, IUniform>>;
  /** Stands behind the declarations above. */
  readonly declare: string;
}

/**
 * Makes one of three's own materials draw vertices where their parts are, in the shape that `shape` gives them. Keeps what the
 * material already changed.
 */
export function withRigidParts<M extends Material>(material: M, rows: PartRows, shape?: PartShape): M {
  const before = material.onBeforeCompile.bind(material);
  const key = material.customProgramCacheKey();
  material.onBeforeCompile = (shader: WebGLProgramParametersWithUniforms, renderer) => {
    before(shader, renderer);
    Object.assign(shader.uniforms, { partRows: rows }, shape?.uniforms);
    shader.vertexShader = patchShader(shader.vertexShader, {
      '#include <common>': `#include <common>${RIGID_PART_SHADER.declare}${shape?.declare ?? ''}`,
      '#include <beginnormal_vertex>': '#include <beginnormal_vertex>\nobjectNormal = carryNormal(objectNormal);',
      '#include <begin_vertex>': `#include <begin_vertex>\ntransformed = carryPoint(${shape ? 'shapePoint(transformed)' : 'transformed'});`,
    });
  };
  material.customProgramCacheKey = () => `carried ${key}`;
  return material;
}
