import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { useMemo, useRef } from 'react';
import { heelLiftAt } from '../../figure/stance';
import { isReached, readAt, type Checkpoint, type CheckpointId } from '../../reading/checkpoints';
import { useDerived, useDesk } from '../../store';
import { clockTime, type Compared, type Pair } from '../../store/derive/compare';
import { comparedOf } from '../../store/desk/compared';
import { CHECKPOINT_NAMES, COMPUTED, sayCheckpoint, type CheckpointWords } from '../../words';
import { sayOffCheckpoint } from '../../words/why/comparing';
import { plateFigureOf } from '../figure/figurePainter';
import { Drawing } from '../figure/Drawing';
import { SCALE } from './frame';
import { annotatePlate, fitPicture, plateDrawing, type Fitting, type PlateOf } from './plateDrawing';
import { useSettled } from '../useSettled';
import { useSize } from '../useSize';
import './pairPlates.css';

/** Both plates of two compared swings, side by side at one scale. Still pictures: they are read, not pulled. */
export default function PairPlates() {
  const pair = useDesk(comparedOf);
  if ('problem' in pair.solid || 'problem' in pair.ghost) return null;
  return (
    <div className="pair-plates">
      {CHECKPOINT_IDS.map((id) => (
        <PairAt key={id} id={id} {...pair} />
      ))}
    </div>
  );
}

type Role = 'solid' | 'ghost';
interface Side {
  readonly role: Role;
  readonly swing: Compared;
  readonly checkpoint: Checkpoint;
  readonly words: CheckpointWords;
  /** By the clock a ghost is seldom at its checkpoint: how far off it is then, in words. */
  readonly off: string | undefined;
}

function PairAt({ id, solid, ghost }: Pair & { id: CheckpointId }) {
  const bands = useDerived((derived) => derived.exactBands);
  const units = useDesk(({ document }) => document.units);
  const link = useDesk(({ session }) => session.why.link);
  const isBusy = useDesk(({ gesture }) => gesture !== null);
  const picture = useRef<HTMLDivElement>(null);
  const size = useSize(picture);
  const finish = useSettled(solid, isBusy) ? 'engraved' : 'drawn';
  const fitting = useMemo(() => fitPicture(id, size), [id, size]);
  const sides = useMemo(() => {
    if ('problem' in solid || 'problem' in ghost) return [];
    return [sideOf('solid', solid), sideOf('ghost', ghost)];

    function sideOf(role: Role, swing: Compared): Side {
      const own = swing.checkpoints[id];
      const at = role === 'ghost' && link === 'clock' ? atSameInstant(id, solid as Compared, swing) : own;
      const words = sayCheckpoint(id, at, bands, units);
      const off = at !== own && isReached(at) && isReached(own) ? (at.t - own.t) * swing.swing.tempo : undefined;
      return { role, swing, checkpoint: at, words, off: off === undefined ? undefined : sayOffCheckpoint(id, off) };
    }
  }, [id, solid, ghost, link, bands, units]);
  const drawings = useMemo(() => {
    const of = ({ swing: { ground, swing }, checkpoint }: Side): PlateOf => ({
      id,
      plate: plateFigureOf(ground.body, ground.club),
      checkpoint,
      stance: {
        ballPoint: swing.reference.ballPoint,
        heelLift: isReached(checkpoint) ? heelLiftAt(swing, checkpoint.t) : 0,
      },
      bands,
      units,
      handed: ground.player.handed,
      reference: undefined,
      ghost: undefined,
      letters: fitting.letters,
      finish,
    });
    // Where one of the two does not fit at the plates' own scale, both take the smaller.
    const most = Math.min(SCALE, ...sides.map((side) => annotatePlate(of(side), side.words)?.frame.scale ?? SCALE));
    return sides.map((side) => plateDrawing({ ...of(side), most }, side.words));
  }, [id, sides, bands, units, fitting, finish]);
  const { title } = CHECKPOINT_NAMES[id];
  return (
    <section className="pair-at" aria-label={`${title}, side by side`}>
      <h3>{title}</h3>
      <div className="pair-sheet">
        {sides.map((side, i) => (
          <figure
            key={side.role}
            className="pair-plate"
            data-role={side.role}
            data-verdict={side.off === undefined ? side.words.verdict : undefined}
          >
            <figcaption>
              <i className="pair-line" aria-hidden="true" />
              {side.swing.of.name}
            </figcaption>
            <div className="pair-picture" ref={i === 0 ? picture : undefined}>
              <Still side={side} title={title} drawing={drawings[i]} fitting={fitting} />
            </div>
            <p className="pair-verdict">
              <strong>{side.off ?? side.words.word}</strong> <span>{side.words.shortWhy}</span>
            </p>
          </figure>
        ))}
      </div>
    </section>
  );
}

interface StillProps {
  readonly side: Side;
  readonly title: string;
  readonly drawing: ReturnType<typeof plateDrawing>;
  readonly fitting: Fitting;
}

function Still({ side, title, drawing, fitting }: StillProps) {
  if (!drawing) return <p className="pair-reason">{side.words.sentence}</p>;
  const label = `${side.swing.of.name}: ${title}, seen down the line. ${side.off ?? ''} ${side.words.spoken} ${COMPUTED}.`;
  return <Drawing drawing={drawing} letters={fitting.letters} label={label} />;
}

/** The ghost at the instant of the clock at which the solid swing passes this checkpoint. */
function atSameInstant(id: CheckpointId, solid: Compared, ghost: Compared): Checkpoint {
  const checkpoint = solid.checkpoints[id];
  if (!isReached(checkpoint)) return ghost.checkpoints[id];
  return readAt(ghost.swing, clockTime(checkpoint.t, solid.swing, ghost.swing));
}
