import { BackSide, ShaderMaterial, type Vector2 } from 'three';
import { leastClub } from './leastClub';
import { RIGID_PART_SHADER, type PartRows } from './rigidPartShader';
import type { Theme } from '../setting/theme';

/**
 * Ink round every solid: its back faces, pushed out along the normal by `pen` css px. With `rows` for a geometry in parts,
 * without for a plain one.
 */
export function contourMaterial(theme: Theme, size: Vector2, rows?: PartRows): ShaderMaterial {
  const club = leastClub(theme, size);
  return new ShaderMaterial({
    side: BackSide,
    uniforms: {
      ink: { value: theme.contour },
      size: { value: size },
      pen: { value: 1.1 },
      ...(rows ? { partRows: rows, ...club.uniforms } : {}),
    },
    vertexShader: /* glsl */ `
      ${rows ? RIGID_PART_SHADER.declare + club.declare : 'uniform vec2 size;'}
      uniform float pen;
      void main() {
        vec3 place = ${rows ? 'carryPoint(shapePoint(position))' : 'position'};
        vec3 away = ${rows ? 'carryNormal(normal)' : 'normal'};
        vec4 p = projectionMatrix * modelViewMatrix * vec4(place, 1.);
        vec2 out0 = normalize((projectionMatrix * vec4(normalMatrix * away, 0.)).xy + 1e-6);
        p.xy += out0 * pen * 2. / size * p.w;
        p.z += .0004 * p.w;
        gl_Position = p;
      }`,
    fragmentShader: /* glsl */ `
      uniform vec3 ink;
      void main() {
        gl_FragColor = vec4(ink, 1.);
        #include <colorspace_fragment>
      }`,
  });
}
