import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  DynamicDrawUsage,
  InterleavedBuffer,
  InterleavedBufferAttribute,
  ShaderMaterial,
  type Vector2,
} from 'three';
import type { Theme } from '../setting/theme';

const VERTEX = /* glsl */ `
attribute vec3 across;
attribute vec3 ahead;
attribute vec2 place;
uniform vec2 size;
uniform float least;
varying float vSide;
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
  // Seen from the edge a ribbon would vanish: it keeps at least the width of a pen.
  float wide = dot(out0, normal);
  float side = wide == 0. ? place.y : sign(wide);
  float lack = max(0., least - abs(wide));
  vec4 p = edge;
  p.xy += normal * side * lack * 2. / size * p.w;
  vSide = place.y;
  vShare = place.x;
  vHalf = max(abs(wide), least);
  gl_Position = p;
}`;
const FRAGMENT = /* glsl */ `
uniform vec3 startColour;
uniform vec3 endColour;
uniform vec3 edgeColour;
uniform float edgePen;
varying float vSide;
varying float vShare;
varying float vHalf;
void main() {
  float inside = (1. - abs(vSide)) * vHalf;
  vec3 colour = mix(startColour, endColour, vShare);
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

  /** `shares`: where between the two ends each sample has its colour, 0 to 1. */
  constructor(shares: ArrayLike<number>, size: Vector2, theme: Theme) {
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
        least: { value: 1.5 },
        startColour: { value: theme.traceStart },
        endColour: { value: theme.traceEnd },
        edgeColour: { value: theme.traceEdge },
        edgePen: { value: 0.9 },
      },
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
    });
  }

  dispose(): void {
    this.geometry.dispose();
    this.material.dispose();
  }

  /** Lays the ribbon along `centres` (three numbers a sample, m), `half` wide to each side along `directions` (unit). */
  lay(centres: Float64Array, directions: Float64Array, half: number): void {
    const last = this.samples - 1;
    const numbers = this.buffer.array;
    for (let i = 0; i <= last; i++) {
      const here = Math.min(i, last - 1) * 3;
      const at = 2 * i * STRIDE;
      for (let axis = 0; axis < 3; axis++) {
        numbers[at + axis] = centres[i * 3 + axis];
        numbers[at + 3 + axis] = directions[i * 3 + axis] * half;
        numbers[at + 6 + axis] = centres[here + 3 + axis] - centres[here + axis];
      }
      numbers.copyWithin(at + STRIDE, at, at + STRIDE);
    }
    this.buffer.needsUpdate = true;
  }
}
