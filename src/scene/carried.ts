import type { Material, WebGLProgramParametersWithUniforms } from 'three';
import { MATRIX_SIZE, PART_IDS } from '../figure/partIds';

/** Three rows of four numbers a part: small enough for plain shader uniforms, which every graphics card reads fast. */
export type PartRows = { readonly value: Float32Array };

export const createPartRows = (): PartRows => ({ value: new Float32Array(PART_IDS.length * 12) });

/** Takes over a placement (columns) as rows. A hidden part shrinks to nothing. */
export function fillPartRows({ value }: PartRows, placement: Float64Array, isHidden: (part: number) => boolean): void {
  for (let part = 0; part < PART_IDS.length; part++) {
    const from = part * MATRIX_SIZE;
    const size = isHidden(part) ? 0 : 1;
    for (let row = 0; row < 3; row++) {
      for (let column = 0; column < 4; column++) {
        value[from + row * 4 + column] = placement[from + column * 3 + row] * (column < 3 ? size : 1);
      }
    }
  }
}

/** Shader text for a vertex that belongs rigidly to one part. */
export const CARRY = {
  declare: /* glsl */ `
attribute float part;
uniform vec4 partRows[${PART_IDS.length * 3}];
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

/** Makes one of three's own materials draw vertices where their parts are. Keeps what the material already changed. */
export function carried<M extends Material>(material: M, rows: PartRows): M {
  const before = material.onBeforeCompile.bind(material);
  const key = material.customProgramCacheKey();
  material.onBeforeCompile = (shader: WebGLProgramParametersWithUniforms, renderer) => {
    before(shader, renderer);
    shader.uniforms['partRows'] = rows;
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', `#include <common>${CARRY.declare}`)
      .replace(
        '#include <beginnormal_vertex>',
        '#include <beginnormal_vertex>\nobjectNormal = carryNormal(objectNormal);',
      )
      .replace('#include <begin_vertex>', '#include <begin_vertex>\ntransformed = carryPoint(transformed);');
  };
  material.customProgramCacheKey = () => `carried ${key}`;
  return material;
}
