import { Color, MeshPhysicalMaterial, ShaderChunk, type Material, type Vector2 } from 'three';
import { patchShader } from './patchShader';
import { withRigidParts, type PartRows } from './rigidPartShader';
import { leastClub } from './leastClub';
import { MIRRORED, STUDIO_LIGHT } from '../setting/studioReflection';
import type { Solidity } from './solids';
import type { Theme } from '../setting/theme';

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

/**
 * Growth rings round an axis beside the part's own, fibres thirty times longer than wide, slow mottling. `wide` is the width of a
 * pixel on the part, m.
 */
const GRAIN = /* glsl */ `
{
  vec3 q = vGrain;
  float piece = vPiece;
  vec2 heart = vec2(.052 + .012 * sin(piece * 2.4), .02 + .02 * cos(piece * 1.7));
  q.y += piece * .37;
  float wander = grainNoise(q * vec3(9., 2.2, 9.));
  float ring = length((q.xz + heart) * vec2(1., 1.15)) * 118. + wander * 3.2 + q.y * 3.;
  // Wood darkens slowly over a summer and ends it sharply.
  float year = fract(ring / 6.2832);
  float late = pow(year, 3.) * (1. - smoothstep(.93, 1., year));
  // Fibres narrower than a pixel fade out instead of shimmering; once faded they are not computed.
  float fibre = .5, streak = .5;
  float fineShare = 1. - smoothstep(.35, 1.1, wide * 420.);
  float broadShare = 1. - smoothstep(.35, 1.1, wide * 150.);
  if (fineShare > 0.) fibre = mix(.5, grainNoise(q * vec3(420., 14., 420.)), fineShare);
  if (broadShare > 0.) streak = mix(.5, grainNoise(q * vec3(150., 5., 150.)), broadShare);
  float mottle = grainNoise(q * vec3(16., 3., 16.));
  // Beech has short dark flecks along the grain.
  float fleck = 0.;
  float fleckShare = 1. - smoothstep(.5, 1.5, wide * 260.);
  if (fleckShare > 0.) fleck = smoothstep(.74, .86, grainNoise(q * vec3(330., 42., 330.))) * fleckShare;
  float shade = late * .5 + (fibre * .5 + streak * .5) * .3 + (mottle - .5) * .26 + fleck * .26 - .04;
  diffuseColor.rgb = mix(woodEarly[surface], woodLate[surface], clamp(shade, 0., 1.));
}`;

/** What a surface is made of, by its place in `SOLIDITIES`: two woods, rubber, three metals, the ball. */
const KINDS = /* glsl */ `
  int surface = int(vSurface + .5);
  bool isWood = surface < 2;
  bool isMetal = surface > 2 && surface < 6;
  bool isBall = surface == 6;
`;

/** No shadow falls on the ball: its own would speckle it. */
const LIGHTS = ShaderChunk.lights_fragment_begin.replaceAll('receiveShadow', '(receiveShadow && !isBall)');

type Finish = readonly [colour: Color, roughness: number];
const finishes = (theme: Theme): Readonly<Record<Solidity, Finish>> => ({
  beech: [theme.beech[0], 0.5],
  walnut: [theme.walnut[0], 0.42],
  dark: [theme.dark, 0.82],
  steel: [theme.steel, 0.26],
  head: [theme.blade, 0.4],
  brass: [theme.brass, 0.28],
  ball: [new Color('#fffdf6'), 0.35],
});

/** Oil gleams where the wood turns away from the eye, most toward the light from behind. */
const GLEAM = /* glsl */ `
if (isWood) {
  float turned = 1. - saturate(dot(geometryNormal, geometryViewDir));
  vec3 behind = normalize((viewMatrix * vec4(.35, .75, -.55, 0.)).xyz);
  outgoingLight += gleam * diffuseColor.rgb * pow(turned, 2.6) * (.35 + .65 * saturate(dot(geometryNormal, behind)));
}
`;

/**
 * One material for everything that is solid, so that all of it is one draw call: oiled wood with its grain drawn from the part's own
 * coordinates, rubber, metal that mirrors a room, and the ball. Which of them a vertex belongs to is its attribute `surface`.
 */
export function solidMaterial(theme: Theme, rows: PartRows, size: Vector2): Material {
  const material = new MeshPhysicalMaterial({ clearcoat: 0.2, clearcoatRoughness: 0.42 });
  const finish = Float32Array.from(
    Object.values(finishes(theme)).flatMap(([{ r, g, b }, roughness]) => [r, g, b, roughness]),
  );
  // The developers' panel turns the roughnesses in it.
  material.userData['finish'] = finish;
  material.onBeforeCompile = (shader) => {
    Object.assign(shader.uniforms, {
      finish: { value: finish },
      woodEarly: { value: [theme.beech[0], theme.walnut[0]] },
      woodLate: { value: [theme.beech[1], theme.walnut[1]] },
      roomFloor: { value: theme.bounce },
      roomWall: { value: theme.sky },
      gleam: { value: theme.gleam.clone().multiplyScalar(theme.gleamShare) },
    });
    const varyings = 'varying vec3 vGrain;\nvarying float vPiece;\nvarying float vSurface;';
    shader.vertexShader = patchShader(shader.vertexShader, {
      '#include <common>': `#include <common>\nattribute float surface;\n${varyings}`,
      '#include <begin_vertex>': '#include <begin_vertex>\nvGrain = position;\nvPiece = part;\nvSurface = surface;',
    });
    shader.fragmentShader = patchShader(shader.fragmentShader, {
      '#include <common>': `#include <common>\n${varyings}\nuniform vec4 finish[7];\nuniform vec3 woodEarly[2], woodLate[2], gleam;${NOISE}${STUDIO_LIGHT}`,
      // The width of a pixel comes from its neighbours, so it is asked for before woods part from metals.
      '#include <color_fragment>': `${KINDS}  diffuseColor.rgb = finish[surface].rgb;\n  float wide = length(fwidth(vGrain.xz));\n  if (isWood) ${GRAIN}`,
      '#include <roughnessmap_fragment>': 'float roughnessFactor = finish[surface].a;',
      '#include <metalnessmap_fragment>': 'float metalnessFactor = isMetal ? 1. : 0.;',
      '#include <lights_physical_fragment>':
        '#include <lights_physical_fragment>\nif (!isWood) material.clearcoat = 0.;',
      '#include <lights_fragment_begin>': LIGHTS,
      '#include <lights_fragment_maps>': `#include <lights_fragment_maps>\nif (isMetal) radiance += ${MIRRORED};`,
      '#include <opaque_fragment>': `${GLEAM}#include <opaque_fragment>`,
    });
  };
  material.customProgramCacheKey = () => 'solids';
  return withRigidParts(material, rows, leastClub(theme, size));
}
