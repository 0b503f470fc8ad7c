import { judge, type Band } from '../../reading/verdicts';
import { roundTo, showLength, type Shown } from './numbers';
import { LENGTHS, type Units } from './units';

/** How a reading is rounded, coarsest first: undefined is the unit's own grain. Finer than the last says nothing a coach can see. */
const ROUNDINGS = [undefined, 1, 2] as const;
/** Two numbers closer than this, in the shown unit, are the same number. */
const SAME = 1e-9;

/**
 * A reading that hangs on a band, rounded so that the number never contradicts the verdict: where the rounded number would land on
 * an edge or on its other side, a decimal is added; past two decimals the neighbour that agrees with the verdict is shown.
 * `value` and `band` in metres; the number shown is unsigned (the side is said in words), its `value` keeps the sign.
 */
export function showJudged(value: number, band: Band, units: Pick<Units, 'length'>): Shown {
  if (!Number.isFinite(value)) return showLength(value, units);
  const { metres, grain: usual } = LENGTHS[units.length];
  const round = (number: number, decimals: number | undefined): number =>
    decimals === undefined ? roundTo(roundTo(number / usual, 0) * usual, 2) : roundTo(number, decimals);
  const shown = value / metres;
  const edges = { low: band.low / metres, high: band.high / metres };
  const verdict = judge(value, band);
  const fits = ROUNDINGS.findIndex((places) => agrees(round(shown, places), places !== undefined));
  const decimals = ROUNDINGS[fits === -1 ? ROUNDINGS.length - 1 : fits];
  const nearest = round(shown, decimals);
  const grain = 10 ** -ROUNDINGS[2];
  const near = [nearest, round(nearest + grain, decimals), round(nearest - grain, decimals)];
  const rounded = near.find((number) => agrees(number, decimals !== undefined)) ?? nearest;
  return { ...showLength(Math.abs(rounded) * metres, units, decimals), value: rounded };

  /** True when this number, read against the edges by someone who sees no more, gives the verdict. */
  function agrees(number: number, onEdgeAllowed: boolean): boolean {
    const onEdge = Math.abs(number - edges.low) < SAME || Math.abs(number - edges.high) < SAME;
    // The edges belong to the band, but "2 cm" would stand for 1.6 and 2.4 alike: only "2.0" may say so.
    if (onEdge) return onEdgeAllowed && verdict === 'onPlane';
    return judge(number, edges) === verdict;
  }
}
