import { CHECKPOINT_IDS, type CheckpointId } from '../../../reading/checkpointTable';
import { book, stillsOf, type KeptFilm as Kept, type LessonRecord } from '../../../record';
import { removeFilm } from '../../../record/film/filmEdits';
import { useDesk } from '../../../store';
import { sayEye } from '../../../words/film/film';
import { FILM_REMOVED, NO_STILL, sayKeptFrame, sayKeptReading } from '../../../words/film/kept';
import { navigation, useBook, useMayWrite } from '../../lessons/navigation';
import './kept.css';

/** What a lesson keeps of the player's film: both checkpoints with their marks, over a still where one was kept. */
export function KeptFilm({ lesson }: { lesson: LessonRecord }) {
  const records = useBook((state) => state.records);
  const mayWrite = useMayWrite();
  const { film } = lesson;
  if (!film) return null;
  const stills = stillsOf(records, lesson.id);
  const remove = (): void => {
    const { records: all } = book.state.getState();
    if (book.apply(removeFilm(all, lesson, book.birth().nowMs))) navigation.setState({ said: FILM_REMOVED });
  };
  const { eyeM, sd } = film.camera;
  return (
    <section className="kept-film" aria-label="The player’s film, as kept">
      <div className="kept-stills">
        {CHECKPOINT_IDS.map((id) => (
          <OfCheckpoint key={id} id={id} film={film} jpeg={stills.find(({ of }) => of === id)?.jpeg} />
        ))}
      </div>
      {stills.length === 0 && <p className="fine">{NO_STILL}</p>}
      <p className="fine">{sayEye(eyeM, sd.eyeM)}</p>
      {mayWrite && (
        <button type="button" className="plain" onClick={remove}>
          Remove film
        </button>
      )}
    </section>
  );
}

/** Marks that are joined where there is no picture behind them. */
const JOINED = [
  ['hands', 'clubHead'],
  ['trailShoulder', 'trailElbow'],
  ['trailElbow', 'hands'],
  ['leadShoulder', 'leadElbow'],
  ['leadElbow', 'hands'],
  ['trailShoulder', 'leadShoulder'],
  ['neck', 'midHip'],
] as const;

function OfCheckpoint({ id, film, jpeg }: { id: CheckpointId; film: Kept; jpeg: string | undefined }) {
  const units = useDesk(({ document }) => document.units);
  const reading = film.readings[id];
  const marked = film.sheet[id === 'leadArmParallel' ? 'arm' : 'shaft'];
  if (!reading || !marked) return null;
  const { w, h } = film;
  const { points, line } = marked;
  const unit = h / 240;
  return (
    <figure data-verdict={reading.verdict ?? 'none'}>
      <svg viewBox={`0 0 ${w} ${h}`} role="img" aria-label={sayKeptFrame(id, marked.frame, film.kind, film.frames)}>
        {jpeg === undefined ? (
          JOINED.map(([a, b]) => {
            const [from, to] = [points[a]?.at, points[b]?.at];
            return from && to && <Line key={`${a} ${b}`} from={from} to={to} kind="joined" />;
          })
        ) : (
          <image href={`data:image/jpeg;base64,${jpeg}`} width={w} height={h} preserveAspectRatio="none" />
        )}
        {line && <Line from={line[0]} to={line[1]} kind="halo" />}
        {line && <Line from={line[0]} to={line[1]} kind="shaft" />}
        {Object.entries(points).map(([name, { at }]) => (
          <circle key={name} cx={at[0]} cy={at[1]} r={3 * unit} />
        ))}
      </svg>
      <figcaption>
        <b>{sayKeptReading(reading, units)}</b>
        <span>{sayKeptFrame(id, marked.frame, film.kind, film.frames)}</span>
      </figcaption>
    </figure>
  );
}

const Line = ({ from, to, kind }: { from: readonly number[]; to: readonly number[]; kind: string }) => (
  <line data-kind={kind} x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />
);
