import { createRoot } from 'react-dom/client';
import { flushSync } from 'react-dom';
import { heelLiftAt } from '../../figure/stance';
import { isReached, type CheckpointId } from '../../reading/checkpoints';
import { plateFigureOf } from '../../plates/figure/figurePainter';
import { Drawing } from '../../plates/figure/Drawing';
import { PLATE_HEIGHT, PLATE_WIDTH } from '../../plates/plate/frame';
import { letteringAt } from '../../plates/annotation/lettering';
import { plateDrawing } from '../../plates/plate/plateDrawing';
import { CHECKPOINT_NAMES, sayCheckpoint, type CheckpointWords } from '../../words';
import { inlineLook } from './inlineSvgStyles';
import type { ExportSnapshot, ShownSwing } from '../task/exportSnapshot';
import '../../plates/plates.css';
import '../files/paper.css';

/** A plate that stands by itself: what it says, and its drawing as SVG, 320 by 292 units; no drawing where it was not reached. */
export interface PlateImage {
  readonly id: CheckpointId;
  readonly title: string;
  readonly words: CheckpointWords;
  readonly svg: string | undefined;
}

/** Draws a plate of a take as it looks on a light or dark board. `scale` in css px a unit: smaller plates get larger letters. */
export function drawPlate(
  { derived, document: { units } }: ExportSnapshot,
  { label, swing, checkpoints }: ShownSwing,
  id: CheckpointId,
  board: 'light' | 'dark',
  scale = 1,
): PlateImage {
  const checkpoint = checkpoints[id];
  const words = sayCheckpoint(id, checkpoint, derived.bands, units);
  const { title } = CHECKPOINT_NAMES[id];
  if (!isReached(checkpoint)) return { id, title, words, svg: undefined };
  const { body, club, bands, player } = derived;
  const letters = letteringAt(scale, false);
  const drawing = plateDrawing(
    {
      id,
      plate: plateFigureOf(body, club),
      checkpoint,
      stance: { ballPoint: swing.reference.ballPoint, heelLift: heelLiftAt(swing, checkpoint.t) },
      bands,
      units,
      handed: player.handed,
      reference: derived.referenceCheckpoints[id],
      ghost: undefined,
      letters,
      finish: 'engraved',
    },
    words,
  );
  if (!drawing) return { id, title, words, svg: undefined };
  const host = document.createElement('div');
  host.className = 'paper-host';
  host.dataset['board'] = board;
  document.body.append(host);
  // Names inside one picture must not meet those of another on the same sheet.
  const root = createRoot(host, { identifierPrefix: `plate-${label.replace(/\W/g, '')}-${id}-` });
  try {
    flushSync(() => root.render(<Drawing drawing={drawing} letters={letters} label={`${title}. ${words.spoken}`} />));
    const svg = host.querySelector('svg')!;
    inlineLook(svg);
    svg.setAttribute('viewBox', `0 0 ${PLATE_WIDTH} ${PLATE_HEIGHT}`);
    return { id, title, words, svg: new XMLSerializer().serializeToString(svg) };
  } finally {
    root.unmount();
    host.remove();
  }
}
