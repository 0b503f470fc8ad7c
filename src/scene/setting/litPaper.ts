import { PlaneGeometry, ShaderMaterial, SRGBColorSpace, Vector3, type Color } from 'three';
import type { Theme } from './theme';

/** A colour as it is shown, so that no pixel has to be converted. */
function shownColour(colour: Color): Vector3 {
  const { r, g, b } = colour.getRGB({ r: 0, g: 0, b: 0 }, SRGBColorSpace);
  return new Vector3(r, g, b);
}

/**
 * The board: a pool of light in the middle, a little shade in the corners, the paper's own speckle. A coarse net over the whole
 * picture, coloured at its corners and drawn first. Next to no work a pixel, one draw call.
 */
export class LitPaper {
  readonly geometry = new PlaneGeometry(2, 2, 16, 12);
  readonly material: ShaderMaterial;

  constructor({ paper, lamp, corner }: Theme) {
    this.material = new ShaderMaterial({
      depthTest: false,
      depthWrite: false,
      uniforms: {
        paper: { value: shownColour(paper) },
        lamp: { value: shownColour(lamp) },
        corner: { value: shownColour(corner) },
      },
      vertexShader: /* glsl */ `
        uniform vec3 paper, lamp, corner;
        varying vec3 vColour;
        void main() {
          float away = length((position.xy - vec2(.04, -.02)) * vec2(.86, .92));
          vColour = mix(mix(lamp, paper, smoothstep(.1, .85, away)), corner, smoothstep(.8, 1.42, away));
          gl_Position = vec4(position.xy, 1., 1.);
        }`,
      fragmentShader: /* glsl */ `
        varying vec3 vColour;
        void main() {
          // A step of grey from pixel to pixel: speckle, and no bands. A hash after J. Jimenez, "Next Generation Post Processing in
          // Call of Duty: Advanced Warfare", SIGGRAPH 2014.
          float speck = fract(52.98 * fract(dot(gl_FragCoord.xy, vec2(.06711, .00584)))) - .5;
          gl_FragColor = vec4(vColour + speck * .011, 1.);
        }`,
    });
  }

  dispose(): void {
    this.geometry.dispose();
    this.material.dispose();
  }
}
