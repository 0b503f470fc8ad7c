import { lazy, Suspense, useState } from 'react';
import type { SheetContent } from '../../../export/files/sheet';
import { sayError } from '../../../words/showing/errorMessages';
import { loadingChunk } from '../../../store/react/chunkLoadError';
import { OpenFile } from '../OpenFile';
import { makeModel, makeNumbers, makePlates, makeStill, makeTable } from '../task/makers';
import { useShowing } from '../task/useShowing';
import { showing, subjectNow } from '../task/showingStore';
import { FILES_CARRY, SHEET_HOLDS } from '../../../words/showing/forms';

const Sheet = lazy(loadingChunk(() => import('./Sheet')));

/** Still, sheet, model file and table. */
export function PaperForm() {
  const isBusy = useShowing(({ progress }) => progress !== null);
  const [sheet, setSheet] = useState<SheetContent>();
  const lay = async (): Promise<void> => {
    showing.setState({ excuse: null });
    try {
      const [{ layOutSheet }, subject] = await Promise.all([import('../../../export/files/sheet'), subjectNow()]);
      setSheet(layOutSheet(subject, location.href));
    } catch (error) {
      showing.setState({ excuse: sayError(error, false) });
    }
  };
  const acts: readonly (readonly [string, () => unknown])[] = [
    ['Numbers on the body, 4:5', () => makeNumbers('4:5')],
    ['Numbers on the body, 16:9', () => makeNumbers('16:9')],
    ['Still of the stage', () => makeStill(1)],
    ['Still, twice as large', () => makeStill(2)],
    ['Still, four times', () => makeStill(4)],
    ['Plates as SVG', makePlates],
    ['3D model', makeModel],
    ['Table', makeTable],
  ];
  return (
    <>
      <section aria-labelledby="showing-sheet">
        <h3 id="showing-sheet">Practice sheet</h3>
        <p className="fine">{SHEET_HOLDS}</p>
        <p className="showing-acts">
          <button type="button" className="plain" onClick={() => void lay()}>
            Practice sheet
          </button>
        </p>
        {sheet && (
          <Suspense>
            <Sheet content={sheet} onClose={() => setSheet(undefined)} />
          </Suspense>
        )}
      </section>
      <section aria-labelledby="showing-paper">
        <h3 id="showing-paper">Pictures and data</h3>
        <p className="showing-acts">
          {acts.map(([label, act]) => (
            <button
              key={label}
              type="button"
              className="plain"
              aria-disabled={isBusy}
              onClick={() => isBusy || void act()}
            >
              {label}
            </button>
          ))}
        </p>
        <p className="fine">{FILES_CARRY}</p>
        <p className="showing-acts">
          <OpenFile />
        </p>
      </section>
    </>
  );
}
