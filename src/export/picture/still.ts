import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { EXAGGERATED, ILLUSTRATION, sayCheckpoint } from '../../words';
import { sayNumbers } from '../../words/showing/handout';
import { toMarked } from '../files/embedded';
import { ClipStage } from '../clip/clipStage';
import { fileName, type Made } from '../task/exportTask';
import { book, createCanvas, draft, loadFonts, penOn, readInks, toPng, widthOf, write } from './canvasPen';
import { drawPlate } from './plateImage';
import { withPngText } from './png';
import { stagingOf } from '../clip/prepareClip';
import { withFonts } from './raster';
import type { ExportSnapshot, ShownSwing } from '../task/exportSnapshot';
import type { Pose } from '../../model/pose';
import { DIRECTIONS } from '../../scene/camera/view';
import type { StagePicture } from '../../store';

/** At which instant (reference s), in which pose, as seen on the stage, and how many times the size on screen. */
export interface StillOf {
  readonly t: number;
  /** Undefined where the stage has drawn nothing: the three-quarter view then. */
  readonly picture: StagePicture | undefined;
  /** As it stands on the stage, with what the joints bench changed. */
  readonly pose: Pose;
  readonly times: 1 | 2 | 4;
}

/** Size of a picture that the stage has not drawn, px. */
const UNSEEN = { width: 960, height: 640 } as const;

/** A picture of the stage as PNG, up to four times its size on screen, with what it shows in words below and the document inside. */
export async function makePng(subject: ExportSnapshot, { t, pose, picture: shown, times }: StillOf): Promise<Made> {
  await loadFonts();
  const { width, height } = shown ?? UNSEEN;
  const set = new ClipStage(stagingOf(subject), [subject.now]);
  try {
    const most = Math.min(set.longest / Math.max(width, height), times);
    const picture = { width: Math.round(width * most), height: Math.round(height * most) };
    const from = shown?.view ?? set.fit(DIRECTIONS.free, picture);
    const scene = set.draw({ take: 0, t, view: from, pose, ghost: ghostOf(subject), isStill: true }, picture, most);
    const canvas = createCanvas(picture.width, picture.height + Math.round(64 * most));
    const pen = penOn(canvas);
    const inks = readInks();
    pen.fillStyle = inks.paper;
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(scene, 0, 0);
    const { checkpoints } = subject.now;
    const { bands, exaggerated } = subject.derived;
    const numbers = CHECKPOINT_IDS.map((id) =>
      sayNumbers(id, sayCheckpoint(id, checkpoints[id], bands, subject.document.units)),
    ).join(' ');
    const sentence = exaggerated ? `${numbers} (${EXAGGERATED})` : numbers;
    pen.fillStyle = inks.ink;
    pen.fillRect(0, picture.height, canvas.width, 1.25 * most);
    const at = { x: 14 * most, width: canvas.width - 28 * most, lead: 24 * most, most: 1 };
    const wide = widthOf(pen, sentence, book(20 * most));
    write(pen, sentence, book(20 * most * Math.min(1, at.width / wide)), {
      ...at,
      width: Infinity,
      y: picture.height + 27 * most,
    });
    pen.fillStyle = inks.quiet;
    write(pen, ILLUSTRATION, draft(15 * most, 600), { ...at, y: picture.height + 51 * most });
    const png = new Uint8Array(await (await toPng(canvas)).arrayBuffer());
    const bytes = withPngText(png, 'Comment', toMarked(subject.document));
    return {
      name: `${fileName('still')}.png`,
      format: `PNG, ${canvas.width} × ${canvas.height}`,
      blob: new Blob([bytes as BlobPart], { type: 'image/png' }),
    };
  } finally {
    set.dispose();
  }
}

const ghostOf = ({ now, derived: { ghostSwing } }: ExportSnapshot): ShownSwing | undefined =>
  ghostSwing ? { ...now, swing: ghostSwing } : undefined;

const WIDTH = 680;
const HEIGHT = 400;

const escape = (text: string): string =>
  text.replace(/[&<>"]/g, (letter) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[letter]!);

/** Both plates as one SVG that needs nothing from outside: look, typefaces and document are inside. */
export async function makePlatesSvg(subject: ExportSnapshot): Promise<Made> {
  const inks = readInks();
  const plates = CHECKPOINT_IDS.map((id) => drawPlate(subject, subject.now, id, subject.document.board));
  const book = `font-family="Vollkorn Variable, Georgia, serif" fill="${inks.ink}"`;
  const draft = `font-family="Sofia Sans Semi Condensed Variable, Arial Narrow, sans-serif"`;
  const drawn = plates.map(({ title, words, svg }, i) => {
    const x = i * 340;
    const colour =
      words.verdict === 'steep' ? inks.steepText : words.verdict === 'shallow' ? inks.shallowText : inks.ink;
    const inner = svg?.replace('<svg', `<svg x="${x + 10}" y="36" width="320" height="292"`) ?? '';
    return (
      `<rect x="${x + 5}" y="5" width="330" height="390" fill="${inks.plate}" stroke="${inks.ink}" stroke-width="1.25"/>${inner}` +
      `<text x="${x + 18}" y="29" ${book} font-size="20" font-weight="500">${escape(title)}</text>` +
      `<text x="${x + 18}" y="358" font-family="Vollkorn Variable, Georgia, serif" fill="${colour}" font-size="26" font-weight="700">${escape(words.word)}</text>` +
      `<text x="${x + 18}" y="382" ${draft} fill="${inks.ink}" font-size="17">${escape(words.why)}</text>`
    );
  });
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT + 26}" width="${WIDTH}" height="${HEIGHT + 26}">` +
    `<metadata>${toMarked(subject.document)}</metadata><rect width="100%" height="100%" fill="${inks.paper}"/>${drawn.join('')}` +
    `<text x="6" y="${HEIGHT + 16}" ${draft} fill="${inks.quiet}" font-size="15" font-weight="600">${escape([ILLUSTRATION, ...(subject.derived.exaggerated ? [EXAGGERATED] : [])].join(', '))}</text></svg>`;
  return {
    name: `${fileName('plates')}.svg`,
    format: 'SVG, both plates',
    blob: new Blob([await withFonts(svg)], { type: 'image/svg+xml' }),
  };
}
