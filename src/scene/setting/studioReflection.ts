import { Color } from 'three';

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
 * What brass and steel reflect: a room worked out in the fragment shader, sharper for smoother metal. No texture and no
 * render target, so nothing to restore after a lost context. The panels are written into the program, its two colours
 * are uniforms.
 */
export const STUDIO_LIGHT = /* glsl */ `
uniform vec3 roomFloor;
uniform vec3 roomWall;
vec3 roomLight(vec3 toward, float rough) {
  float soft = .04 + .5 * rough;
  float height = smoothstep(-.25 - rough * .4, .35 + rough * .4, toward.y);
  vec3 light = mix(roomFloor * .24, roomWall * .3, height);
${PANEL_LINES}
  return light;
}`;

/** Where a material of three's takes in what it mirrors. */
export const MIRRORED =
  'roomLight(inverseTransformDirection(reflect(-geometryViewDir, geometryNormal), viewMatrix), material.roughness)';
