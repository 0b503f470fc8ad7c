import { findMissing } from '../../film/sheet/draft';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { DIALS, type Movements } from '../../model/movements';
import { useDesk, type CheckpointId } from '../../store';
import { showGhost, takeDialled, toDialled } from '../../store/desk/whyActions';
import { CHECKPOINT_NAMES } from '../../words';
import { sayByEye, sayFilmReading, sayMissing, sayNoFilm, sayToldApart, UNTESTED } from '../../words/film/film';
import { sayExplanation } from '../../words/why/sightings';
import type { SentAnswer } from '../../video/film.worker';
import { choose } from './over/outlines';
import { toDraft } from './filmMarks';
import { useFilm } from './filmStore';
import { KeepFilm } from './kept/KeepFilm';
import { Over } from './over/Over';

/** What the marks tell: both readings, what is still missing, and what would look like this. */
export function FilmAnswers() {
  const answer = useFilm((film) => film.answer);
  const sheet = useFilm((film) => film.sheet);
  const notes = useFilm((film) => film.notes);
  const video = useFilm((film) => film.video);
  if (!video) return null;
  const missing = findMissing(toDraft(sheet, notes, video.info));
  const read = answer && 'camera' in answer ? answer : undefined;
  return (
    <div className="film-answers">
      {answer && 'missing' in answer && (
        <p className="film-problem" role="alert">
          {sayNoFilm(answer)}
        </p>
      )}
      <div className="film-readings">
        {CHECKPOINT_IDS.map((id) => (
          <Reading key={id} id={id} read={read} />
        ))}
      </div>
      {read && CHECKPOINT_IDS.some((id) => read[id]) && <KeepFilm />}
      {missing.length > 0 && (
        <section aria-labelledby="film-missing">
          <h3 id="film-missing">Still to mark</h3>
          <ul className="film-missing">
            {missing.map((one) => (
              <li key={`${one.at} ${one.what}`}>{sayMissing(one)}</li>
            ))}
          </ul>
        </section>
      )}
      {read && <Over read={read} />}
      {read && read.explanations.length > 0 && <Causes read={read} />}
      <p className="fine">{UNTESTED}</p>
    </div>
  );
}

function Reading({ id, read }: { id: CheckpointId; read: SentAnswer | undefined }) {
  const units = useDesk(({ document }) => document.units);
  const reading = read?.[id];
  const said = reading && sayFilmReading(id, reading, units);
  const byEye = sayByEye(id, read?.byEye[id], reading);
  return (
    <section className="film-reading" data-verdict={reading?.verdict ?? 'none'} aria-label={CHECKPOINT_NAMES[id].title}>
      <i aria-hidden="true" />
      <h3>{CHECKPOINT_NAMES[id].title}</h3>
      {said && reading ? (
        <>
          <p className="film-verdict">
            {said.word} <b>{said.number}</b> <small>{said.margin}</small>
          </p>
          {said.why !== undefined && <p className="fine">{said.why}</p>}
          {byEye !== undefined && <p className="fine">{byEye}</p>}
        </>
      ) : (
        <p className="film-verdict">Not marked</p>
      )}
    </section>
  );
}

/** Movements as the sliders can stand. */
const onSteps = (movements: Movements): Movements => ({
  ...movements,
  ...Object.fromEntries(DIALS.map(({ id, step }) => [id, Math.round(movements[id] / step) * step])),
});

function Causes({ read }: { read: SentAnswer }) {
  const units = useDesk(({ document }) => document.units);
  const movements = useDesk(({ document }) => document.movements);
  const chosen = useFilm((film) => film.chosen);
  const hasBody = useFilm(({ sheet }) => sheet.arm?.points['leadShoulder'] !== undefined);
  const apart = sayToldApart(
    read.explanations.map(({ share }) => share),
    hasBody,
  );
  const best = read.explanations[chosen] ?? read.explanations[0];
  const dialled = toDialled(onSteps(best.movements), { ...movements, pelvis: null });
  const name = (explanation: SentAnswer['explanations'][number]) =>
    sayExplanation(
      {
        ...explanation,
        movements: onSteps(explanation.movements),
        dials: DIALS.filter(({ group }) => explanation.uses.includes(group)).map(({ id }) => id),
      },
      units,
    );
  return (
    <section aria-labelledby="film-causes">
      <h3 id="film-causes">What could look like this</h3>
      {apart !== undefined && <p>{apart}</p>}
      <ol className="film-causes">
        {read.explanations.map((explanation, i) => {
          const { title, text, spoken } = name(explanation);
          return (
            <li key={explanation.uses.join()}>
              <button type="button" aria-pressed={i === chosen} onClick={() => choose(i)}>
                <b>{title}</b> <span aria-hidden="true">{text}</span>
                <span className="unseen">{spoken}</span>
                <small> {Math.round(100 * explanation.share)} of 100</small>
              </button>
            </li>
          );
        })}
      </ol>
      <div className="plan-acts">
        <button type="button" className="plain" onClick={() => showGhost(dialled)}>
          Show as comparison
        </button>
        <button type="button" className="plain" onClick={() => takeDialled(`Film: ${name(best).title}`, dialled)}>
          Use this swing
        </button>
      </div>
    </section>
  );
}
