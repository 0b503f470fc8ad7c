import { PlaneGeometry, ShadowMaterial, Vector4, type Color } from 'three';
import { patchShader } from '../figure/patchShader';
import type { Theme } from './theme';

/** Soft dark discs where something rests on the ground: both feet, the ball, and a wide one under the player. */
const DISCS = 4;

const DECLARE = /* glsl */ `
uniform vec3 ink;
uniform float gridShare;
uniform float contactShare;
uniform vec4 discPlaces[${DISCS}];
uniform vec4 discTurns[${DISCS}];
varying vec2 vPlace;

float linesAt(vec2 place, float step) {
  vec2 cell = place / step;
  vec2 wide = fwidth(cell);
  vec2 line = abs(fract(cell - .5) - .5) / max(wide, 1e-5);
  // Where squares get smaller than a few pixels the lines would merge into a grey: they thin out there.
  vec2 drawn = (1. - clamp(line - .35, 0., 1.)) * clamp(.5 / max(wide, 1e-5) * .35, 0., 1.);
  return max(drawn.x, drawn.y);
}
// Squares of 20 cm and, farther out, rules of a metre that carry the depth. They fade out with distance: no horizon.
float squaresAt(vec2 place) {
  vec2 off = place - vec2(.05, .2);
  float near = pow(max(0., 1. - length(off / vec2(2.1, 1.75))), 1.15);
  float far = pow(max(0., 1. - length(off / vec2(2.9, 2.6))), 1.3);
  return max(linesAt(place, .2) * near, linesAt(place, 1.) * far * 2.6) * gridShare;
}

/** What the discs leave of the light. */
float lightUnderDiscs(vec2 place) {
  float left = 1.;
  for (int i = 0; i < ${DISCS}; i++) {
    vec2 d = place - discPlaces[i].xy;
    vec4 turn = discTurns[i];
    float away = length(vec2(dot(turn.xy, d), dot(turn.zw, d)));
    left *= 1. - contactShare * discPlaces[i].z * pow(max(0., 1. - away), 1.45);
  }
  return left;
}`;

/** Shadow and discs lie over the squares. They are laid over one another as the card would, in the colours that are shown. */
const LAYERS = /* glsl */ `
float squares = squaresAt(vPlace);
float lit = (1. - gl_FragColor.a) * lightUnderDiscs(vPlace);
float cover = 1. - (1. - squares) * lit;
vec3 inkShown = linearToOutputTexel(vec4(ink, 1.)).rgb;
gl_FragColor = vec4((inkShown * squares * lit + gl_FragColor.rgb * (1. - lit)) / max(cover, 1e-6), cover);`;

/** The ground with all that lies on it: squared paper, the figure's shadow, contact discs. One draw call. */
export class Floor {
  /** Only as large as the shadow of the longest club and the squares can be: every pixel of it is worked out. */
  readonly geometry = new PlaneGeometry(5.9, 5.2).rotateX(-Math.PI / 2).translate(0.1, 0, 0);
  readonly material: ShadowMaterial;
  private readonly places = Array.from({ length: DISCS }, () => new Vector4());
  private readonly turns = Array.from({ length: DISCS }, () => new Vector4());

  constructor({ shadow, shadowShare, contactShare, gridShare, ink }: Theme) {
    const material = new ShadowMaterial({ color: shadow, opacity: shadowShare, depthWrite: false });
    material.onBeforeCompile = (shader) => {
      Object.assign(shader.uniforms, {
        ink: { value: ink satisfies Color },
        gridShare: { value: gridShare },
        contactShare: { value: contactShare },
        discPlaces: { value: this.places },
        discTurns: { value: this.turns },
      });
      shader.vertexShader = patchShader(shader.vertexShader, {
        '#include <common>': '#include <common>\nvarying vec2 vPlace;',
        '#include <begin_vertex>': '#include <begin_vertex>\nvPlace = position.xz;',
      });
      shader.fragmentShader = patchShader(shader.fragmentShader, {
        '#include <common>': `#include <common>${DECLARE}`,
        '#include <colorspace_fragment>': `#include <colorspace_fragment>${LAYERS}`,
      });
    };
    material.customProgramCacheKey = () => 'floor';
    this.material = material;
  }

  /** Disc `i` at x, z (m) with half-axes across and along, turned by `yaw`, `share` dark. */
  put(i: number, x: number, z: number, across: number, along: number, yaw: number, share: number): void {
    const c = Math.cos(yaw);
    const s = Math.sin(yaw);
    this.places[i].set(x, z, share, 0);
    this.turns[i].set(c / across, -s / across, s / along, c / along);
  }

  dispose(): void {
    this.geometry.dispose();
    this.material.dispose();
  }
}
