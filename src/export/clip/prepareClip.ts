import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { CheckpointId } from '../../reading/checkpoints';
import { readTokens } from '../../scene/setting/theme';
import { layOut } from './clipLayout';
import { toMarked } from '../files/embedded';
import type { ClipWish, ClipJob } from './clipJob';
import type { Staging } from './clipStage';
import { pixelSize } from './formats';
import { toCodeAddress } from '../link/link';
import { breathe } from '../task/exportTask';
import { changesBetween } from '../../store/plan/draftPlan';
import { sayTask } from '../../words/why/planText';
import { readInks } from '../picture/canvasPen';
import type { PlatePixels } from '../picture/plateCard';
import { drawPlate } from '../picture/plateImage';
import { toPixels } from '../picture/raster';
import type { Film } from './storyboard';
import { sayChanges, type ExportSnapshot, type ShownSwing } from '../task/exportSnapshot';

/** How much larger a plate's captions are in a clip than on the desk, against the clip's other letters. */
const CAPTIONS = 1.35;
/** A plate that is lettered as if it were smaller than this, css px a unit, has no room left for its drawing. */
const SMALLEST_PLATE = 0.7;

const takesOf = ({ now, after }: ExportSnapshot, { arrangement }: Film): readonly ShownSwing[] =>
  arrangement === 'sideBySide' || arrangement === 'oneAfterOther' ? [now, after] : [now];

/** What the scene needs besides the swings, with the page's colours. */
export const stagingOf = ({ derived, document }: ExportSnapshot): Staging => ({
  body: derived.body,
  club: derived.club,
  handed: derived.player.handed,
  referenceSwing: derived.referenceSwing,
  board: document.board,
  tokens: readTokens(),
});

/** The title where none was typed: the task of the plan, or how many swings are shown. */
function titleOf({ afterId, document: { plan }, now }: ExportSnapshot, { arrangement }: Film): string {
  if (arrangement === 'one') return 'One swing';
  return afterId === 'plan' && plan
    ? sayTask(changesBetween(plan.from, plan.movements), now.swing.movements)
    : 'Two swings';
}

/**
 * Prepares a clip on the page, because colours, styles and plates are only available there. `who` names the club and the
 * player.
 */
export async function prepareClip(subject: ExportSnapshot, wish: ClipWish, who: string): Promise<ClipJob> {
  const takes = takesOf(subject, wish);
  const { derived, document } = subject;
  const plan = subject.afterId === 'plan' && wish.arrangement !== 'one' ? document.plan : null;
  return {
    wish,
    staging: stagingOf(subject),
    takes,
    ghost: wish.arrangement === 'ghosted' ? subject.after : undefined,
    bands: derived.bands,
    units: document.units,
    inks: readInks(),
    plates: wish.slowMotion ? await platesOf(subject, takes, wish) : [],
    who,
    title: wish.title.trim() || titleOf(subject, wish),
    name: wish.name.trim() || (plan?.names.player ?? ''),
    feel: plan?.feel ?? '',
    changes: wish.arrangement === 'one' ? [] : sayChanges(subject),
    address: toCodeAddress(document, location.href).address,
    mark: toMarked(document),
  };
}

async function platesOf(
  subject: ExportSnapshot,
  takes: readonly ShownSwing[],
  { arrangement, shape, size }: ClipWish,
): Promise<Readonly<Record<CheckpointId, PlatePixels>>[]> {
  const { cells, unit } = layOut(pixelSize(shape, size), arrangement === 'sideBySide' ? takes.length : 1, true);
  const room = cells[0].plate!;
  const width = Math.max(160, Math.round(Math.min(room.width, (room.height * 320) / 292)));
  const scale = Math.max(SMALLEST_PLATE, width / 320 / unit / CAPTIONS);
  const draw = async (take: ShownSwing, id: CheckpointId): Promise<[CheckpointId, PlatePixels]> => {
    const { title, words, svg } = drawPlate(subject, take, id, subject.document.board, scale);
    const pixels = svg === undefined ? undefined : await toPixels(svg, width, Math.round((width * 292) / 320));
    return [id, { title, words, pixels }];
  };
  const plates: Record<CheckpointId, PlatePixels>[] = [];
  for (const take of takes) {
    const drawn: [CheckpointId, PlatePixels][] = [];
    for (const id of CHECKPOINT_IDS) {
      drawn.push(await draw(take, id));
      // One at a time, so that the page is never held up for long.
      await breathe();
    }
    plates.push(Object.fromEntries(drawn) as Record<CheckpointId, PlatePixels>);
  }
  return plates;
}
