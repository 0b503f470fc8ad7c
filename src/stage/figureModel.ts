import { Group, Sphere, SkinnedMesh, Vector3, type BufferGeometry, type Vector2 } from 'three';
import { createFigure, type Figure } from '../figure/figure';
import { createPlacement, PART, PART_IDS } from '../figure/partIds';
import type { Body } from '../model/body';
import type { Club } from '../model/club';
import { contourMaterial, surfaceMaterials } from './materials';
import { PlacedSkeleton } from './skeleton';
import { buildGeometry } from './solids';
import type { Theme } from './theme';

const EYES_HIDE = new Set<number>([PART.headEgg, PART.neck]);

/** The figure and its club on the graphics card: one geometry, one skeleton, a surface mesh and its ink contour. */
export class FigureModel {
  readonly group = new Group();
  readonly figure: Figure;
  readonly placement = createPlacement();
  private readonly skeleton = new PlacedSkeleton(PART_IDS.length);
  private readonly geometry: BufferGeometry;

  constructor(body: Body, club: Club, theme: Theme, size: Vector2) {
    this.figure = createFigure(body, club);
    this.geometry = buildGeometry(this.figure);
    const solid = new SkinnedMesh(this.geometry, surfaceMaterials(theme));
    solid.castShadow = true;
    solid.receiveShadow = true;
    const contour = new SkinnedMesh(this.geometry, contourMaterial(theme, size));
    for (const mesh of [solid, contour]) {
      // Bones are placed in the group's own axes, so that a mirrored group mirrors the figure.
      mesh.bindMode = 'detached';
      mesh.bind(this.skeleton, mesh.matrix.clone().identity());
      mesh.frustumCulled = false;
      // Known without asking every vertex.
      mesh.boundingSphere = new Sphere(new Vector3(0, 1, 0.3), 2.5);
      this.group.add(mesh);
    }
  }

  /** Shows the placement that stands in `placement`. Through the player's eyes his own head is not seen. */
  show(throughEyes: boolean): void {
    this.skeleton.place(this.placement, (part) => throughEyes && EYES_HIDE.has(part));
  }

  dispose(): void {
    this.geometry.dispose();
    this.skeleton.dispose();
    for (const mesh of this.group.children as SkinnedMesh[]) {
      for (const material of [mesh.material].flat()) material.dispose();
    }
  }
}
