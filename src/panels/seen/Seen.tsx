import { lazy, Suspense, useState } from 'react';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { DIALS } from '../../model/movements';
import type { Cause } from '../../solving/diagnosis/causes';
import type { Explanation } from '../../solving/diagnosis/match';
import { useDerived, useDesk, type Dialled } from '../../store';
import { ghostDialled } from '../../store/derive/swings';
import { useAsked } from '../../store/solver/solverClient';
import { setSeen, showGhost, takeDialled, toDialled } from '../../store/desk/whyActions';
import { ALIKE, NOTHING_MARKED, sayExplanation, sayFit, sayMatch } from '../../words/why/sightings';
import { sayWhatTells } from '../../words/why/family';
import { sayJudged } from '../../words/why/whatToChange';
import { Choice } from '../fields/Choice';
import { loadingChunk } from '../../store/react/chunkLoadError';
import { Lead, Source } from '../why/Lead';
import { NextStep } from '../lessons/NextStep';
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
        <Suspense fallback={<p>Fetching the film desk …</p>}>
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
        : 'Looking for what would look like this …';
  return (
    <div className="seen-drawer">
      <Lead text={text} />
      <SeenEntry seen={seen} onSee={setSeen} note={(id) => <SeenSaid id={id} />} />
      {isMarked && match && (
        <>
          <p className="seen-alike">{ALIKE}</p>
          <ol className="explanations" aria-label="Causes, the most likely first">
            {match.causes.map((cause) => (
              <One key={cause.dials.join('+')} cause={cause} />
            ))}
          </ol>
        </>
      )}
      <NextStep from="seen" />
      <Source>Marks: measured by you. Explanations: computed by the model, from the reference swing.</Source>
    </div>
  );
}

/** One cause: what moves, how well it fits, what tells it from the next, and the ways to look at it. */
function One({ cause: explanation }: { cause: Cause }) {
  const units = useDesk(({ document }) => document.units);
  const movements = useDesk(({ document }) => document.movements);
  const ghost = useDesk(ghostDialled);
  const bands = useDerived(({ exactBands }) => exactBands);
  const { title, text, spoken } = sayExplanation(explanation, units);
  // Explanations start from the reference, where the pelvis turns with the chest.
  const dialled = toDialled(explanation.movements, { ...movements, pelvis: null });
  const isShown = ghost !== null && same(ghost, dialled);
  const [arm, shaft] = CHECKPOINT_IDS.map((id) => sayJudged(id, explanation.readings[id], bands, units).text);
  return (
    <li className="explanation" data-status={explanation.status} data-usual={explanation.isUsual}>
      <p className="explanation-name">
        <b>{title}</b> <span aria-hidden="true">{text}</span>
        <span className="unseen">{spoken}</span>
        {explanation.plusMinus !== undefined && <small> {sayGive(explanation)}</small>}
      </p>
      <p className="fine">
        {sayFit(explanation)}; would read {arm}, {shaft}
      </p>
      {explanation.tell && (
        <p className="cause-tell">
          <b>To tell it from the next:</b> {sayWhatTells(explanation.tell, units).text}.
        </p>
      )}
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
    </li>
  );
}

/** "± 4°" of the one dial that moves. */
function sayGive({ dials, plusMinus }: Explanation): string {
  const dial = DIALS.find(({ id }) => id === dials[0])!;
  const edge = plusMinus! / dial.edgeUnit;
  const unit = {
    leadWristFlexion: '°',
    rotationRate: ' %',
    rotationDelay: ' ms',
    trailSideBend: '°',
    pelvisShift: ' cm',
  }[dial.id];
  return `± ${Math.max(1, Math.round(dial.id === 'rotationRate' ? edge * 100 : edge))}${unit}`;
}

const same = (a: Dialled, b: Dialled): boolean => JSON.stringify(a) === JSON.stringify(b);
