import type { Vector2 } from 'three';
import { PART } from '../../figure/partIds';
import type { Theme } from '../setting/theme';
import type { PartShape } from './rigidPartShader';

/** The grip and the sleeve stay thicker than the shaft between them, however small the picture. */
const THICKER = { grip: 1.25, sleeve: 1.15 } as const;
/** A head whose blade (m) would be shorter than this many css px is enlarged, up to `most` times. */
const LEAST_HEAD = { px: 26, blade: 0.085, most: 1.36 } as const;
/** Rings thinner than this, m, close an end: they stay a point. */
const POINT = 0.001;

/**
 * A club that is too slim for the screen is drawn as thick as a pen and its head larger than life. Near by both are true. One
 * function of the place, so that surface, contour and comparison agree. `size` is the picture's size in css px.
 */
export const leastClub = ({ leastShaft }: Theme, size: Vector2): PartShape => ({
  uniforms: { size: { value: size }, leastShaft: { value: leastShaft } },
  declare: /* glsl */ `
uniform vec2 size;
uniform float leastShaft;
vec3 shapePoint(vec3 p) {
  bool isHead = part > ${PART.clubHead - 0.5} && part < ${PART.clubHead + 0.5};
  bool isStick = part > ${PART.grip - 0.5} && part < ${PART.clubHead - 0.5};
  if (!isStick && !isHead) return p;
  vec3 middle = carryPoint(isStick ? vec3(0., p.y, 0.) : vec3(0.));
  float depth = max(.05, (projectionMatrix * modelViewMatrix * vec4(middle, 1.)).w);
  float pxPerMetre = size.y * .5 * projectionMatrix[1][1] / depth;
  if (isHead) return p * clamp(${LEAST_HEAD.px}. / (${LEAST_HEAD.blade} * pxPerMetre), 1., ${LEAST_HEAD.most});
  float radius = length(p.xz);
  float thicker = part < ${PART.grip + 0.5} ? ${THICKER.grip} : part > ${PART.sleeve - 0.5} ? ${THICKER.sleeve} : 1.;
  if (radius > ${POINT}) p.xz *= max(1., leastShaft * thicker / (radius * pxPerMetre));
  return p;
}`,
});
