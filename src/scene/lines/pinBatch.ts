import {
  BufferAttribute,
  DynamicDrawUsage,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  ShaderMaterial,
  type Vector2,
} from 'three';
import { PIN_IDS, PIN_SIZE, type PinId } from '../figure/jointPins';
import type { Theme } from '../setting/theme';

/** Radius of a pin, css px; one that is held is larger. In a low picture they shrink, down to a share. */
const RADIUS = { free: 10, held: 12, full: 620, least: 0.65 } as const;
/** Half the side of a pin's square, css px: the disc, its arrowheads and the clearing round them. */
const REACH = 29;

/** Brass pins of constant size on the screen, over everything, each with two arrowheads along its way. One draw call. */
export class PinBatch {
  readonly geometry = new InstancedBufferGeometry();
  readonly material: ShaderMaterial;
  private readonly at = new InstancedBufferAttribute(new Float32Array(PIN_IDS.length * 3), 3);
  private readonly way = new InstancedBufferAttribute(new Float32Array(PIN_IDS.length * 4), 4);

  constructor({ brass, contour, ink, paper }: Theme, size: Vector2) {
    const { geometry } = this;
    geometry.setAttribute('position', new BufferAttribute(Float32Array.of(-1, -1, 0, 1, -1, 0, 1, 1, 0, -1, 1, 0), 3));
    geometry.setIndex([0, 1, 2, 0, 2, 3]);
    geometry.setAttribute('at', this.at.setUsage(DynamicDrawUsage));
    geometry.setAttribute('way', this.way.setUsage(DynamicDrawUsage));
    geometry.instanceCount = PIN_IDS.length;
    this.material = new ShaderMaterial({
      transparent: true,
      depthTest: false,
      depthWrite: false,
      // The picture of a left-handed player is mirrored.
      side: 2,
      forceSinglePass: true,
      uniforms: {
        size: { value: size },
        brass: { value: brass },
        rim: { value: contour },
        sign: { value: ink },
        paper: { value: paper },
      },
      vertexShader: /* glsl */ `
        attribute vec3 at;
        attribute vec4 way;
        uniform vec2 size;
        varying vec2 vAt;
        varying vec2 vWay;
        varying float vHeld;
        void main() {
          mat4 project = projectionMatrix * modelViewMatrix;
          vec4 p = project * vec4(at, 1.);
          vec4 q = project * vec4(at + way.xyz * .1, 1.);
          vec2 along = (q.xy / q.w - p.xy / p.w) * size;
          vWay = length(along) > 1e-3 ? normalize(along) : vec2(0., -1.);
          vAt = position.xy * ${REACH}.;
          vHeld = way.w;
          p.xy += vAt * clamp(size.y / ${RADIUS.full}., ${RADIUS.least}, 1.) * 2. / size * p.w;
          gl_Position = p;
        }`,
      fragmentShader: /* glsl */ `
        uniform vec3 brass, rim, paper, sign;
        varying vec2 vAt, vWay;
        varying float vHeld;
        // Lays a colour over what is there so far; its edge is a pixel wide.
        void lay(inout vec4 under, vec3 colour, float share, float inside) {
          float a = share * clamp(inside + .5, 0., 1.);
          float cover = a + under.a * (1. - a);
          under = vec4((colour * a + under.rgb * under.a * (1. - a)) / max(cover, 1e-4), cover);
        }
        void main() {
          float r = length(vAt);
          vec2 d = vec2(dot(vAt, vWay), dot(vAt, vec2(-vWay.y, vWay.x)));
          float disc = mix(${RADIUS.free}., ${RADIUS.held}., vHeld);
          vec4 c = vec4(paper, 0.);
          lay(c, paper, .55, (disc + 5.) - r);
          float arrow = min(((disc + 14.) - abs(d.x)) * .64 - abs(d.y) * .77, abs(d.x) - disc - 6.);
          lay(c, paper, .8, arrow + 1.3);
          lay(c, sign, 1., arrow);
          lay(c, rim, 1., (disc + 1.6) - r);
          // Domed, with the light from above left.
          vec3 dome = brass * (.86 + .34 * clamp(dot(vAt / disc, vec2(-.5, .7)), -.6, 1.));
          lay(c, dome, 1., disc - r);
          lay(c, dome * 1.25, .5, 1.1 - abs(r - (disc - 2.6)));
          lay(c, rim, 1., 2.5 - r);
          gl_FragColor = c;
          #include <colorspace_fragment>
        }`,
    });
  }

  /** Puts the pins as `placePins` placed them. */
  put(pins: Float64Array, held: PinId | undefined): void {
    PIN_IDS.forEach((id, i) => {
      const at = i * PIN_SIZE;
      this.at.setXYZ(i, pins[at], pins[at + 1], pins[at + 2]);
      this.way.setXYZW(i, pins[at + 3], pins[at + 4], pins[at + 5], id === held ? 1 : 0);
    });
    this.at.needsUpdate = this.way.needsUpdate = true;
  }

  dispose(): void {
    this.geometry.dispose();
    this.material.dispose();
  }
}
