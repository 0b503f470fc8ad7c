import { DIALS, MOVEMENT_GROUPS, STILL, type MovementGroup, type Movements } from '../model/movements';
import { fitFilm, type FilmFit } from './fit/fitFilm';
import { DIAL_SD, FIRST_DIAL } from './fit/unknowns';

/** One way in which the player may differ from the reference, and how likely the marks make it. */
export interface FilmExplanation {
  readonly uses: readonly MovementGroup[];
  readonly movements: Movements;
  /** Root mean square of what is left of the marks and of the player's own differences, in standard deviations. */
  readonly misfit: number;
  /** Share, 0 to 1, among the explanations compared; they add up to 1. */
  readonly share: number;
  readonly fit: FilmFit;
}

/** Places of a movement's dials among the unknowns. */
const dialsOf = (groups: readonly MovementGroup[]): number[] =>
  DIALS.flatMap(({ group }, i) => (groups.includes(group) ? [FIRST_DIAL + i] : []));
export const ALL_DIALS = dialsOf(MOVEMENT_GROUPS);

/** A blend is thought less likely beforehand than one movement (our choice). */
const BLEND_PRIOR = 0.25;

/**
 * Each movement alone and all together, fitted to all marks of a film, the likeliest first. The share is that of the evidence: how likely the
 * marks are with that movement free, every size of it and every small difference of the player counted (Laplace's approximation), so one more
 * dial has to explain more than chance would. `whole`: the fit with every movement free.
 * Source: D. J. C. MacKay, Bayesian Interpolation, Neural Computation 4 (1992).
 */
export function explainFilm(whole: FilmFit): readonly FilmExplanation[] {
  const { expected, marks } = whole;
  const ways: (readonly MovementGroup[])[] = [...MOVEMENT_GROUPS.map((group) => [group]), MOVEMENT_GROUPS];
  const camera = whole.x.slice();
  camera.fill(0, FIRST_DIAL);
  const fits = ways.map((uses) => (uses.length > 1 ? whole : fitFilm(expected, marks, dialsOf(uses), camera)));
  const weights = fits.map(({ evidence }, i) => evidence + Math.log(ways[i].length > 1 ? BLEND_PRIOR : 1));
  const best = Math.max(...weights);
  const shares = weights.map((each) => Math.exp(each - best));
  const total = shares.reduce((sum, each) => sum + each, 0);
  return ways
    .map((uses, i) => ({
      uses,
      movements: movementsOf(fits[i].x, uses),
      misfit: Math.sqrt(fits[i].costPerFreedom),
      share: shares[i] / total,
      fit: fits[i],
    }))
    .toSorted((a, b) => b.share - a.share);
}

function movementsOf(x: Float64Array, uses: readonly MovementGroup[]): Movements {
  const moved = DIALS.map(({ id, group, neutral, min, max }, i) => {
    const value = neutral + DIAL_SD[i] * x[FIRST_DIAL + i];
    return [id, uses.includes(group) ? Math.min(max, Math.max(min, value)) : neutral] as const;
  });
  return { ...STILL, ...Object.fromEntries(moved) };
}
