import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import type { SheetContent } from '../../../export/files/sheet';
import { COMPUTED, ILLUSTRATION, RULE_OF_THUMB, SCAN, SCAN_SHORT } from '../../../words';
import { sayDay, toDay } from '../../../words/book/days';
import { Swatch } from './Swatch';
import './sheet.css';

/** Days on which a drill can be ticked off. */
const DAYS = [
  ['mon', 'M'],
  ['tue', 'T'],
  ['wed', 'W'],
  ['thu', 'T'],
  ['fri', 'F'],
  ['sat', 'S'],
  ['sun', 'S'],
] as const;

/** The practice sheet as it will be printed: a page of its own over the desk, and the only thing on paper. */
export default function Sheet({ content, onClose }: { content: SheetContent; onClose: () => void }) {
  const page = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = page.current!;
    dialog.showModal();
    return () => dialog.close();
  }, []);
  return createPortal(
    <dialog ref={page} className="sheet" data-board="light" aria-labelledby="sheet-title" onClose={onClose}>
      <div className="sheet-acts">
        <button type="button" className="plain" onClick={() => window.print()}>
          Print
        </button>
        <button type="button" className="text-button" onClick={() => page.current?.close()}>
          Close
        </button>
      </div>
      <SheetPage {...content} />
    </dialog>,
    document.body,
  );
}

/** Width of the page on screen and height that is printed of A4 and of Letter alike, mm; narrower screens, px. */
const [PAGE_MM, FITTING_MM, NARROW] = [186, 250, 600];

function SheetPage({
  title,
  names,
  who,
  plates,
  readings,
  plan,
  feel,
  drills,
  words,
  next,
  cautions,
  code,
}: SheetContent) {
  const [today] = useState(() => sayDay(toDay(Date.now())));
  const article = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const { style, offsetWidth, offsetHeight } = article.current!;
    const fit = FITTING_MM / ((offsetHeight * PAGE_MM) / offsetWidth);
    // On a narrow screen the page is laid out otherwise: what is measured there says nothing of paper.
    const isPaper = offsetWidth > NARROW;
    if (isPaper && fit < 1) style.setProperty('--fit', fit.toFixed(3));
    else if (!isPaper) style.setProperty('--fit', '0.85');
  });
  const isFor = names.player === null ? 'Practice sheet' : `Practice sheet for ${names.player}`;
  return (
    <article className="sheet-page" ref={article}>
      <header className="sheet-head">
        <div>
          <p>{[isFor, who, today].join(', ')}</p>
          <h2 id="sheet-title">{title}</h2>
        </div>
        <figure className="sheet-code">
          <svg viewBox={`0 0 ${code.size} ${code.size}`} role="img" aria-label={SCAN}>
            <path d={code.path} fill="#000" />
          </svg>
          <figcaption>{SCAN_SHORT}</figcaption>
        </figure>
      </header>
      <div className="sheet-plates">
        {plates[0].plates.map(({ id }, row) =>
          plates.map(({ take, plates: pair }) => <Plate key={`${take} ${id}`} take={take} {...pair[row]} />),
        )}
      </div>
      <dl className="sheet-readings">
        {readings.map(({ where, now, after, band }) => (
          <div key={where}>
            <dt>{where}</dt>
            <dd>
              {band === '' ? (
                <>
                  Now: {now} <br />
                  After: {after}
                </>
              ) : (
                band
              )}
            </dd>
          </div>
        ))}
      </dl>
      <div className="sheet-columns">
        <section>
          <h3>What to change</h3>
          {plan.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </section>
        {feel !== '' && (
          <section className="sheet-feel">
            <h3>Feel</h3>
            <p>{feel}</p>
          </section>
        )}
      </div>
      {drills.length > 0 && <Drills drills={drills} />}
      {(words !== '' || next !== null) && (
        <div className="sheet-columns sheet-coach">
          {words !== '' && (
            <section>
              <h3>{names.coach === null ? 'From your coach' : `From ${names.coach}`}</h3>
              <p>{words}</p>
            </section>
          )}
          {next !== null && (
            <section className="sheet-next">
              <h3>Next lesson</h3>
              <p>{next}</p>
            </section>
          )}
        </div>
      )}
      <section className="sheet-care">
        <p>
          <b>Take care.</b> {cautions.join(' ')}
        </p>
      </section>
      <footer>
        {ILLUSTRATION}. Numbers: {COMPUTED}. Feels, drills and bands: {RULE_OF_THUMB}. Slantwise
      </footer>
    </article>
  );
}

/** One checkpoint of one swing: its verdict in words, and the drawing. */
function Plate({ take, title, words, svg }: { take: string } & SheetContent['plates'][number]['plates'][number]) {
  return (
    <figure>
      <figcaption>
        <span>
          {take}, {title.toLowerCase()}
        </span>
        <Swatch verdict={words.verdict} />
        <strong data-verdict={words.verdict}>{words.word}</strong>
        <em>{words.why}</em>
      </figcaption>
      {svg ? (
        // Our own drawing, serialised.
        <div className="sheet-drawing" dangerouslySetInnerHTML={{ __html: svg }} />
      ) : (
        <p>{words.sentence}</p>
      )}
    </figure>
  );
}

const Drills = ({ drills }: Pick<SheetContent, 'drills'>) => (
  <section className="sheet-drills" aria-label="Drills, a box for each day">
    {drills.map(({ name, how, often, figure }) => (
      <div key={name}>
        <div className="sheet-drill-head">
          {figure && (
            <svg viewBox={figure.box} aria-hidden="true">
              {figure.paths.map((d) => (
                <path key={d} d={d} />
              ))}
            </svg>
          )}
          <div>
            <h3>{name}</h3>
            <em>{often}</em>
          </div>
        </div>
        <p>{how}</p>
        <div className="sheet-boxes" aria-hidden="true">
          {DAYS.map(([key, day]) => (
            <span key={key}>
              {day}
              <i />
            </span>
          ))}
        </div>
      </div>
    ))}
  </section>
);
