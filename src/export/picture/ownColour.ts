/** Least contrast of letters to paper (WCAG 2.2, 1.4.3, for text of any size). */
const LEAST = 4.5;
/** Steps toward the ink that are tried. */
const STEPS = 20;

type Rgb = readonly [number, number, number];

function channels(colour: string): Rgb | undefined {
  if (!/^#[0-9a-f]{6}$/i.test(colour)) return undefined;
  const of = (at: number): number => Number.parseInt(colour.slice(at, at + 2), 16);
  return [of(1), of(3), of(5)];
}

/** Relative luminance, 0 black to 1 white (WCAG 2.2). */
function luminance(rgb: Rgb): number {
  const [r, g, b] = rgb.map((byte) => {
    const share = byte / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast of two colours written as #rrggbb, 1 to 21 (WCAG 2.2); 1 where one cannot be read. */
export function contrast(one: string, other: string): number {
  const [a, b] = [channels(one), channels(other)];
  if (!a || !b) return 1;
  const [light, dark] = [luminance(a), luminance(b)].toSorted((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

/** The coach's own colour, moved toward the ink as far as it takes to be read on this paper. Colours as #rrggbb. */
export function readableOn(colour: string, paper: string, ink: string): string {
  const [from, to] = [channels(colour), channels(ink)];
  if (!from || !to) return ink;
  for (let step = 0; step <= STEPS; step++) {
    const mixed = from.map((byte, i) => Math.round(byte + ((to[i] - byte) * step) / STEPS));
    const written = `#${mixed.map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
    if (contrast(written, paper) >= LEAST) return written;
  }
  return ink;
}
