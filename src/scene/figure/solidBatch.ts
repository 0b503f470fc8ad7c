import { BufferGeometry, MeshDepthMaterial, type Material, type Mesh, type Vector2 } from 'three';
import type { Figure } from '../../figure/figure';
import { withRigidParts, createPartRows } from './rigidPartShader';
import { contourMaterial } from './materials';
import { buildGeometry } from './solids';
import { solidMaterial } from './surfaces';
import type { Theme } from '../setting/theme';

/**
 * Everything solid that moves, as one geometry: the lay figure, its club and the ball. Each is a run of parts in `rows`, which its own
 * component fills. One geometry makes three draw calls of them all: surfaces, ink contour, shadow. A mesh for each of the forty parts
 * would make over a hundred.
 */
export class SolidBatch {
  readonly rows = createPartRows();
  readonly surface: Material;
  readonly ink: Material;
  /** What the shadow is drawn with. */
  readonly depth: Material;
  geometry = new BufferGeometry();
  /** The same vertices in a quarter of the triangles: for whoever draws them a second time. */
  coarseGeometry = new BufferGeometry();
  private seen = 0;
  private coarse = 0;
  private figure: Figure | undefined;

  constructor(theme: Theme, size: Vector2) {
    this.surface = solidMaterial(theme, this.rows, size);
    this.ink = contourMaterial(theme, size, this.rows);
    this.depth = withRigidParts(new MeshDepthMaterial(), this.rows);
  }

  /** Puts the solids of a figure into meshes that draw this batch; does nothing for the figure that is there. */
  build(figure: Figure, meshes: readonly (Mesh | null)[]): void {
    if (figure === this.figure) return;
    this.geometry.dispose();
    this.coarseGeometry.dispose();
    const { geometry, seen, coarse } = buildGeometry(figure);
    Object.assign(this, { figure, geometry, seen, coarse, coarseGeometry: shareVertices(geometry, seen, coarse) });
    for (const mesh of meshes) if (mesh) mesh.geometry = geometry;
  }

  /** Behind the triangles that are seen lie coarser ones for the shadow. */
  readonly beforeShadow = (): void => this.geometry.setDrawRange(this.seen, this.coarse);
  readonly afterShadow = (): void => this.geometry.setDrawRange(0, this.seen);

  dispose(): void {
    this.geometry.dispose();
    this.coarseGeometry.dispose();
    for (const material of [this.surface, this.ink, this.depth]) material.dispose();
  }
}

/** A geometry over the same numbers that draws another range of them. */
function shareVertices(of: BufferGeometry, from: number, count: number): BufferGeometry {
  const geometry = new BufferGeometry();
  for (const [name, attribute] of Object.entries(of.attributes)) geometry.setAttribute(name, attribute);
  geometry.setIndex(of.index);
  geometry.setDrawRange(from, count);
  return geometry;
}
