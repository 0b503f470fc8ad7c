import { CHECKPOINT_NAMES, LENGTHS, sayBand } from '../../words';
import {
  ARM_ANGLE_LIMITS_DEG,
  BAND_LIMIT_CM,
  setBands,
  setBoard,
  setCheckpointArmDeg,
  setUnits,
  useDerived,
  useDesk,
  type BandCm,
  type CheckpointId,
} from '../../store';
import { Choice } from '../fields/Choice';
import { holdKey, holdPointer } from '../dials/gesture';
import { outside } from '../../words/numbers/ranges';
import { NumberField } from '../fields/NumberField';

const ENDS: Readonly<Record<CheckpointId, Readonly<Record<keyof BandCm, string>>>> = {
  leadArmParallel: { lowCm: 'Lowest, below is minus', highCm: 'Highest, above is plus' },
  shaftParallel: { lowCm: 'Farthest behind, minus', highCm: 'Farthest in front, plus' },
};

/** From where to where a checkpoint counts as on plane. */
function Band({ id }: { id: CheckpointId }) {
  const bands = useDesk(({ document }) => document.bands);
  const units = useDesk(({ document }) => document.units);
  const words = useDerived((derived) => sayBand(id, derived.bands, units));
  const { metres, symbol } = LENGTHS[units.length];
  const perCm = 0.01 / metres;
  const band = bands[id];
  const take = (end: keyof BandCm) => (typed: number | undefined) => {
    const [min, max] = end === 'lowCm' ? [-BAND_LIMIT_CM, band.highCm] : [band.lowCm, BAND_LIMIT_CM];
    const problem = outside(ENDS[id][end], typed!, min * perCm, max * perCm, symbol, 1);
    if (problem === undefined) setBands({ ...bands, [id]: { ...band, [end]: Number((typed! / perCm).toFixed(4)) } });
    return problem;
  };
  return (
    <div className="band">
      <h4>{CHECKPOINT_NAMES[id].title}</h4>
      <div className="fields">
        {(['lowCm', 'highCm'] as const).map((end) => (
          <NumberField
            key={end}
            label={ENDS[id][end]}
            unit={symbol}
            decimals={1}
            value={band[end] * perCm}
            onTake={take(end)}
          />
        ))}
      </div>
      <p className="fine">{words}</p>
    </div>
  );
}

/** At which angle of the lead arm the first checkpoint is read. */
function ReadingAngle() {
  const armDeg = useDesk(({ document }) => document.checkpointArmDeg);
  const words = armDeg === 0 ? 'at parallel' : `${-armDeg}° past parallel`;
  return (
    <div className="field field-slider">
      <label htmlFor="reading-angle">Lead arm is read</label>
      <input
        id="reading-angle"
        type="range"
        min={ARM_ANGLE_LIMITS_DEG.min}
        max={ARM_ANGLE_LIMITS_DEG.max}
        step={1}
        value={armDeg}
        aria-valuetext={words.replace('°', ' degrees')}
        onPointerDown={holdPointer}
        onKeyDown={holdKey}
        onChange={(event) => setCheckpointArmDeg(event.currentTarget.valueAsNumber)}
      />
      <output htmlFor="reading-angle">{words}</output>
    </div>
  );
}

/** Where the checkpoints are read and judged. */
export function SetUpReading() {
  return (
    <section aria-labelledby="set-up-reading">
      <h3 id="set-up-reading">Checkpoints</h3>
      <ReadingAngle />
      <Band id="leadArmParallel" />
      <Band id="shaftParallel" />
    </section>
  );
}

/** How numbers and the board are shown. */
export function SetUpShow() {
  const units = useDesk(({ document }) => document.units);
  const board = useDesk(({ document }) => document.board);
  return (
    <section aria-labelledby="set-up-show">
      <h3 id="set-up-show">Units and board</h3>
      <div className="fields">
        <Choice
          label="Lengths"
          value={units.length}
          options={[
            { value: 'cm', text: 'cm' },
            { value: 'in', text: 'inches' },
          ]}
          onChoose={(length) => setUnits({ ...units, length })}
        />
        <Choice
          label="Speeds"
          value={units.speed}
          options={[
            { value: 'm/s', text: 'm/s' },
            { value: 'km/h', text: 'km/h' },
            { value: 'mph', text: 'mph' },
          ]}
          onChoose={(speed) => setUnits({ ...units, speed })}
        />
        <Choice
          label="Board"
          value={board}
          options={[
            { value: 'light', text: 'Light' },
            { value: 'dark', text: 'Dark' },
          ]}
          onChoose={setBoard}
        />
      </div>
    </section>
  );
}
