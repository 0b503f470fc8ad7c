import { useEffect, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import type { SheetContent } from '../../../export/files/sheet';
import { desk } from '../../../store';
import { COMPUTED, ILLUSTRATION, RULE_OF_THUMB, SCAN } from '../../../words';
import { sayWho } from '../../../words/showing/who';
import { Swatch } from './Swatch';
import { useShowing } from '../task/useShowing';
import './sheet.css';

/** Days on which a drill can be ticked off. */
const DAYS = [1, 2, 3, 4, 5, 6, 7] as const;

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

function SheetPage({ plates, readings, plan, feels, drills, cautions, code }: SheetContent) {
  const name = useShowing(({ wish }) => wish.name);
  const [today] = useState(() => new Date().toLocaleDateString(undefined, { dateStyle: 'long' }));
  return (
    <article className="sheet-page">
      <header className="sheet-head">
        <div>
          <h2 id="sheet-title">Practice sheet</h2>
          <p>{[name, sayWho(desk.getState().document), today].filter(Boolean).join(', ')}</p>
        </div>
        <figure className="sheet-code">
          <svg viewBox={`0 0 ${code.size} ${code.size}`} role="img" aria-label={SCAN}>
            <path d={code.path} fill="#000" />
          </svg>
          <figcaption>{SCAN}</figcaption>
        </figure>
      </header>
      <div className="sheet-plates">
        {plates.map(({ take, dialled, plates: pair }) => (
          <section key={take}>
            <h3>
              {take} <small>{dialled}</small>
            </h3>
            <div className="sheet-pair">
              {pair.map(({ id, title, words, svg }) => (
                <figure key={id}>
                  {svg ? (
                    // Our own drawing, serialised.
                    <div className="sheet-drawing" dangerouslySetInnerHTML={{ __html: svg }} />
                  ) : (
                    <p>{words.sentence}</p>
                  )}
                  <figcaption>
                    <span>{title}</span>
                    <Swatch verdict={words.verdict} />
                    <strong>{words.word}</strong>
                    <span>{words.shortWhy}</span>
                  </figcaption>
                </figure>
              ))}
            </div>
          </section>
        ))}
      </div>
      <table className="sheet-readings">
        <thead>
          <tr>
            <th scope="col">Reading ({COMPUTED})</th>
            <th scope="col">{plates[0].take}</th>
            <th scope="col">{plates[1].take}</th>
            <th scope="col">Band</th>
          </tr>
        </thead>
        <tbody>
          {readings.map(({ where, now, after, band }) => (
            <tr key={where}>
              <th scope="row">{where}</th>
              <td>{now}</td>
              <td>{after}</td>
              <td>{band}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="sheet-columns">
        <section>
          <h3>The plan</h3>
          <ul>
            {plan.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
        {feels.length > 0 && (
          <section>
            <h3>What to feel</h3>
            <ul>
              {feels.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </section>
        )}
      </div>
      {drills.length > 0 && (
        <section className="sheet-drills">
          <h3>
            Drills <small>{RULE_OF_THUMB}; tick a box for each day</small>
          </h3>
          <ul>
            {drills.map(({ name: drill, how, often }) => (
              <li key={drill}>
                <span className="sheet-boxes" aria-hidden="true">
                  {DAYS.map((day) => (
                    <i key={day} />
                  ))}
                </span>
                <p>
                  <strong>{drill}.</strong> {how.join(' ')} <em>{often}.</em>
                </p>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section className="sheet-care">
        <h3>Take care</h3>
        <p>{cautions.join(' ')}</p>
      </section>
      <footer>{ILLUSTRATION}</footer>
    </article>
  );
}
