import { Group, Mesh, MeshDepthMaterial, type BufferGeometry, type Material, type Vector2 } from 'three';
import { createFigure, type Figure } from '../../figure/figure';
import { createPlacement, PART } from '../../figure/partIds';
import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import { withRigidParts, createPartRows, fillBallRows, fillPartRows } from './rigidPartShader';
import { contourMaterial } from './materials';
import { buildGeometry } from './solids';
import { solidMaterial } from './surfaces';
import type { Theme } from '../setting/theme';

const EYES_HIDE: readonly number[] = [PART.headEgg, PART.neck];
const NOTHING: readonly number[] = [];

/**
 * The figure with its club and the ball on the graphics card: one geometry moved by its parts' matrices, a mesh of all surfaces and its
 * ink contour. Three draw calls with the shadow's.
 */
export class FigureModel {
  readonly group = new Group();
  readonly figure: Figure;
  readonly placement = createPlacement();
  private readonly rows = createPartRows();
  private readonly geometry: BufferGeometry;
  private readonly materials: Material[];

  constructor(body: Body, club: Club, theme: Theme, size: Vector2) {
    this.figure = createFigure(body, club);
    const { geometry, seen, coarse } = buildGeometry(this.figure);
    this.geometry = geometry;
    const surface = solidMaterial(theme, this.rows);
    const ink = contourMaterial(theme, size, this.rows);
    const depth = withRigidParts(new MeshDepthMaterial(), this.rows);
    this.materials = [surface, ink, depth];
    const solid = new Mesh(this.geometry, surface);
    solid.castShadow = true;
    solid.receiveShadow = true;
    solid.customDepthMaterial = depth;
    solid.onBeforeShadow = () => geometry.setDrawRange(seen, coarse);
    solid.onAfterShadow = () => geometry.setDrawRange(0, seen);
    const contour = new Mesh(this.geometry, ink);
    for (const mesh of [solid, contour]) {
      mesh.frustumCulled = false;
      this.group.add(mesh);
    }
  }

  /** Shows the placement that stands in `placement`, and the ball (m). Through the player's eyes his own head is not seen. */
  show(throughEyes: boolean, ball: ArrayLike<number>): void {
    fillPartRows(this.rows, this.placement, throughEyes ? EYES_HIDE : NOTHING);
    fillBallRows(this.rows, ball);
  }

  dispose(): void {
    this.geometry.dispose();
    for (const material of this.materials) material.dispose();
  }
}
