import {
  BackSide,
  MeshPhysicalMaterial,
  MeshStandardMaterial,
  ShaderMaterial,
  type Vector2,
  type Material,
} from 'three';
import { CARRY, carried, type PartRows } from './carried';
import { reflectRoom } from './room';
import type { Theme } from './theme';

const NOISE = /* glsl */ `
float grainHash(vec3 p) { p = fract(p * .3183099 + .1); p *= 17.; return fract(p.x * p.y * p.z * (p.x + p.y + p.z)); }
float grainNoise(vec3 x) {
  vec3 i = floor(x), f = fract(x);
  f = f * f * (3. - 2. * f);
  return mix(
    mix(mix(grainHash(i), grainHash(i + vec3(1, 0, 0)), f.x), mix(grainHash(i + vec3(0, 1, 0)), grainHash(i + vec3(1, 1, 0)), f.x), f.y),
    mix(mix(grainHash(i + vec3(0, 0, 1)), grainHash(i + vec3(1, 0, 1)), f.x), mix(grainHash(i + vec3(0, 1, 1)), grainHash(i + vec3(1, 1, 1)), f.x), f.y),
    f.z);
}`;

/** Growth rings round an axis beside the part's own, fibres thirty times longer than wide, slow mottling. */
const GRAIN = /* glsl */ `
{
  vec3 q = vGrain;
  float piece = vPiece;
  vec2 heart = vec2(.052 + .012 * sin(piece * 2.4), .02 + .02 * cos(piece * 1.7));
  q.y += piece * .37;
  float wander = grainNoise(q * vec3(9., 2.2, 9.));
  float ring = length((q.xz + heart) * vec2(1., 1.15)) * 118. + wander * 3.2 + q.y * 3.;
  float late = pow(.5 + .5 * sin(ring), 2.2);
  // Fibres narrower than a pixel fade out instead of shimmering.
  float wide = length(fwidth(q.xz));
  float fibre = mix(.5, grainNoise(q * vec3(420., 14., 420.)), 1. - smoothstep(.35, 1.1, wide * 420.));
  float streak = mix(.5, grainNoise(q * vec3(150., 5., 150.)), 1. - smoothstep(.35, 1.1, wide * 150.));
  float mottle = grainNoise(q * vec3(16., 3., 16.));
  float shade = late * .42 + (fibre * .5 + streak * .5) * .34 + (mottle - .5) * .3 + .06;
  diffuseColor.rgb = mix(woodEarly, woodLate, clamp(shade, 0., 1.));
}`;

/** Oiled wood, its grain drawn from the part's own coordinates. */
function wood(pair: Theme['beech'], roughness: number): MeshPhysicalMaterial {
  const material = new MeshPhysicalMaterial({
    roughness,
    clearcoat: 0.12,
    clearcoatRoughness: 0.5,
  });
  material.onBeforeCompile = (shader) => {
    shader.uniforms['woodEarly'] = { value: pair[0] };
    shader.uniforms['woodLate'] = { value: pair[1] };
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nvarying vec3 vGrain;\nvarying float vPiece;')
      .replace('#include <begin_vertex>', '#include <begin_vertex>\nvGrain = position;\nvPiece = part;');
    shader.fragmentShader = shader.fragmentShader
      .replace(
        '#include <common>',
        `#include <common>\nvarying vec3 vGrain;\nvarying float vPiece;\nuniform vec3 woodEarly, woodLate;${NOISE}`,
      )
      .replace('#include <color_fragment>', `#include <color_fragment>${GRAIN}`);
  };
  material.customProgramCacheKey = () => 'wood';
  return material;
}

/** One material a surface, in the order of `SURFACES`. */
export function surfaceMaterials(theme: Theme, rows: PartRows): Material[] {
  const materials = [
    wood(theme.beech, 0.56),
    wood(theme.walnut, 0.5),
    new MeshStandardMaterial({ color: theme.dark, roughness: 0.82 }),
    reflectRoom(new MeshStandardMaterial({ color: theme.steel, metalness: 1, roughness: 0.22 }), theme, 1),
    reflectRoom(new MeshStandardMaterial({ color: theme.blade, metalness: 1, roughness: 0.36 }), theme, 1),
    reflectRoom(new MeshStandardMaterial({ color: theme.brass, metalness: 1, roughness: 0.28 }), theme, 1),
  ];
  return materials.map((material) => carried(material, rows));
}

/**
 * Ink round every solid: its back faces, pushed out along the normal by `pen` css px. With `rows` for a geometry in parts,
 * without for a plain one.
 */
export function contourMaterial(theme: Theme, size: Vector2, rows?: PartRows): ShaderMaterial {
  return new ShaderMaterial({
    side: BackSide,
    uniforms: {
      ink: { value: theme.contour },
      size: { value: size },
      pen: { value: 1.1 },
      ...(rows ? { partRows: rows } : {}),
    },
    vertexShader: /* glsl */ `
      ${rows ? CARRY.declare : ''}
      uniform vec2 size;
      uniform float pen;
      void main() {
        vec3 place = ${rows ? 'carryPoint(position)' : 'position'};
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
