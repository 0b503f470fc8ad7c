import {
  BufferAttribute,
  DynamicDrawUsage,
  InstancedBufferGeometry,
  InstancedInterleavedBuffer,
  InterleavedBufferAttribute,
  ShaderMaterial,
  type Color,
  type Vector2,
} from 'three';

/** A place in the world, m. */
export type Place = readonly [number, number, number];

const VERTEX = /* glsl */ `
attribute vec3 from;
attribute vec3 to;
attribute vec4 ink;
attribute float pen;
uniform vec2 size;
varying vec4 vInk;
varying vec2 vEdge;
void main() {
  vInk = ink;
  // Half a pixel more on either side, over which the line fades: smooth without multisampling.
  float half0 = pen * .5 + .5;
  vEdge = vec2(position.y * half0, half0);
  vec4 a = projectionMatrix * modelViewMatrix * vec4(from, 1.);
  vec4 b = projectionMatrix * modelViewMatrix * vec4(to, 1.);
  // An end behind the eye is brought in front of it along the line.
  const float near = .05;
  if (a.w < near && b.w > near) a = mix(a, b, (near - a.w) / (b.w - a.w));
  if (b.w < near && a.w > near) b = mix(b, a, (near - b.w) / (a.w - b.w));
  vec2 along = (b.xy / b.w - a.xy / a.w) * size;
  along = length(along) > 1e-5 ? normalize(along) : vec2(1., 0.);
  vec4 p = mix(a, b, position.x);
  p.xy += vec2(-along.y, along.x) * position.y * 2. * half0 / size * p.w;
  p.z -= .0003 * p.w;
  gl_Position = p;
}`;
const FRAGMENT = /* glsl */ `
varying vec4 vInk;
varying vec2 vEdge;
void main() {
  gl_FragColor = vec4(vInk.rgb, vInk.a * clamp(vEdge.y - abs(vEdge.x), 0., 1.));
  #include <colorspace_fragment>
}`;

/** Numbers a line takes: its ends, its ink with its share, its pen. */
const STRIDE = 11;

/** All lines of a scene in one draw call, as drawn with a set of pens: straight, of constant width in css px. */
export class LineBatch {
  readonly geometry = new InstancedBufferGeometry();
  readonly material: ShaderMaterial;
  private readonly buffer: InstancedInterleavedBuffer;
  private taken = 0;
  /** What has changed since the last upload: first number and the one behind the last. */
  private changed = { from: Infinity, to: 0 };

  /** `size` is the picture's size in css px, shared with whoever changes it. */
  constructor(
    private readonly capacity: number,
    size: Vector2,
  ) {
    this.buffer = new InstancedInterleavedBuffer(new Float32Array(capacity * STRIDE), STRIDE);
    this.buffer.setUsage(DynamicDrawUsage);
    this.buffer.onUpload(() => {
      this.changed = { from: Infinity, to: 0 };
    });
    const { geometry } = this;
    geometry.setAttribute('position', new BufferAttribute(Float32Array.of(0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0), 3));
    geometry.setIndex([0, 1, 2, 0, 2, 3]);
    geometry.setAttribute('from', new InterleavedBufferAttribute(this.buffer, 3, 0));
    geometry.setAttribute('to', new InterleavedBufferAttribute(this.buffer, 3, 3));
    geometry.setAttribute('ink', new InterleavedBufferAttribute(this.buffer, 4, 6));
    geometry.setAttribute('pen', new InterleavedBufferAttribute(this.buffer, 1, 10));
    geometry.instanceCount = 0;
    this.material = new ShaderMaterial({
      transparent: true,
      depthWrite: false,
      side: 2,
      uniforms: { size: { value: size } },
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
    });
  }

  /** Room for `capacity` lines, drawn over those reserved before. */
  take(capacity: number): BatchedLines {
    const from = this.taken;
    this.taken += capacity;
    if (this.taken > this.capacity) throw new RangeError('The sheet has no room for these lines.');
    this.geometry.instanceCount = this.taken;
    const numbers = this.buffer.array as Float32Array;
    return new BatchedLines(numbers, from * STRIDE, this.taken * STRIDE, (first, end) => this.note(first, end));
  }

  dispose(): void {
    this.geometry.dispose();
    this.material.dispose();
  }

  /** Only what changed is uploaded. */
  private note(from: number, to: number): void {
    const { buffer, changed } = this;
    changed.from = Math.min(changed.from, from);
    changed.to = Math.max(changed.to, to);
    buffer.clearUpdateRanges();
    buffer.addUpdateRange(changed.from, changed.to - changed.from);
    buffer.needsUpdate = true;
  }
}

/**
 * Some lines of a sheet, drawn together. Start with `clear`, add with `line`, end with `commit`. Lines beyond the capacity are
 * dropped.
 */
export class BatchedLines {
  private at: number;
  /** Where the lines that were uploaded end. */
  private end: number;

  constructor(
    private readonly numbers: Float32Array,
    private readonly from: number,
    private readonly to: number,
    private readonly note: (from: number, to: number) => void,
  ) {
    this.at = this.end = from;
  }

  clear(): void {
    this.at = this.from;
  }

  /** One line between two places (m), `px` wide, `share` of full ink. */
  line(a: ArrayLike<number>, b: ArrayLike<number>, { r, g, b: blue }: Color, px: number, share = 1): void {
    const { at, numbers } = this;
    if (at >= this.to) return;
    this.at = at + STRIDE;
    numbers[at] = a[0];
    numbers[at + 1] = a[1];
    numbers[at + 2] = a[2];
    numbers[at + 3] = b[0];
    numbers[at + 4] = b[1];
    numbers[at + 5] = b[2];
    numbers[at + 6] = r;
    numbers[at + 7] = g;
    numbers[at + 8] = blue;
    numbers[at + 9] = share;
    numbers[at + 10] = px;
  }

  commit(): void {
    const { at, end } = this;
    const changed = Math.max(at, end);
    this.end = at;
    if (changed === this.from) return;
    // A line without length fills no pixel.
    if (at < changed) this.numbers.fill(0, at, changed);
    this.note(this.from, changed);
  }
}
