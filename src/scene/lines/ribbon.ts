import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  DynamicDrawUsage,
  InterleavedBuffer,
  InterleavedBufferAttribute,
  ShaderMaterial,
  Vector2,
} from 'three';
import type { Theme } from '../setting/theme';

/** Half the least width at the top and at impact, css px: from a pen's to a brush's. */
const LEAST_HALF = { top: 1.7, impact: 4.4 } as const;
/** What of the figure and the club stands this far behind the ribbon, m, still lies over it: the club's head at impact. */
const UNDER = 0.08;

const VERTEX = /* glsl */ `
attribute vec3 across;
attribute vec3 ahead;
attribute vec2 place;
uniform vec2 size;
uniform vec2 leasts;
varying float vSide;
varying float vLit;
varying float vShare;
varying float vHalf;
void main() {
  mat4 project = projectionMatrix * modelViewMatrix;
  vec4 centre = project * vec4(position, 1.);
  vec4 edge = project * vec4(position + across * place.y, 1.);
  vec4 next = project * vec4(position + ahead, 1.);
  vec2 middle = centre.xy / centre.w * size * .5;
  vec2 out0 = edge.xy / edge.w * size * .5 - middle;
  vec2 along = next.xy / next.w * size * .5 - middle;
  along = length(along) > 1e-4 ? normalize(along) : vec2(1., 0.);
  vec2 normal = vec2(-along.y, along.x);
  float least = mix(leasts.x, leasts.y, place.x);
  // Seen from the edge or from far off a ribbon would vanish: it keeps a least width.
  float wide = dot(out0, normal);
  vHalf = max(abs(wide), least);
  // Each edge keeps to its own side of the path: where the ribbon turns its back its edges would cross, and cut a notch.
  vec4 p = centre;
  p.xy += normal * place.y * vHalf * 2. / size * p.w;
  vSide = place.y;
  vLit = sign(wide);
  vShare = place.x;
  // Its depth is that of a ribbon a hand's breadth farther away.
  vec4 far = projectionMatrix * (modelViewMatrix * vec4(position, 1.) - vec4(0., 0., ${UNDER}, 0.));
  p.z = far.z / far.w * p.w;
  gl_Position = p;
}`;
const FRAGMENT = /* glsl */ `
uniform vec3 colours[4];
uniform vec3 edgeColour;
uniform float edgePen;
varying float vSide;
varying float vLit;
varying float vShare;
varying float vHalf;
void main() {
  float inside = (1. - abs(vSide)) * vHalf;
  float at = vShare * 3.;
  vec3 colour = mix(colours[0], colours[1], clamp(at, 0., 1.));
  colour = mix(colour, colours[2], clamp(at - 1., 0., 1.));
  colour = mix(colour, colours[3], clamp(at - 2., 0., 1.));
  // One side catches the light: a strip, not a tube.
  colour *= 1. + .14 * vLit;
  gl_FragColor = vec4(mix(edgeColour, colour, smoothstep(edgePen - .45, edgePen + .45, inside)), 1.);
  #include <colorspace_fragment>
}`;

/** Numbers a vertex takes in the buffer that changes. */
const STRIDE = 9;

/** The trace of the head: a ribbon in the plane of the shaft, coloured by time, with ink edges. One draw call. */
export class Ribbon {
  readonly geometry = new BufferGeometry();
  readonly material: ShaderMaterial;
  /** Of each vertex its sample's place, the way across and the way to the next sample: one buffer, one upload. */
  private readonly buffer: InterleavedBuffer;

  readonly samples: number;

  /** `shares`: where between the two ends each sample has its colour and its width, 0 to 1. */
  constructor(
    private readonly shares: ArrayLike<number>,
    size: Vector2,
    theme: Theme,
  ) {
    const samples = shares.length;
    this.samples = samples;
    this.buffer = new InterleavedBuffer(new Float32Array(samples * 2 * STRIDE), STRIDE).setUsage(DynamicDrawUsage);
    const place = new Float32Array(samples * 4);
    const index: number[] = [];
    for (let i = 0; i < samples; i++) {
      place.set([shares[i], -1, shares[i], 1], i * 4);
      if (i < samples - 1) index.push(2 * i, 2 * i + 1, 2 * i + 2, 2 * i + 1, 2 * i + 3, 2 * i + 2);
    }
    const { geometry } = this;
    geometry.setAttribute('position', new InterleavedBufferAttribute(this.buffer, 3, 0));
    geometry.setAttribute('across', new InterleavedBufferAttribute(this.buffer, 3, 3));
    geometry.setAttribute('ahead', new InterleavedBufferAttribute(this.buffer, 3, 6));
    geometry.setAttribute('place', new BufferAttribute(place, 2));
    geometry.setIndex(index);
    this.material = new ShaderMaterial({
      side: DoubleSide,
      uniforms: {
        size: { value: size },
        leasts: { value: new Vector2(LEAST_HALF.top, LEAST_HALF.impact) },
        colours: { value: theme.trace },
        edgeColour: { value: theme.traceEdge },
        edgePen: { value: theme.traceEdgePen },
      },
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
    });
  }

  dispose(): void {
    this.geometry.dispose();
    this.material.dispose();
  }

  /**
   * Lays the ribbon along `centres` (three numbers a sample, m), to each side along `directions` (unit) as wide as `half` says for
   * the top and for impact, m.
   */
  lay(centres: Float64Array, directions: Float64Array, half: { readonly top: number; readonly impact: number }): void {
    const last = this.samples - 1;
    const numbers = this.buffer.array;
    for (let i = 0; i <= last; i++) {
      const here = Math.min(i, last - 1) * 3;
      const at = 2 * i * STRIDE;
      const wide = half.top + (half.impact - half.top) * this.shares[i];
      for (let axis = 0; axis < 3; axis++) {
        numbers[at + axis] = centres[i * 3 + axis];
        numbers[at + 3 + axis] = directions[i * 3 + axis] * wide;
        numbers[at + 6 + axis] = centres[here + 3 + axis] - centres[here + axis];
      }
      numbers.copyWithin(at + STRIDE, at, at + STRIDE);
    }
    this.buffer.needsUpdate = true;
  }
}
