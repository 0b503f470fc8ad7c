import {
  BufferAttribute,
  BufferGeometry,
  CircleGeometry,
  Group,
  InstancedMesh,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  PlaneGeometry,
  ShaderMaterial,
  ShadowMaterial,
  type Vector2,
} from 'three';
import { PenLines } from './pen';
import type { Theme } from './theme';

/** Ends of the glass sheet along the target line, m. */
export const GLASS_X = { from: -0.66, to: 0.56 } as const;

/** Squares of 20 cm that fade out with distance: no horizon. */
function squaredPaper(theme: Theme): Mesh {
  const material = new ShaderMaterial({
    transparent: true,
    depthWrite: false,
    uniforms: { ink: { value: theme.ink }, share: { value: theme.gridShare } },
    vertexShader: /* glsl */ `
      varying vec2 vPlace;
      void main() {
        vPlace = position.xz;
        gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.);
      }`,
    fragmentShader: /* glsl */ `
      uniform vec3 ink;
      uniform float share;
      varying vec2 vPlace;
      void main() {
        vec2 cell = vPlace / .2;
        vec2 wide = fwidth(cell);
        vec2 line = abs(fract(cell - .5) - .5) / max(wide, 1e-5);
        // Where squares get smaller than a few pixels the lines would merge into a grey: they thin out there.
        vec2 drawn = (1. - clamp(line - .35, 0., 1.)) * clamp(.5 / max(wide, 1e-5) * .35, 0., 1.);
        float away = length((vPlace - vec2(.05, .35)) / vec2(2.1, 1.75));
        float fade = pow(max(0., 1. - away), 1.15);
        gl_FragColor = vec4(ink, max(drawn.x, drawn.y) * fade * share);
        #include <colorspace_fragment>
      }`,
  });
  const geometry = new PlaneGeometry(6, 6).rotateX(-Math.PI / 2).translate(0, 0.0004, 0.3);
  const mesh = new Mesh(geometry, material);
  mesh.renderOrder = -3;
  return mesh;
}

/** Only as large as the shadow of the longest club can be: every pixel of it is worked out. */
function shadowSheet(theme: Theme): Mesh {
  const material = new ShadowMaterial({ color: theme.shadow, opacity: theme.shadowShare, depthWrite: false });
  const mesh = new Mesh(new PlaneGeometry(4, 4).rotateX(-Math.PI / 2).translate(0.2, 0, -0.1), material);
  mesh.receiveShadow = true;
  mesh.renderOrder = -2;
  return mesh;
}

const DISCS = 4;
/** Soft dark discs where something rests on the ground: both feet, the ball, and a wide one under the player. */
export class ContactDiscs {
  readonly mesh: InstancedMesh<CircleGeometry, ShaderMaterial>;
  private readonly matrix = new Matrix4();

  constructor(theme: Theme) {
    const material = new ShaderMaterial({
      transparent: true,
      depthWrite: false,
      uniforms: { ink: { value: theme.shadow }, share: { value: theme.contactShare } },
      vertexShader: /* glsl */ `
        varying vec2 vPlace;
        varying float vShare;
        void main() {
          vPlace = position.xz;
          // The strength travels in the unused height of the disc.
          vShare = instanceMatrix[1][1];
          vec4 p = instanceMatrix * vec4(position.x, 0., position.z, 1.);
          gl_Position = projectionMatrix * modelViewMatrix * p;
        }`,
      fragmentShader: /* glsl */ `
        uniform vec3 ink;
        uniform float share;
        varying vec2 vPlace;
        varying float vShare;
        void main() {
          gl_FragColor = vec4(ink, share * vShare * pow(max(0., 1. - length(vPlace)), 1.6));
          #include <colorspace_fragment>
        }`,
    });
    this.mesh = new InstancedMesh(new CircleGeometry(1, 40).rotateX(-Math.PI / 2), material, DISCS);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = -1;
  }

  /** Disc `i` at x, z (m) with half-axes across and along, turned by `yaw`, `share` dark. */
  put(i: number, x: number, z: number, across: number, along: number, yaw: number, share: number): void {
    const c = Math.cos(yaw);
    const s = Math.sin(yaw);
    this.matrix.set(across * c, 0, along * s, x, 0, share, 0, 0.0008, -across * s, 0, along * c, z, 0, 0, 0, 1);
    this.mesh.setMatrixAt(i, this.matrix);
    this.mesh.instanceMatrix.needsUpdate = true;
  }
}

/** Paper, shadow, target line with its rule and arrowhead, glass sheet: what stands still while the player moves. */
export class Ground {
  readonly group = new Group();
  private readonly lines: PenLines;
  private readonly arrow: Mesh<BufferGeometry, MeshBasicMaterial>;
  private readonly sheet: Mesh<BufferGeometry, MeshBasicMaterial>;

  constructor(
    private readonly theme: Theme,
    size: Vector2,
  ) {
    this.lines = new PenLines(160, size);
    this.lines.mesh.renderOrder = 2;
    const arrow = new BufferGeometry();
    arrow.setAttribute('position', new BufferAttribute(new Float32Array(12), 3));
    arrow.setIndex([0, 1, 2, 0, 2, 3]);
    this.arrow = new Mesh(arrow, new MeshBasicMaterial({ color: theme.ink, side: 2 }));
    this.arrow.frustumCulled = false;
    const sheet = new BufferGeometry();
    sheet.setAttribute('position', new BufferAttribute(new Float32Array(12), 3));
    sheet.setIndex([0, 1, 2, 0, 2, 3]);
    const glass = new MeshBasicMaterial({
      color: theme.glass,
      transparent: true,
      opacity: theme.glassShare,
      side: 2,
      depthWrite: false,
      // A flat sheet shows one side at a time: drawing back and front in turn would look up its program three times a frame.
      forceSinglePass: true,
    });
    this.sheet = new Mesh(sheet, glass);
    this.sheet.frustumCulled = false;
    this.sheet.renderOrder = 1;
    this.group.add(squaredPaper(theme), shadowSheet(theme), this.arrow, this.sheet, this.lines.mesh);
  }

  /** Draws the lines for a ball at `ball` (m), a shaft resting at `lie` (rad) on `headZ` and a sheet of `height` up the slope (m). */
  draw(ball: ArrayLike<number>, headZ: number, lie: number, height: number): void {
    this.lines.clear();
    this.drawTargetLine(ball[0], ball[2]);
    this.drawSheet(headZ, lie, height);
    this.lines.commit();
  }

  private drawTargetLine(x: number, z: number): void {
    const { ink } = this.theme;
    const y = 0.0012;
    this.lines.line([-1.9, y, z], [x - 0.05, y, z], ink, 1.15);
    this.lines.line([x + 0.05, y, z], [2.4, y, z], ink, 1.15);
    for (let i = -18; i <= 22; i++) {
      if (i === 0) continue;
      const at = x + i * 0.1;
      const long = i % 5 === 0 ? 0.046 : 0.02;
      this.lines.line([at, y, z + 0.008], [at, y, z + 0.008 + long], ink, 0.9, 0.75);
    }
    const tip = x + 0.98;
    const place = this.arrow.geometry.getAttribute('position') as BufferAttribute;
    place.setXYZ(0, tip, y, z);
    place.setXYZ(1, tip - 0.15, y, z + 0.034);
    place.setXYZ(2, tip - 0.115, y, z);
    place.setXYZ(3, tip - 0.15, y, z - 0.034);
    place.needsUpdate = true;
  }

  private drawSheet(headZ: number, lie: number, height: number): void {
    const { glass } = this.theme;
    const at = (x: number, up: number): [number, number, number] => [x, up * Math.sin(lie), headZ - up * Math.cos(lie)];
    const foot = 0.004;
    const { from: left, to: right } = GLASS_X;
    const corners = [at(left, foot), at(right, foot), at(right, height), at(left, height)];
    const place = this.sheet.geometry.getAttribute('position') as BufferAttribute;
    corners.forEach((corner, i) => place.setXYZ(i, ...corner));
    place.needsUpdate = true;
    corners.forEach((corner, i) => this.lines.line(corner, corners[(i + 1) % 4], glass, 1.25, 0.85));
    // The drawing sign for glass: three short strokes in two corners.
    for (const [x, up] of [
      [left + 0.06, height - 0.34],
      [right - 0.23, 0.1],
    ]) {
      for (let i = 0; i < 3; i++)
        this.lines.line(at(x + i * 0.045, up), at(x + i * 0.045 + 0.09, up + 0.125), glass, 1, 0.6);
    }
  }
}
