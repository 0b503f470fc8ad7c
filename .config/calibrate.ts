// Solves the reference swings that come with the app and writes them to assets/references.json.
import { writeFileSync } from 'node:fs';
import { bodyOf } from '../src/model/body';
import { CLUB_IDS, CLUBS, clubOf } from '../src/model/club';
import { solveReferenceFrom, type ReferenceFit } from '../src/solving/reference';
import { seedReference } from '../src/solving/seed';
import { writeShipped, type ShippedSwing } from '../src/solving/shipped';

const STATURES_M = [1.5, 1.62, 1.7, 1.78, 1.85, 1.93, 2.05];
const swings: ShippedSwing[] = [];
const solved = new Map<string, ReferenceFit>();
let times: Float64Array | undefined;
for (const [c, id] of CLUB_IDS.entries()) {
  for (const [s, statureM] of STATURES_M.entries()) {
    const body = bodyOf({ statureM, handed: 'right' });
    const club = clubOf(CLUBS[id]);
    // The search has more than one valley: start from the seed and from both neighbours, keep the lowest.
    const neighbours = [solved.get(`${c} ${s - 1}`), solved.get(`${c - 1} ${s}`)].filter((fit) => fit !== undefined);
    const starts = [seedReference(body), ...neighbours.map((fit) => fit.reference)];
    const fits = starts.map((start) => {
      // A second round from the first one's answer: damped steps stop early far from home.
      const once = solveReferenceFrom(body, club, start);
      return solveReferenceFrom(body, club, once.reference);
    });
    const best = fits.reduce((a, b) => (b.residual < a.residual ? b : a));
    console.log(
      `${statureM.toFixed(2)} m  ${id.padEnd(15)} ${best.status.padEnd(10)} residual ${best.residual.toFixed(3)}`,
    );
    solved.set(`${c} ${s}`, best);
    times = best.reference.times;
    swings.push(writeShipped(statureM, id, best.reference));
  }
}
const about =
  'Reference swings solved by npm run calibrate. Keys by row, joints by column, metres and degrees, seconds.';
const rows = swings.map((swing) => '    ' + JSON.stringify(swing)).join(',\n');
const timesS = JSON.stringify(Array.from(times!, (t) => Math.round(t * 1e9) / 1e9));
writeFileSync(
  new URL('../assets/references.json', import.meta.url),
  `{\n  "about": ${JSON.stringify(about)},\n  "timesS": ${timesS},\n  "swings": [\n${rows}\n  ]\n}\n`,
);
