import { BackSide, LessDepth, LessEqualDepth, ShaderMaterial, type Color, type Vector2 } from 'three';
import type { Theme } from '../setting/theme';
import { leastClub } from './leastClub';
import { createPartRows, RIGID_PART_SHADER } from './rigidPartShader';

/** How a see-through body looks: its colour, its shares of ink (flat on, toward the rim, in the contour) and its pen, css px. */
export interface SeeThroughLook {
  readonly colour: Color;
  readonly wash: number;
  readonly rim: number;
  readonly ink: number;
  readonly pen: number;
}

/** Behind a solid by these shares of its depth, so that where both coincide the solid is seen, without speckles. */
const BEHIND = { body: 0.0006, contour: 0.001 } as const;

/**
 * A second body, see-through: first its depth alone, then one layer of wash where it is nearest, then its contour. As one layer it
 * does not get muddy where limbs overlap, and behind the solid figure it is hidden. Three draw calls.
 */
export class SeeThroughBody {
  readonly rows = createPartRows();
  /** In the order in which they are drawn. */
  readonly materials: readonly ShaderMaterial[];
  private readonly look = {
    colour: { value: undefined as Color | undefined },
    wash: { value: 0 },
    rim: { value: 0 },
    ink: { value: 0 },
    pen: { value: 0 },
  };

  constructor(theme: Theme, size: Vector2) {
    const club = leastClub(theme, size);
    const uniforms = { partRows: this.rows, ...club.uniforms, ...this.look };
    const declare = RIGID_PART_SHADER.declare + club.declare;
    const body = /* glsl */ `${declare}
      varying float vTurned;
      void main() {
        vec4 seen = modelViewMatrix * vec4(carryPoint(shapePoint(position)), 1.);
        vTurned = 1. - abs(dot(normalize(normalMatrix * carryNormal(normal)), normalize(-seen.xyz)));
        gl_Position = projectionMatrix * seen;
        gl_Position.z += ${BEHIND.body} * gl_Position.w;
      }`;
    const depth = new ShaderMaterial({
      uniforms,
      vertexShader: body,
      fragmentShader: 'void main() { gl_FragColor = vec4(0.); }',
      colorWrite: false,
    });
    const wash = new ShaderMaterial({
      uniforms,
      vertexShader: body,
      fragmentShader: /* glsl */ `
        uniform vec3 colour;
        uniform float wash, rim;
        varying float vTurned;
        void main() {
          gl_FragColor = vec4(colour, wash + rim * vTurned * vTurned);
          #include <colorspace_fragment>
        }`,
      depthWrite: false,
      depthFunc: LessEqualDepth,
    });
    const contour = new ShaderMaterial({
      uniforms,
      side: BackSide,
      vertexShader: /* glsl */ `${declare}
        uniform float pen;
        void main() {
          vec4 p = projectionMatrix * modelViewMatrix * vec4(carryPoint(shapePoint(position)), 1.);
          vec2 away = normalize((projectionMatrix * vec4(normalMatrix * carryNormal(normal), 0.)).xy + 1e-6);
          p.xy += away * pen * 2. / size * p.w;
          p.z += ${BEHIND.contour} * p.w;
          gl_Position = p;
        }`,
      fragmentShader: /* glsl */ `
        uniform vec3 colour;
        uniform float ink;
        void main() {
          gl_FragColor = vec4(colour * .72, ink);
          #include <colorspace_fragment>
        }`,
      // Its own depth keeps a second layer out.
      depthFunc: LessDepth,
    });
    this.materials = [depth, wash, contour];
    for (const material of this.materials) {
      // Behind everything solid, in the order of the list.
      material.transparent = true;
      material.forceSinglePass = true;
    }
  }

  wear(look: SeeThroughLook): void {
    for (const [name, value] of Object.entries(look)) this.look[name as keyof SeeThroughLook].value = value as never;
  }

  dispose(): void {
    for (const material of this.materials) material.dispose();
  }
}
