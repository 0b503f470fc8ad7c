/** From one lesson to the next, px: at least a bar with room, and about a third of a pixel for each hour, up to four bars. */
const [LEAST, MOST, A_DAY] = [40, 120, 8];
const DAY_MS = 86_400_000;

/** Where the lessons of some days ("2026-11-25", in order) stand down a drawing that begins at `top`, px: spaced by their days. */
export function rowsAt(dates: readonly string[], top: number): readonly number[] {
  const days = dates.map((date) => Date.parse(`${date}T00:00:00Z`) / DAY_MS);
  let y = top;
  return days.map((day, at) => {
    if (at > 0) y += Math.min(MOST, Math.max(LEAST, (day - days[at - 1]) * A_DAY));
    return y;
  });
}
