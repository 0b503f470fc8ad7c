import { useMemo } from 'react';
import { DIALS, dialOf, type MovementId } from '../../../model/movements';
import { SetupError } from '../../../model/body';
import { corridorRegions, type Corridor, type CorridorRegions } from '../../../solving/diagnosis/corridor';
import type { Bands } from '../../../reading/verdicts';
import { dialValue, useDerived, useDesk } from '../../../store';
import { useAsked } from '../../../store/solver/solverClient';
import { setAxis } from '../../../store/desk/whyActions';
import { COMPUTED, DIAL_NAMES } from '../../../words';
import { capital } from '../../../words/numbers/capital';
import { DRAWING_MAP, MOVE_ON_MAP, sayMap, speakMap } from '../../../words/why/corridor';
import { AsItIs, Lead, Source } from '../Lead';
import { MapPicture } from './MapPicture';
import { Pick } from '../Pick';

const OPTIONS = DIALS.map(({ id }) => ({ value: id, text: DIAL_NAMES[id].label }));

/** Two movements across, and where both checkpoints are on plane. A finger on the map moves the figure. */
export default function CorridorMap() {
  const { x, y } = useDesk(({ session }) => session.why);
  const bands = useDerived(({ exactBands }) => exactBands);
  const answer = useAsked((asked) => asked.answer);
  const isBusy = useAsked((asked) => asked.isBusy);
  const corridor =
    answer?.kind === 'map' && answer.corridor.x.id === x && answer.corridor.y.id === y ? answer.corridor : undefined;
  const drawn = answer?.kind === 'map' && answer.corridor === corridor && sameBands(answer.bands, bands);
  const outlines = useMemo(
    () => (drawn ? answer.regions : corridor && outline(corridor, bands)),
    [drawn, answer, corridor, bands],
  );
  const regions = typeof outlines === 'object' ? outlines : undefined;
  const problem = answer?.kind === 'refused' ? answer.message : typeof outlines === 'string' ? outlines : undefined;
  return (
    <div className="corridor-map">
      <AsItIs />
      <MapSentence x={x} y={y} regions={regions} problem={problem} />
      <MapPicture x={x} y={y} regions={regions} isBusy={isBusy} />
      <ul className="map-legend">
        <li data-key="both">both checkpoints on plane</li>
        <li data-key="arm">lead arm parallel on plane</li>
        <li data-key="shaft">shaft parallel on plane</li>
        <li data-key="beyond">past the usual range (rule of thumb)</li>
      </ul>
      <div className="fields">
        <Pick label="Across" options={OPTIONS} value={x} onPick={(id) => setAxis('x', id)} />
        <Pick label="Upward" options={OPTIONS} value={y} onPick={(id) => setAxis('y', id)} />
      </div>
      <Source>
        {MOVE_ON_MAP} {capital(COMPUTED)}.
      </Source>
    </div>
  );
}

const sameBands = (a: Bands, b: Bands): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The outlines, or in words why there are none. */
function outline(corridor: Corridor, bands: Bands): CorridorRegions | string {
  try {
    return corridorRegions(corridor, bands);
  } catch (error) {
    if (error instanceof SetupError) return error.message;
    throw error;
  }
}

interface SentenceProps {
  readonly x: MovementId;
  readonly y: MovementId;
  readonly regions: CorridorRegions | undefined;
  readonly problem: string | undefined;
}

function MapSentence({ x, y, regions, problem }: SentenceProps) {
  const px = useDesk(({ document }) => dialValue(document.movements, x));
  const py = useDesk(({ document }) => dialValue(document.movements, y));
  if (problem !== undefined) return <Lead text={problem} />;
  if (!regions) return <Lead text={DRAWING_MAP} />;
  const point = [px * dialOf(x).edgeUnit, py * dialOf(y).edgeUnit] as const;
  const text = sayMap({ x, y, point, both: regions.both });
  return <Lead text={text} spoken={speakMap(text)} />;
}
