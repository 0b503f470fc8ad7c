import type { Verdict } from '../../../reading/verdicts';

const WIDTH = 24;
const HEIGHT = 36;
/** From line to line along the edge, and from dot to dot. */
const HATCH = 9;
const DOTS = 4;

/** A verdict as lines or dots that are drawn one by one: readers of a printed page make nothing good of a background's pattern. */
export function Swatch({ verdict }: { verdict: Verdict }) {
  return (
    <svg className="sheet-swatch" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} fill="none" aria-hidden="true">
      {verdict === 'steep' && <path d={hatch()} stroke="var(--steep)" strokeWidth="3" />}
      {verdict === 'shallow' && <path d={dots()} stroke="var(--shallow)" strokeWidth="3.4" strokeLinecap="round" />}
      {verdict === 'onPlane' && <path d={`M0 ${HEIGHT / 2}H${WIDTH}`} stroke="#16130f" strokeWidth="3" />}
    </svg>
  );
}

/** Lines rising to the right over the whole swatch. */
function hatch(): string {
  const count = Math.ceil((WIDTH + HEIGHT) / HATCH);
  return Array.from({ length: count }, (_, i) => `M${i * HATCH - HEIGHT} ${HEIGHT}l${HEIGHT} ${-HEIGHT}`).join('');
}

/** Dots in staggered rows: lines of no length with round ends. */
function dots(): string {
  const rows = Math.floor(HEIGHT / DOTS);
  const places = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: WIDTH / DOTS / 2 }, (__, i) => [(2 * i + (row % 2) + 0.5) * DOTS, (row + 0.5) * DOTS]),
  );
  return places.flatMap((row) => row.map(([x, y]) => `M${x} ${y}h0.01`)).join('');
}
