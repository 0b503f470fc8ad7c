import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { heelLiftAt } from '../../src/figure/stance';
import { createPose } from '../../src/model/chain';
import { CLUB_IDS } from '../../src/model/club';
import { ballRows } from '../../src/panels/ball/ballRows';
import { dialWords } from '../../src/words/swing/edgeDials';
import { sayWho } from '../../src/words/showing/who';
import { plateFigureOf } from '../../src/plates/figure/figurePainter';
import { Drawing } from '../../src/plates/figure/Drawing';
import { fitPicture, plateDrawing } from '../../src/plates/plate/plateDrawing';
import { shotDrawing } from '../../src/plates/ball/shotDrawing';
import { strikeDrawing } from '../../src/plates/ball/strikeDrawing';
import { isReached, type CheckpointId } from '../../src/reading/checkpoints';
import { swingPose } from '../../src/reading/swing';
import { sayPicture } from '../../src/words/swing/picture';
import { current, currentPose, desk, dialValue, EDGE_DIALS, type Document } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { startEffects } from '../../src/store/effects/startEffects';
import {
  sayCheckpoint,
  sayMiss,
  sayNoShot,
  sayShape,
  sayShortcomings,
  sayStatus,
  sayStrikeAndFlight,
} from '../../src/words';
import { documents } from './documents';
import '../unit/searchHere';

startEffects();

/** How many desks are set up at random; ANY_DESK=5000 for the long run. */
const RUNS = Number(process.env['ANY_DESK'] ?? 30);
/** Players whose swing ships solved, and the shortest and tallest there may be, whose swing does not. */
const SHIPPED_M = [1.5, 1.62, 1.7, 1.78, 1.85, 1.93, 2.05] as const;
const EXTREME_M = [1.4, 2.1] as const;
const LONG = Math.max(60_000, RUNS * 1500);
const CHECKPOINTS: readonly CheckpointId[] = ['leadArmParallel', 'shaftParallel'];
const SIZES = [
  { width: 330, height: 300 },
  { width: 120, height: 96 },
] as const;
const ODD = /NaN|undefined|Infinity|\[object|null/;

/** Puts a document on a fresh desk, looks at everything that follows from it, and answers every text that is shown. */
function showAll(document: Document, exaggerate: boolean): string[] {
  clearDesk();
  desk.setState({ document, session: { ...desk.getState().session, exaggerate } });
  const derived = current();
  const { units } = document;
  const { handed } = derived.player;
  const said: string[] = [
    sayStatus(derived),
    sayPicture(derived, desk.getState()),
    sayWho(document),
    ...EDGE_DIALS.flatMap(({ id }) => {
      const { past, ...words } = dialWords(id, dialValue(document.movements, id), units);
      return [...Object.values(words), ...(past === undefined ? [] : [past])];
    }),
  ];

  const pose = createPose();
  const times = derived.swing.reference.times;
  const [first, last] = [times[0], times[times.length - 1]];
  for (let i = 0; i <= 40; i++) {
    swingPose(derived.swing, first + ((last - first) * i) / 40, pose);
    if (!pose.every(Number.isFinite)) throw new Error(`no pose at step ${i} of 40`);
  }
  expect(currentPose().every(Number.isFinite)).toBe(true);

  for (const id of CHECKPOINTS) {
    const checkpoint = derived.checkpoints[id];
    const words = sayCheckpoint(id, checkpoint, derived.bands, units);
    said.push(words.word, words.sentence, words.spoken, words.why, words.shortWhy, words.reach ?? 'reaches');
    if (!isReached(checkpoint)) continue;
    for (const size of SIZES) {
      const { letters } = fitPicture(id, size);
      const drawing = plateDrawing(
        {
          id,
          plate: plateFigureOf(derived.body, derived.club),
          checkpoint,
          stance: { ballPoint: derived.swing.reference.ballPoint, heelLift: heelLiftAt(derived.swing, checkpoint.t) },
          bands: derived.bands,
          units,
          handed,
          reference: derived.referenceCheckpoints[id],
          ghost: undefined,
          letters,
          finish: size.width > 200 ? 'engraved' : 'drawn',
        },
        words,
      );
      // A reached checkpoint has a plate with a figure on it.
      expect(drawing!.parts.length).toBeGreaterThan(20);
      said.push(renderToStaticMarkup(<Drawing drawing={drawing!} letters={letters} label={words.spoken} />));
    }
  }

  const { delivery, shot } = derived;
  if ('missing' in delivery) said.push(sayNoShot(delivery));
  else {
    said.push(...sayShortcomings(delivery, units));
    const flown = 'missing' in shot ? undefined : shot;
    const rows = ballRows(delivery, flown, handed, units).flatMap((group) => [...group.rows]);
    for (const row of [...rows, ...sayMiss(delivery, units)]) said.push(row.label, row.text, row.spoken);
    if (flown) said.push(...sayStrikeAndFlight(delivery, flown, handed, units).map(({ text }) => text));
    said.push(JSON.stringify(strikeDrawing(delivery, handed, { width: 300, height: 260 })));
  }
  if ('missing' in shot) said.push(sayNoShot(shot));
  else {
    said.push(sayShape(shot, handed).sentence);
    said.push(JSON.stringify(shotDrawing(shot, handed, units, { width: 300, height: 260 })));
  }
  return said;
}

/** What is odd in the texts of a desk, each cut around the spot. */
const oddIn = (texts: readonly string[]): string[] =>
  texts
    .filter((text) => text.trim() === '' || ODD.test(text))
    .map((text) =>
      text.trim() === '' ? '(nothing said)' : text.slice(Math.max(0, text.search(ODD) - 60)).slice(0, 120),
    );

/** Each of the extreme players is solved with three clubs only, once for the whole run. */
const swinging = fc
  .tuple(
    documents,
    fc.oneof(
      { weight: 3, arbitrary: fc.tuple(fc.constantFrom(...SHIPPED_M), fc.constantFrom(...CLUB_IDS)) },
      fc.tuple(
        fc.constantFrom(...EXTREME_M),
        fc.constantFrom('driver' as const, '7-iron' as const, 'sand wedge' as const),
      ),
    ),
  )
  .map(([document, [statureM, id]]) => ({
    ...document,
    player: { statureM, handed: document.player.handed },
    club: { ...document.club, id },
  }));

test(
  'whatever is set, everything drawn is a number and everything said is a sentence',
  () => {
    fc.assert(
      fc.property(swinging, fc.boolean(), (document, exaggerate) => {
        expect(oddIn(showAll(document, exaggerate))).toEqual([]);
      }),
      { numRuns: RUNS },
    );
  },
  LONG,
);

test(
  'any body with any club is either solved and drawn whole, or refused in a sentence',
  () => {
    fc.assert(
      fc.property(documents, (document) => {
        expect(oddIn(showAll(document, false))).toEqual([]);
        const { status, problem } = current();
        expect(status).not.toBe('solving');
        expect((problem ?? '') === '').toBe(status === 'ready');
      }),
      { numRuns: Math.ceil(RUNS / 10) },
    );
  },
  LONG,
);
