import {
  BufferAttribute,
  DynamicDrawUsage,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  Mesh,
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

/**
 * Straight lines of constant width in css px, all in one draw call, as drawn with a set of pens. Start with `clear`, add with
 * `line`, end with `commit`. Lines beyond the capacity are dropped.
 */
export class PenLines {
  readonly mesh: Mesh<InstancedBufferGeometry, ShaderMaterial>;
  private readonly from: InstancedBufferAttribute;
  private readonly to: InstancedBufferAttribute;
  private readonly ink: InstancedBufferAttribute;
  private readonly pen: InstancedBufferAttribute;
  private count = 0;

  /** `size` is the picture's size in css px, shared with whoever changes it. */
  constructor(
    private readonly capacity: number,
    size: Vector2,
  ) {
    const instanced = (width: number): InstancedBufferAttribute =>
      new InstancedBufferAttribute(new Float32Array(capacity * width), width).setUsage(DynamicDrawUsage);
    this.from = instanced(3);
    this.to = instanced(3);
    this.ink = instanced(4);
    this.pen = instanced(1);
    const geometry = new InstancedBufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(Float32Array.of(0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0), 3));
    geometry.setIndex([0, 1, 2, 0, 2, 3]);
    geometry.setAttribute('from', this.from);
    geometry.setAttribute('to', this.to);
    geometry.setAttribute('ink', this.ink);
    geometry.setAttribute('pen', this.pen);
    const material = new ShaderMaterial({
      transparent: true,
      depthWrite: false,
      side: 2,
      uniforms: { size: { value: size } },
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
    });
    this.mesh = new Mesh(geometry, material);
    this.mesh.frustumCulled = false;
  }

  clear(): void {
    this.count = 0;
  }

  /** One line between two places (m), `px` wide, `share` of full ink. */
  line(a: ArrayLike<number>, b: ArrayLike<number>, colour: Color, px: number, share = 1): void {
    if (this.count >= this.capacity) return;
    const i = this.count++;
    this.from.setXYZ(i, a[0], a[1], a[2]);
    this.to.setXYZ(i, b[0], b[1], b[2]);
    this.ink.setXYZW(i, colour.r, colour.g, colour.b, share);
    this.pen.setX(i, px);
  }

  commit(): void {
    this.mesh.geometry.instanceCount = this.count;
    for (const attribute of [this.from, this.to, this.ink, this.pen]) attribute.needsUpdate = true;
  }
}
