import { Color, type MeshStandardMaterial } from 'three';
import type { Theme } from './theme';

/** Five soft panels: colour, strength, half-angle (as a cosine), place. A draughtsman's room with its window behind the viewer. */
const PANELS: readonly (readonly [string, number, number, readonly [number, number, number]])[] = [
  ['#fff6e6', 3.4, 0.86, [-3, 4, 3]],
  ['#eef1f6', 1.05, 0.9, [5, 2, -1]],
  ['#ffffff', 1.8, 0.94, [1, 2, 5]],
  ['#fff4dd', 1.1, 0.78, [0, 6, 0]],
  ['#fff0d8', 1.2, 0.92, [-1.5, 1.6, -4.5]],
];

const vec3 = ([x, y, z]: readonly [number, number, number]): string =>
  `vec3(${x.toFixed(4)}, ${y.toFixed(4)}, ${z.toFixed(4)})`;

const PANEL_LINES = PANELS.map(([colour, strength, cosine, [x, y, z]]) => {
  const size = Math.hypot(x, y, z);
  const { r, g, b } = new Color(colour);
  const light = vec3([r * strength, g * strength, b * strength]);
  return `  light += ${light} * smoothstep(${cosine.toFixed(3)} - soft, ${cosine.toFixed(3)} + soft * .35, dot(toward, ${vec3([x / size, y / size, z / size])}));`;
}).join('\n');

/**
 * What brass and steel reflect: a room worked out in the fragment shader, sharper for smoother metal. No picture, no render
 * target, nothing that a lost context could take away.
 */
export function reflectRoom(material: MeshStandardMaterial, theme: Theme, strength: number): MeshStandardMaterial {
  material.onBeforeCompile = (shader) => {
    shader.uniforms['roomFloor'] = { value: theme.bounce };
    shader.uniforms['roomWall'] = { value: theme.sky };
    shader.uniforms['roomStrength'] = { value: strength };
    shader.fragmentShader = shader.fragmentShader
      .replace(
        '#include <common>',
        `#include <common>
uniform vec3 roomFloor;
uniform vec3 roomWall;
uniform float roomStrength;
vec3 roomLight(vec3 toward, float rough) {
  float soft = .04 + .5 * rough;
  float height = smoothstep(-.25 - rough * .4, .35 + rough * .4, toward.y);
  vec3 light = mix(roomFloor * .24, roomWall * .3, height);
${PANEL_LINES}
  return light * roomStrength;
}`,
      )
      .replace(
        '#include <lights_fragment_maps>',
        `#include <lights_fragment_maps>
radiance += roomLight(inverseTransformDirection(reflect(-geometryViewDir, geometryNormal), viewMatrix), material.roughness);`,
      );
  };
  // The panels are written into the program; colours and strength are uniforms, so one program serves all metals.
  material.customProgramCacheKey = () => 'room';
  return material;
}
