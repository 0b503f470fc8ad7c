import { useState } from 'react';
import { useDesk } from '../../../store';
import type { SentAnswer } from '../../../video/film.worker';
import { GRID_QUESTION, GRID_WRONG, sayCamera, sayWorst } from '../../../words/film/film';
import { BURN_IN, OVER, sayImpact, sayMaking, sayTarget } from '../../../words/film/over';
import { setNotes, setView } from '../filmActions';
import { useFilm } from '../filmStore';

/** What is drawn over the film, the question whether it lies right, and the ways to take it along. */
export function Over({ read }: { read: SentAnswer }) {
  const view = useFilm((film) => film.view);
  const hasPlan = useDesk(({ document }) => document.plan !== null);
  const worst = sayWorst(read.worst);
  return (
    <section className="film-over" aria-labelledby="film-over">
      <h3 id="film-over">Over the film</h3>
      <div className="film-toggles">
        {(['before', 'target', 'grid', 'marks'] as const).map((what) => (
          <button
            key={what}
            type="button"
            className="plain"
            aria-pressed={view[what]}
            onClick={() => setView({ [what]: !view[what] })}
          >
            {OVER[what]}
          </button>
        ))}
      </div>
      {view.target && <p className="fine">{sayTarget(hasPlan)}</p>}
      <label className="film-fade">
        Figure
        <input
          type="range"
          aria-label="From figure to film"
          min={0}
          max={1}
          step={0.05}
          value={view.film}
          onChange={({ currentTarget }) => setView({ film: Number(currentTarget.value) })}
        />
        Film
      </label>
      {worst !== undefined && <output>{worst}</output>}
      <p className="fine">{sayCamera(read.camera)}</p>
      <p className="fine">
        {GRID_QUESTION} {GRID_WRONG}
      </p>
      <Impact />
      <Take canClip={read.leadArmParallel !== undefined && read.shaftParallel !== undefined} />
    </section>
  );
}

/** Where impact is, for the figure to be drawn on to it. */
function Impact() {
  const impact = useFilm(({ notes }) => notes.impact);
  const frame = useFilm((film) => film.frame);
  const shaft = useFilm(({ sheet }) => sheet.shaft?.frame);
  const isFilm = useFilm(({ video }) => video?.info.kind === 'video');
  const isAfter = shaft !== undefined && frame > shaft + 1;
  if (!isFilm || (impact === undefined && !isAfter)) return null;
  return (
    <div className="film-take">
      {impact === undefined ? (
        <button type="button" className="plain" onClick={() => setNotes({ impact: frame })}>
          {OVER.impact}
        </button>
      ) : (
        <>
          <p className="fine">{sayImpact(impact)}</p>
          <button type="button" className="plain" onClick={() => setNotes({ impact: undefined })}>
            {OVER.clearImpact}
          </button>
        </>
      )}
    </div>
  );
}

/** A still of this frame, or a clip of the swing. The film itself leaves the device only where that is asked for. */
function Take({ canClip }: { canClip: boolean }) {
  const [isBurntIn, setBurntIn] = useState(false);
  const making = useFilm((film) => film.making);
  const made = useFilm((film) => film.made);
  const isFilm = useFilm(({ video }) => video?.info.kind === 'video');
  const start = (what: 'still' | 'clip'): void =>
    void import('./makeOver').then(({ makeClip, makeStill }) => (what === 'still' ? makeStill : makeClip)(isBurntIn));
  return (
    <div className="film-take">
      <label className="check">
        <input
          type="checkbox"
          checked={isBurntIn}
          onChange={({ currentTarget }) => setBurntIn(currentTarget.checked)}
        />
        {OVER.burnIn}
      </label>
      <p className="fine">{BURN_IN}</p>
      {making ? (
        <>
          <output>{sayMaking(making.what, making.share)}</output>
          <button
            type="button"
            className="plain"
            onClick={() => void import('./makeOver').then(({ stopMaking }) => stopMaking())}
          >
            {OVER.stop}
          </button>
        </>
      ) : (
        <>
          <button type="button" className="plain" onClick={() => start('still')}>
            {OVER.still}
          </button>
          {isFilm && canClip && (
            <button type="button" className="plain" onClick={() => start('clip')}>
              {OVER.clip}
            </button>
          )}
          {made !== undefined && <output className="fine">{made}</output>}
        </>
      )}
    </div>
  );
}
