// Solves the reference swings that come with the app and writes them to assets/references.json and other-references.json.
import { writeFileSync } from 'node:fs';
import { toDeg } from '../src/math/angle';
import { bodyOf } from '../src/model/body';
import { CLUB_IDS, CLUBS, clubOf } from '../src/model/club';
import { solveReferenceFrom, type ReferenceFit } from '../src/solving/reference/reference';
import { seedReference } from '../src/solving/reference/seed';
import type { ReferenceSwing } from '../src/model/keys';
import { scaleSwing } from '../src/solving/reference/shipped';
import { USUAL_STATURE_M, writeShipped, type ShippedSwing } from '../src/solving/reference/usual';

const STATURES_M = [1.5, 1.62, 1.7, 1.78, 1.85, 1.93, 2.05];
/** Sweeps at most over all swings, and the share by which a cost must fall for another. */
const MOST_SWEEPS = 5;
const LOWER = 1e-3;
/** Rounds at most for one swing, and the share by which a round must lower its cost for another. */
const MOST_ROUNDS = 12;
const SETTLED = 1e-6;
const solved = new Map<string, ReferenceFit>();

/**
 * The lowest of the fits from some starts. The search has more than one valley; each start gets a second round from its first answer,
 * because damped steps stop early far from home.
 */
function solveBest(c: number, s: number, starts: readonly ReferenceSwing[], known?: ReferenceFit): ReferenceFit {
  const body = bodyOf({ statureM: STATURES_M[s], handed: 'right' });
  const club = clubOf(CLUBS[CLUB_IDS[c]]);
  const fits = starts.map((start) => solveReferenceFrom(body, club, solveReferenceFrom(body, club, start).reference));
  return [...(known ? [known] : []), ...fits].reduce((a, b) => (b.cost < a.cost ? b : a));
}

const at = (c: number, s: number): string => `${c} ${s}`;
const swingsAt = (s: number, ...places: readonly (readonly [number, number])[]): ReferenceSwing[] =>
  places.flatMap(([c, from]) => {
    const found = solved.get(at(c, from))?.reference;
    return found ? [scaleSwing(found, STATURES_M[s] / STATURES_M[from])] : [];
  });
const each = (visit: (c: number, s: number) => void): void =>
  CLUB_IDS.forEach((_, c) => STATURES_M.forEach((__, s) => visit(c, s)));

// From the seed and from both neighbours that are solved already; then from all four neighbours, until none gets lower.
each((c, s) => {
  const seed = seedReference(bodyOf({ statureM: STATURES_M[s], handed: 'right' }));
  solved.set(at(c, s), solveBest(c, s, [seed, ...swingsAt(s, [c, s - 1], [c - 1, s])]));
});
let isLower = true;
for (let sweep = 0; isLower && sweep < MOST_SWEEPS; sweep++) {
  isLower = false;
  each((c, s) => {
    const known = solved.get(at(c, s))!;
    const best = solveBest(c, s, swingsAt(s, [c, s - 1], [c, s + 1], [c - 1, s], [c + 1, s]), known);
    if (best.cost < known.cost * (1 - LOWER)) isLower = true;
    solved.set(at(c, s), best);
  });
}

/** Goes on from a fit until a round of the search no longer lowers it. */
function settle(c: number, s: number, fit: ReferenceFit): ReferenceFit {
  let best = fit;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = solveBest(c, s, [best.reference], best);
    if (next.cost > best.cost * (1 - SETTLED)) return next;
    best = next;
  }
  return best;
}

const swings: ShippedSwing[] = [];
each((c, s) => {
  const { status, residual, reference } = settle(c, s, solved.get(at(c, s))!);
  const [statureM, id] = [STATURES_M[s], CLUB_IDS[c]];
  console.log(
    `${statureM.toFixed(2)} m  ${id.padEnd(15)} ${status.padEnd(10)} residual ${residual.toFixed(3)}  lie ${toDeg(reference.lie).toFixed(1)}`,
  );
  swings.push(writeShipped(statureM, id, reference));
});
const { times } = solved.get(at(0, 0))!.reference;
const about =
  'Reference swings solved by npm run calibrate. Keys by row, joints by column, metres and degrees, seconds.';
const list = (some: readonly ShippedSwing[]): string =>
  `[\n${some.map((swing) => '    ' + JSON.stringify(swing)).join(',\n')}\n  ]`;
const isUsual = ({ statureM }: ShippedSwing): boolean => statureM === USUAL_STATURE_M;
const timesS = JSON.stringify(Array.from(times, (t) => Math.round(t * 1e9) / 1e9));
const write = (file: string, text: string): void =>
  writeFileSync(new URL(`../assets/${file}`, import.meta.url), `{\n${text}\n}\n`);
write(
  'references.json',
  `  "about": ${JSON.stringify(about)},\n  "timesS": ${timesS},\n  "usual": ${list(swings.filter(isUsual))}`,
);
write('other-references.json', `  "others": ${list(swings.filter((one) => !isUsual(one)))}`);
