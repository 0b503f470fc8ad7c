import type { Body } from '../model/body';
import type { Club } from '../model/club';
import { gripSolid, headLines, headSolid, shaftSolid, sleeveSolid } from './clubShapes';
import { facePlate, isWood } from './woodShapes';
import { ball, loft, type Rings } from './loft';
import { faceLines, fistSolid, footSolid, headEgg } from './carved';
import { PART_IDS, type PartId } from './partIds';
import { measure, type Measures } from './measures';
import { BALLS, SHAPES, WAIST } from './shapes';

export type Material = 'beech' | 'walnut' | 'grip' | 'steel' | 'head' | 'brass';

/** One solid of the figure or the club, in its own axes (m): rings along +Y. Placed by a matrix, never rebuilt. */
export interface Part extends Rings {
  readonly id: PartId;
  readonly material: Material;
}

/** A brass pin through a joint: a cylinder along one axis of the part that carries it, centred on the part's origin. */
interface Pin {
  readonly id: string;
  /** Index of the part that carries it. */
  readonly part: number;
  readonly axis: 'x' | 'z';
  /** Half the length and radius, m. */
  readonly half: number;
  readonly radius: number;
}

/** A line drawn on a part: the face's two construction lines, the grooves, the leading edge. In the part's axes, m. */
interface Mark {
  readonly id: string;
  readonly part: number;
  readonly points: Float64Array;
  readonly radius: number;
  readonly material: 'ink' | 'brass';
}

/** A further solid let into a part, in the part's axes. */
interface Inlay {
  readonly part: number;
  readonly material: Material;
  readonly rings: Rings;
}

export interface Figure {
  readonly parts: readonly Part[];
  readonly pins: readonly Pin[];
  readonly marks: readonly Mark[];
  readonly inlays: readonly Inlay[];
  readonly measures: Measures;
}

/** A figure and a club as solids, for one player with one club. Built once; place it with `placeFigure`. */
export function createFigure(body: Body, club: Club): Figure {
  const m = measure(body, club);
  const { k } = m;
  const sphere = (radius: number, fine = false): Rings =>
    ball(radius * k, radius * k, radius * k, fine ? 14 : 12, fine ? 24 : 20);
  const trunkLength = (part: number): number => part * k * m.trunkScale;
  const solids: Partial<Record<PartId, [Material, Rings]>> = {
    pelvis: ['beech', loft(SHAPES.pelvis, 0, 0.116 * k, k)],
    waist: ['walnut', ball(WAIST.x * k, WAIST.y * k * m.trunkScale, WAIST.z * k, 14, 26)],
    ribcage: ['beech', loft(SHAPES.ribcage, 0, trunkLength(0.205), k)],
    neck: ['walnut', loft(SHAPES.neck, -0.006 * k, 0.08 * k, k)],
    headEgg: ['beech', headEgg(k)],
    grip: ['grip', gripSolid()],
    shaft: ['steel', shaftSolid(club)],
    sleeve: ['grip', sleeveSolid(club)],
    clubHead: [isWood(club) ? 'walnut' : 'head', headSolid(club)],
  };
  for (const side of ['Lead', 'Trail'] as const) {
    const put = (id: string, material: Material, rings: Rings): void => {
      solids[`${id}${side}` as PartId] = [material, rings];
    };
    put('yoke', 'beech', loft(SHAPES.yoke, -0.01 * k, m.yokeLength - 0.022 * k, k));
    put('shoulder', 'walnut', sphere(BALLS.shoulder));
    put('upperArm', 'beech', loft(SHAPES.upperArm, -0.018 * k, m.upperArm - 0.013 * k, k));
    put('elbow', 'walnut', sphere(BALLS.elbow));
    put('forearm', 'beech', loft(SHAPES.forearm, 0.013 * k, m.forearm - 0.01 * k, k));
    put('wrist', 'walnut', sphere(BALLS.wrist));
    put('palm', 'beech', loft(SHAPES.palm, 0.006 * k, m.palm + 0.004 * k, k));
    put('fist', 'beech', fistSolid(m.fistLength, k));
    put('thumb', 'beech', loft(SHAPES.thumb, 0, 0.034 * k, k));
    put('hip', 'walnut', sphere(BALLS.hip, true));
    put('thigh', 'beech', loft(SHAPES.thigh, 0.022 * k, m.thigh - 0.016 * k, k));
    put('knee', 'walnut', sphere(BALLS.knee, true));
    put('shank', 'beech', loft(SHAPES.shank, 0.016 * k, m.shank - 0.01 * k, k));
    put('ankle', 'walnut', sphere(BALLS.ankle));
    put('foot', 'beech', footSolid(m));
  }
  const parts = PART_IDS.map((id): Part => {
    const [material, rings] = solids[id]!;
    return { id, material, ...rings };
  });
  const inlays: Inlay[] = isWood(club)
    ? [{ part: PART_IDS.indexOf('clubHead'), material: 'head', rings: facePlate(club) }]
    : [];
  return { parts, pins: pinsOf(k), marks: marksOf(k, club), inlays, measures: m };
}

/** Pins stand 2 mm proud of their balls and lie on the hinge axis, which is the ball's own x axis (the waist's: z). */
function pinsOf(k: number): Pin[] {
  const proud = 0.002;
  const pin = (id: PartId, half: number, radius: number, axis: 'x' | 'z' = 'x'): Pin => ({
    id,
    part: PART_IDS.indexOf(id),
    axis,
    half: half * k + proud,
    radius: radius * k,
  });
  const both = (id: string, half: number, radius: number): Pin[] =>
    (['Lead', 'Trail'] as const).map((side) => pin(`${id}${side}` as PartId, half, radius));
  return [
    pin('waist', WAIST.z, 0.007, 'z'),
    ...both('shoulder', 0.0345, 0.0062),
    ...both('elbow', 0.0205, 0.006),
    ...both('wrist', 0.0145, 0.005),
    ...both('hip', 0.047, 0.0075),
    ...both('knee', 0.0288, 0.0068),
    ...both('ankle', 0.0198, 0.0055),
  ];
}

function marksOf(k: number, club: Club): Mark[] {
  const head = PART_IDS.indexOf('headEgg');
  const blade = PART_IDS.indexOf('clubHead');
  return [
    ...faceLines(k).map(({ id, points }): Mark => ({ id, part: head, points, radius: 0.00072 * k, material: 'ink' })),
    ...headLines(club).map((line): Mark => ({ ...line, part: blade })),
  ];
}
