import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { DIALS } from '../../model/movements';
import type { Explanation } from '../../solving/diagnosis/match';
import { judge } from '../../reading/verdicts';
import {
  throughCameras,
  USUAL_CAMERAS,
  useDerived,
  useDesk,
  type CameraPlace,
  type CheckpointId,
  type Dialled,
} from '../../store';
import { useAsked } from '../../store/solver/solverClient';
import { CAMERA_FIELDS } from '../../store/document/cameras';
import { SEEN_LIMITS, USUAL_GIVE_CM, type Sighting } from '../../store/document/sighting';
import { setSeen, showGhost, takeDialled, toDialled } from '../../store/desk/whyActions';
import { CHECKPOINT_NAMES, COMPUTED, EXAGGERATED, LENGTHS, PLATE_WORDS, sayFilmed } from '../../words';
import { ALIKE, NOTHING_MARKED, sayExplanation, sayMatch, sayMisfit } from '../../words/why/sightings';
import { sayVerdictShare, sayJudged } from '../../words/why/whatToChange';
import { outside } from '../../words/numbers/ranges';
import { NumberField } from '../fields/NumberField';
import { Lead, Source } from '../why/Lead';

/** "This is what I saw": two marks with the coach's own give or take, and what would look like them. */
export default function Seen() {
  const seen = useDesk(({ document }) => document.seen);
  const answer = useAsked((asked) => asked.answer);
  const isMarked = seen.leadArmParallel !== null || seen.shaftParallel !== null;
  const match = answer?.kind === 'match' ? answer : undefined;
  const text = !isMarked
    ? NOTHING_MARKED
    : answer?.kind === 'refused'
      ? answer.message
      : match
        ? sayMatch(match.explanations)
        : 'Looking for what would look like this …';
  return (
    <div className="seen-drawer">
      <Lead text={text} />
      <Mark id="leadArmParallel" />
      <Mark id="shaftParallel" />
      {isMarked && match && (
        <>
          <p className="seen-alike">{ALIKE}</p>
          <ol className="explanations" aria-label="Explanations, the most likely first">
            {match.explanations.map((explanation) => (
              <One key={explanation.dials.join('+')} explanation={explanation} />
            ))}
          </ol>
        </>
      )}
      <Source>Marks: measured by you. Explanations: computed by the model, from the reference swing.</Source>
    </div>
  );
}

const ENDS: Readonly<Record<CheckpointId, string>> = {
  leadArmParallel: 'Shaft line, below is minus',
  shaftParallel: 'Head, behind is minus',
};

/** A camera that nobody has placed is not known: nothing can be said about its film. */
const isPlaced = (place: CameraPlace): boolean =>
  CAMERA_FIELDS.some((field) => place[field] !== USUAL_CAMERAS.downTheLine[field]);

/** One mark, typed: an empty field takes the mark away. */
function Mark({ id }: { id: CheckpointId }) {
  const sighting = useDesk(({ document }) => document.seen[id]);
  const units = useDesk(({ document }) => document.units);
  const bands = useDerived(({ exactBands }) => exactBands);
  const found = useAsked(({ answer }) => (answer?.kind === 'match' ? answer.holds[id] : undefined));
  const exaggerated = useDerived((derived) => derived.exaggerated);
  const filmed = useDesk((state) =>
    sighting && isPlaced(state.document.camera.downTheLine)
      ? sayFilmed(id, throughCameras(state).downTheLine[id].judged, units)
      : undefined,
  );
  const { metres, symbol, decimals } = LENGTHS[units.length];
  const cmPerUnit = metres * 100;
  const take = (part: keyof Sighting, name: string) => (typed: number | undefined) => {
    if (typed === undefined) {
      setSeen(id, null);
      return undefined;
    }
    const { min, max } = SEEN_LIMITS[part];
    const problem = outside(name, typed, min / cmPerUnit, max / cmPerUnit, symbol, 1);
    if (problem === undefined) {
      setSeen(id, { cm: 0, plusMinusCm: USUAL_GIVE_CM, ...sighting, [part]: typed * cmPerUnit });
    }
    return problem;
  };
  return (
    <section className="mark-typed" aria-labelledby={`seen-${id}`}>
      <h3 id={`seen-${id}`}>{CHECKPOINT_NAMES[id].title}</h3>
      <div className="fields">
        <NumberField
          label={ENDS[id]}
          unit={symbol}
          decimals={decimals + 1}
          optional
          placeholder="not marked"
          value={sighting ? sighting.cm / cmPerUnit : undefined}
          onTake={take('cm', ENDS[id].split(',')[0])}
        />
        {sighting && (
          <NumberField
            label="Margin"
            unit={`± ${symbol}`}
            decimals={decimals + 1}
            value={sighting.plusMinusCm / cmPerUnit}
            onTake={take('plusMinusCm', 'Margin')}
          />
        )}
        {sighting && (
          <button type="button" className="plain mark-forget" onClick={() => setSeen(id, null)}>
            Clear
          </button>
        )}
      </div>
      {sighting && found && (
        <p className="seen-hold">
          {sayJudged(id, sighting.cm / 100, bands, units).text}.{' '}
          {sayVerdictShare(id, PLATE_WORDS[judge(sighting.cm / 100, bands[id])], found.share)}
        </p>
      )}
      {filmed !== undefined && (
        <p className="fine">
          {filmed} ({COMPUTED}
          {exaggerated && `, ${EXAGGERATED}`})
        </p>
      )}
    </section>
  );
}

/** One explanation: what moves, how well it fits, and the ways to look at it. */
function One({ explanation }: { explanation: Explanation }) {
  const units = useDesk(({ document }) => document.units);
  const movements = useDesk(({ document }) => document.movements);
  const ghost = useDesk(({ session }) => session.ghost);
  const bands = useDerived(({ exactBands }) => exactBands);
  const { title, text, spoken } = sayExplanation(explanation, units);
  // Explanations start from the reference, where the pelvis turns with the chest.
  const dialled = toDialled(explanation.movements, { ...movements, pelvis: null });
  const isShown = ghost !== null && same(ghost, dialled);
  const [arm, shaft] = CHECKPOINT_IDS.map((id) => sayJudged(id, explanation.readings[id], bands, units).text);
  return (
    <li className="explanation" data-status={explanation.status}>
      <p className="explanation-name">
        <b>{title}</b> <span aria-hidden="true">{text}</span>
        <span className="unseen">{spoken}</span>
        {explanation.plusMinus !== undefined && <small> {sayGive(explanation)}</small>}
      </p>
      <p className="fine">
        {sayMisfit(explanation.misfit)}; would read {arm}, {shaft}
      </p>
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
