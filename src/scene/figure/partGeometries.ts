import { BufferAttribute, BufferGeometry, SphereGeometry } from 'three';
import type { Figure } from '../../figure/figure';
import { PART_IDS } from '../../figure/partIds';
import { solidsOf, SURFACES, type Solid, type Surface } from './solids';

/** What one part carries of one surface, in the part's own axes, m. */
export interface PartGeometry {
  readonly surface: Surface;
  readonly geometry: BufferGeometry;
}

/** The figure part by part, for whoever moves parts one by one: for every part its solids, its pins and its drawn lines. */
export function partGeometries(figure: Figure): readonly (readonly PartGeometry[])[] {
  const solids = solidsOf(figure);
  return PART_IDS.map((_, part) =>
    SURFACES.flatMap((surface) => {
      const own = solids.filter((solid) => solid.part === part && solid.surface === surface);
      return own.length === 0 ? [] : [{ surface, geometry: join(own) }];
    }),
  );
}

function join(solids: readonly Solid[]): BufferGeometry {
  const points: number[] = [];
  const index: number[] = [];
  for (const {
    rings: { rings, ringCount, segments },
  } of solids) {
    const base = points.length / 3;
    points.push(...rings);
    for (let i = 0; i < ringCount - 1; i++) {
      for (let j = 0; j < segments; j++) {
        const a = base + i * segments + j;
        const b = base + i * segments + ((j + 1) % segments);
        index.push(a, a + segments, b, b, a + segments, b + segments);
      }
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(points), 3));
  geometry.setIndex(index);
  geometry.computeVertexNormals();
  return geometry;
}

/** A ball without the places of a picture on it, which nobody paints. */
export function ballGeometry(radius: number): BufferGeometry {
  const ball = new SphereGeometry(radius, 28, 18);
  ball.deleteAttribute('uv');
  return ball;
}
