import { Group, Mesh, MeshDepthMaterial, type BufferGeometry, type Material, type Vector2 } from 'three';
import { createFigure, type Figure } from '../figure/figure';
import { createPlacement, PART } from '../figure/partIds';
import type { Body } from '../model/body';
import type { Club } from '../model/club';
import { carried, createPartRows, fillPartRows } from './carried';
import { contourMaterial, surfaceMaterials } from './materials';
import { buildGeometry } from './solids';
import type { Theme } from './theme';

const EYES_HIDE = new Set<number>([PART.headEgg, PART.neck]);

/** The figure and its club on the graphics card: one geometry moved by its parts' matrices, a surface mesh and its ink contour. */
export class FigureModel {
  readonly group = new Group();
  readonly figure: Figure;
  readonly placement = createPlacement();
  private readonly rows = createPartRows();
  private readonly geometry: BufferGeometry;
  private readonly materials: Material[];

  constructor(body: Body, club: Club, theme: Theme, size: Vector2) {
    this.figure = createFigure(body, club);
    this.geometry = buildGeometry(this.figure);
    const surfaces = surfaceMaterials(theme, this.rows);
    const ink = contourMaterial(theme, size, this.rows);
    const depth = carried(new MeshDepthMaterial(), this.rows);
    this.materials = [...surfaces, ink, depth];
    const solid = new Mesh(this.geometry, surfaces);
    solid.castShadow = true;
    solid.receiveShadow = true;
    solid.customDepthMaterial = depth;
    const contour = new Mesh(this.geometry, ink);
    for (const mesh of [solid, contour]) {
      mesh.frustumCulled = false;
      this.group.add(mesh);
    }
  }

  /** Shows the placement that stands in `placement`. Through the player's eyes his own head is not seen. */
  show(throughEyes: boolean): void {
    fillPartRows(this.rows, this.placement, (part) => throughEyes && EYES_HIDE.has(part));
  }

  dispose(): void {
    this.geometry.dispose();
    for (const material of this.materials) material.dispose();
  }
}
