import { BufferAttribute, BufferGeometry, DoubleSide, ShaderMaterial, type Color } from 'three';

/** A flat four-cornered sheet of one colour with its share of ink. Lies over nothing of its own. */
export class TintedQuad {
  readonly geometry = new BufferGeometry();
  readonly material = new ShaderMaterial({
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
    // Drawing back and front separately would look up the program three times a frame.
    forceSinglePass: true,
    vertexShader: /* glsl */ `
      attribute vec4 tint;
      varying vec4 vTint;
      void main() {
        vTint = tint;
        gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.);
      }`,
    fragmentShader: /* glsl */ `
      varying vec4 vTint;
      void main() {
        gl_FragColor = vTint;
        #include <colorspace_fragment>
      }`,
  });
  private readonly place = new BufferAttribute(new Float32Array(12), 3);

  constructor({ r, g, b }: Color, share: number) {
    const tint = new BufferAttribute(new Float32Array(16), 4);
    for (let i = 0; i < 4; i++) tint.setXYZW(i, r, g, b, share);
    this.geometry.setAttribute('position', this.place);
    this.geometry.setAttribute('tint', tint);
    this.geometry.setIndex([0, 1, 2, 0, 2, 3]);
  }

  /** Puts its corners, in turn round the sheet, m. */
  put(corners: readonly (readonly [number, number, number])[]): void {
    corners.forEach((corner, i) => this.place.setXYZ(i, ...corner));
    this.place.needsUpdate = true;
  }

  dispose(): void {
    this.geometry.dispose();
    this.material.dispose();
  }
}
