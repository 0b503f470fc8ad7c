/** The time that lies nearest to `time`, by its place. */
export function nearest(times: Float64Array, time: number): number {
  let [low, high] = [0, times.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((times[middle] + times[middle + 1]) / 2 < time) low = middle + 1;
    else high = middle;
  }
  return low;
}
