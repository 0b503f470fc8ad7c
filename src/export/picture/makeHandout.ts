import { CHECKPOINT_IDS, type CheckpointId } from '../../reading/checkpointTable';
import { sayCheckpoint, type CheckpointWords } from '../../words';
import { sayAtCheckpoint, sayFault } from '../../words/showing/handout';
import { drawInWorker } from '../clip/clipWorker';
import { changesOf, ownOn, stagingOf } from '../clip/prepareClip';
import type { OwnLook } from '../clip/clipJob';
import { toMarked } from '../files/embedded';
import type { HandoutShape } from '../painting/handout';
import type { ExportSnapshot } from '../task/exportSnapshot';
import { fileName, type Made, type TaskControl } from '../task/exportTask';
import { readInks } from './canvasPen';
import { withPngText } from './png';

/** A still of both checkpoints with their numbers, at twice the pixels of a phone or a tablet, with the document inside. */
export async function makeHandout(
  subject: ExportSnapshot,
  shape: HandoutShape,
  who: string,
  own: OwnLook,
  companion: TaskControl,
): Promise<Made> {
  const { now, derived, document } = subject;
  const { units } = document;
  const words = Object.fromEntries(
    CHECKPOINT_IDS.map((id) => [id, sayCheckpoint(id, now.checkpoints[id], derived.bands, units)]),
  ) as Record<CheckpointId, CheckpointWords>;
  const inks = readInks();
  const changes = subject.afterId === 'plan' ? changesOf(subject) : [];
  const job = {
    shape,
    staging: stagingOf(subject),
    take: now,
    bands: derived.bands,
    units,
    inks,
    own: ownOn(own, inks),
    sentence: sayFault(words, changes),
    longer: CHECKPOINT_IDS.map((id) => sayAtCheckpoint(id, words[id])).join(' '),
    who: `Slantwise, ${who}`,
  };
  const drawn = await drawInWorker(job, companion);
  const png = withPngText(new Uint8Array(await drawn.arrayBuffer()), 'Comment', toMarked(document));
  const blob = new Blob([png as BlobPart], { type: 'image/png' });
  const { width, height } = shape === '4:5' ? { width: 1080, height: 1350 } : { width: 1600, height: 900 };
  return { name: `${fileName('numbers', shape.replace(':', 'x'))}.png`, format: `PNG, ${width} × ${height}`, blob };
}
