/** Strokes that are drawn; the number says the rest. */
const MOST = 25;

/** A count as tally strokes, four and one across. */
export function Tally({ count }: { readonly count: number }) {
  const shown = Math.min(count, MOST);
  const strokes = Array.from({ length: shown }, (_, i) => {
    const x = Math.floor(i / 5) * 34 + (i % 5) * 7 + 3;
    return i % 5 === 4 ? `M ${x - 33} 22 L ${x - 1} 8` : `M ${x} 4 L ${x} 26`;
  });
  return (
    <svg className="tally" viewBox="0 0 172 30" aria-hidden="true">
      <path d={strokes.join(' ') || 'M 0 0'} />
    </svg>
  );
}
