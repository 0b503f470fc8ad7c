import { lazy, Suspense, useState } from 'react';
import type { Cause } from '../../solving/diagnosis/causes';
import { useDerived, useDesk, type Dialled } from '../../store';
import { ghostDialled } from '../../store/derive/swings';
import { useAsked } from '../../store/solver/solverClient';
import { setSeen, showGhost, takeDialled, toDialled } from '../../store/desk/whyActions';
import {
  ALIKE,
  CAUSES,
  FROM_WHERE,
  LOOKING_FOR_CAUSES,
  NOTHING_MARKED,
  sayExplanation,
  sayMatch,
} from '../../words/why/sightings';
import { sayFetching } from '../../words/showing/errorMessages';
import { Choice } from '../fields/Choice';
import { loadingChunk } from '../../store/react/chunkLoadError';
import { Lead, Source } from '../why/Lead';
import { NextStep } from '../lessons/NextStep';
import { CauseItem } from './CauseItem';
import { SeenEntry } from './SeenEntry';
import { SeenSaid } from './SeenSaid';

const FilmPanel = lazy(loadingChunk(() => import('../film/FilmPanel')));

const WAYS = [
  { value: 'video', text: 'Video' },
  { value: 'photo', text: 'Photo' },
  { value: 'plates', text: 'On the plates' },
] as const;

/** "This is what I saw": off the player's own film, or by eye. */
export default function Seen() {
  const [way, setWay] = useState<(typeof WAYS)[number]['value']>('plates');
  return (
    <>
      <Choice label="Seen" value={way} options={WAYS} onChoose={setWay} />
      {way === 'plates' ? (
        <ByEye />
      ) : (
        <Suspense fallback={<p>{sayFetching('film desk')}</p>}>
          <FilmPanel key={way} kind={way} />
        </Suspense>
      )}
    </>
  );
}

/** Two marks with the coach's own give or take, and what would look like them. */
function ByEye() {
  const seen = useDesk(({ document }) => document.seen);
  const answer = useAsked((asked) => asked.answer);
  const isMarked = seen.leadArmParallel !== null || seen.shaftParallel !== null;
  const match = answer?.kind === 'match' ? answer : undefined;
  const text = !isMarked
    ? NOTHING_MARKED
    : answer?.kind === 'refused'
      ? answer.message
      : match
        ? sayMatch(match.causes)
        : LOOKING_FOR_CAUSES;
  return (
    <div className="seen-drawer">
      <Lead text={text} />
      <SeenEntry seen={seen} onSee={setSeen} note={(id) => <SeenSaid id={id} />} />
      {isMarked && match && (
        <>
          <p className="seen-alike">{ALIKE}</p>
          <ol className="explanations" aria-label={CAUSES}>
            {match.causes.map((cause) => (
              <One key={cause.dials.join('+')} cause={cause} />
            ))}
          </ol>
        </>
      )}
      <NextStep from="seen" />
      <Source>{FROM_WHERE}</Source>
    </div>
  );
}

/** One cause with the ways to look at it. */
function One({ cause }: { cause: Cause }) {
  const movements = useDesk(({ document }) => document.movements);
  const ghost = useDesk(ghostDialled);
  const units = useDesk(({ document }) => document.units);
  const bands = useDerived(({ exactBands }) => exactBands);
  const { title } = sayExplanation(cause, units);
  // Explanations start from the reference, where the pelvis turns with the chest.
  const dialled = toDialled(cause.movements, { ...movements, pelvis: null });
  const isShown = ghost !== null && same(ghost, dialled);
  return (
    <CauseItem cause={cause} bands={bands}>
      <div className="plan-acts">
        <button
          type="button"
          className="plain"
          aria-pressed={isShown}
          onClick={() => showGhost(isShown ? null : dialled)}
        >
          Show as comparison<span className="unseen">: {title}</span>
        </button>
        <button type="button" className="plain" onClick={() => takeDialled(`Seen: ${title}`, dialled)}>
          Use this swing<span className="unseen">: {title}</span>
        </button>
      </div>
    </CauseItem>
  );
}

const same = (a: Dialled, b: Dialled): boolean => JSON.stringify(a) === JSON.stringify(b);
