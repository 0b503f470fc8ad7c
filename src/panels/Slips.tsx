import './ball.css';
import { dialValue, dismissNotice, EDGE_DIALS, releaseBench, useDerived, useDesk, type DeskState } from '../store';
import { COMPUTED, EXAGGERATED, sayFace, sayNoShot, sayPath, sayShape } from '../words';
import { dialWords } from './dialWords';
import { GuessSlip, TrialSlip } from './why/WhySlips';

/** The first dial past its usual range, in a sentence: one hint at a time. */
function cautionOf({ document: { movements, units } }: DeskState): string | undefined {
  for (const { id } of EDGE_DIALS) {
    if ((id === 'pelvisRate' || id === 'pelvisDelay') && !movements.pelvis) continue;
    const { past, label } = dialWords(id, dialValue(movements, id), units);
    if (past !== undefined) return `${label}: ${past.charAt(0).toLowerCase()}${past.slice(1)}`;
  }
  return undefined;
}

/** What the swing brings to the ball and what the ball does, always in sight. */
function Essentials() {
  const path = useDerived(({ delivery }) => ('missing' in delivery ? undefined : sayPath(delivery.path).text));
  const face = useDerived(({ delivery }) => ('missing' in delivery ? undefined : sayFace(delivery.face).text));
  const name = useDerived(({ shot, player }) =>
    'missing' in shot ? sayNoShot(shot) : sayShape(shot, player.handed).name,
  );
  const how = useDerived(({ shot, player }) => ('missing' in shot ? '' : `: ${sayShape(shot, player.handed).how}.`));
  const exaggerated = useDesk(({ session }) => session.exaggerate);
  return (
    <p className="path-readout">
      {path !== undefined && (
        <>
          <span>Path</span> <b>{path}</b>
          <br />
          <span>Face</span> <b>{face}</b>
          <br />
        </>
      )}
      <em>
        {name}
        {how !== '' && <span className="is-how">{how}</span>}
      </em>
      <small>
        {COMPUTED}
        {exaggerated && <>, {EXAGGERATED}</>}
      </small>
    </p>
  );
}

/** Slips of paper pinned on the stage: what holds for the whole picture right now. */
export function Slips() {
  const notice = useDesk((state) => state.notice);
  const caution = useDesk(cautionOf);
  const bench = useDesk(({ session }) => session.bench !== null);
  const exaggerated = useDesk(({ session }) => session.exaggerate);
  return (
    <div className="slips">
      <Essentials />
      <TrialSlip />
      <GuessSlip />
      {notice !== null && (
        <div className="slip" role="alert">
          <p>{notice}</p>
          <button type="button" className="text-button" onClick={dismissNotice}>
            Understood
          </button>
        </div>
      )}
      {bench && (
        <div className="slip">
          <p>Bench pose: joints set by hand.</p>
          <button type="button" className="text-button" onClick={releaseBench}>
            Release
          </button>
        </div>
      )}
      {exaggerated && <p className="slip slip-mark">{EXAGGERATED}</p>}
      {caution !== undefined && <p className="slip slip-caution">{caution}</p>}
    </div>
  );
}
