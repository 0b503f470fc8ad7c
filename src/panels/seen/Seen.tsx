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
import { ghostDialled } from '../../store/derive/swings';
import { useAsked } from '../../store/solver/solverClient';
import { CAMERA_FIELDS } from '../../store/document/cameras';
import { setSeen, showGhost, takeDialled, toDialled } from '../../store/desk/whyActions';
import { COMPUTED, EXAGGERATED, PLATE_WORDS, sayFilmed } from '../../words';
import { ALIKE, NOTHING_MARKED, sayExplanation, sayMatch, sayMisfit } from '../../words/why/sightings';
import { sayVerdictShare, sayJudged } from '../../words/why/whatToChange';
import { Lead, Source } from '../why/Lead';
import { NextStep } from '../lessons/NextStep';
import { SeenEntry } from './SeenEntry';

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
      <SeenEntry seen={seen} onSee={setSeen} note={(id) => <Said id={id} />} />
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
      <NextStep from="seen" />
      <Source>Marks: measured by you. Explanations: computed by the model, from the reference swing.</Source>
    </div>
  );
}

/** A camera that nobody has placed is not known: nothing can be said about its film. */
const isPlaced = (place: CameraPlace): boolean =>
  CAMERA_FIELDS.some((field) => place[field] !== USUAL_CAMERAS.downTheLine[field]);

/** What is said of one mark: its side of the band and how surely, and what the camera does to it. */
function Said({ id }: { id: CheckpointId }) {
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
  return (
    <>
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
    </>
  );
}

/** One explanation: what moves, how well it fits, and the ways to look at it. */
function One({ explanation }: { explanation: Explanation }) {
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
