import { judge, type Bands } from '../../reading/verdicts';
import { findVerdictShare } from '../../solving/diagnosis/verdictShare';
import { useDerived, useDesk, type CheckpointId } from '../../store';
import type { HonestSighting } from '../../store/derive/honestSeen';
import { honestSeenOf } from '../../store/desk/desk';
import type { Sighting } from '../../store/document/sighting';
import { PLATE_WORDS } from '../../words';
import { sayHonest } from '../../words/why/sightings';
import { sayVerdictShare, sayJudged } from '../../words/why/whatToChange';

/** What is said of one mark on the desk. */
export function SeenSaid({ id }: { id: CheckpointId }) {
  const sighting = useDesk(({ document }) => document.seen[id]);
  const honest = useDesk((state) => honestSeenOf(state)[id]);
  const bands = useDerived(({ exactBands }) => exactBands);
  return <MarkSaid id={id} sighting={sighting} honest={honest} bands={bands} />;
}

interface Props {
  readonly id: CheckpointId;
  /** The mark as it was seen, and as it counts. */
  readonly sighting: Sighting | null;
  readonly honest: HonestSighting | null;
  readonly bands: Bands;
}

/** What is said of one mark: what the camera made of it, its side of the band, and how surely. */
export function MarkSaid({ id, sighting, honest, bands }: Props) {
  const units = useDesk(({ document }) => document.units);
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
