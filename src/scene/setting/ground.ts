import { BufferAttribute, BufferGeometry, DoubleSide, Mesh, ShaderMaterial } from 'three';
import type { BatchedLines, LineBatch } from '../lines/lineBatch';
import type { Theme } from './theme';

/** Ends of the glass sheet along the target line, m. */
export const GLASS_X = { from: -0.66, to: 0.56 } as const;

/** Flat colours with their share, one a vertex. */
const tinted = (): ShaderMaterial =>
  new ShaderMaterial({
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
    // Nothing here lies over itself: drawing back and front in turn would look up the program three times a frame.
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

/** Corners of the arrowhead, then of the glass sheet over it. */
const CORNERS = 8;

/** Target line with its rule and arrowhead, glass sheet: what stands still while the player moves. Two draw calls with the lines. */
export class Ground {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  private readonly lines: BatchedLines;
  private readonly place = new BufferAttribute(new Float32Array(CORNERS * 3), 3);

  constructor(
    private readonly theme: Theme,
    sheet: LineBatch,
  ) {
    this.lines = sheet.take(160);
    const tint = new BufferAttribute(new Float32Array(CORNERS * 4), 4);
    for (let i = 0; i < CORNERS; i++) {
      const { r, g, b } = i < 4 ? theme.ink : theme.glass;
      tint.setXYZW(i, r, g, b, i < 4 ? 1 : theme.glassShare);
    }
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', this.place);
    geometry.setAttribute('tint', tint);
    geometry.setIndex([0, 1, 2, 0, 2, 3, 4, 5, 6, 4, 6, 7]);
    this.mesh = new Mesh(geometry, tinted());
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = 1;
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
    const { place } = this;
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
    corners.forEach((corner, i) => this.place.setXYZ(4 + i, ...corner));
    this.place.needsUpdate = true;
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
