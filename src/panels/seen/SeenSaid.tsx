import { judge } from '../../reading/verdicts';
import { findVerdictShare } from '../../solving/diagnosis/verdictShare';
import { useDerived, useDesk, type CheckpointId } from '../../store';
import { honestSeenOf } from '../../store/desk/desk';
import { PLATE_WORDS } from '../../words';
import { sayHonest } from '../../words/why/sightings';
import { sayVerdictShare, sayJudged } from '../../words/why/whatToChange';

/** What is said of one mark on the desk: what the camera made of it, its side of the band, and how surely. */
export function SeenSaid({ id }: { id: CheckpointId }) {
  const sighting = useDesk(({ document }) => document.seen[id]);
  const honest = useDesk((state) => honestSeenOf(state)[id]);
  const units = useDesk(({ document }) => document.units);
  const bands = useDerived(({ exactBands }) => exactBands);
  if (!sighting || !honest) return null;
  const metres = honest.cm / 100;
  const { share } = findVerdictShare({ value: metres, plusMinus: honest.plusMinusCm / 100 }, bands[id]);
  return (
    <>
      {honest.isCorrected && <p className="seen-honest">{sayHonest(id, sighting, honest, units)}</p>}
      <p className="seen-hold">
        {!honest.isCorrected && `${sayJudged(id, metres, bands, units).text}. `}
        {sayVerdictShare(id, PLATE_WORDS[judge(metres, bands[id])], share)}
      </p>
    </>
  );
}
