/** More days than this are written as a number alone. */
const MOST_STROKES = 10;

interface Props {
  readonly days: number;
  readonly x: number;
  /** Middle of the strokes, px. */
  readonly y: number;
  readonly isWide: boolean;
}

/** Days practised between two lessons as strokes, every fifth across the four before; with the number where there is room. */
export function PractisedDays({ days, x, y, isWide }: Props) {
  if (days === 0) return null;
  if (days > MOST_STROKES)
    return (
      <text className="plot-number" x={x} y={y + 5}>
        {days} days
      </text>
    );
  const strokes = Array.from({ length: days }, (_, i) => {
    const at = x + Math.floor(i / 5) * 40 + (i % 5) * 7;
    return i % 5 === 4 ? `M${at - 31} ${y + 5}L${at + 3} ${y - 5}` : `M${at} ${y - 8}v16`;
  });
  return (
    <g>
      <path className="plot-stroke" d={strokes.join('')} />
      {isWide && (
        <text className="plot-number" x={x + 84} y={y + 5}>
          {days}
        </text>
      )}
    </g>
  );
}
