import { SET_UP_LIMITS, setPelvisAlone, setSetUp, useDerived, useDesk, type SetUp } from '../../store';
import { LENGTHS, showLength } from '../../words';
import { Dial } from '../dials/Dial';
import { outside } from '../../words/numbers/ranges';
import { NumberField } from '../fields/NumberField';
import { DOWNSWING_USUAL, sayTopTooFar } from '../../words/setUp/setUp';

/** Less than this is not worth a sentence, m. */
const NOTICEABLE = 0.005;
const LENGTH_FIELDS = [
  { id: 'handDepthCm', label: 'Hand depth', hint: 'plus is farther from the ball line' },
  { id: 'handHeightCm', label: 'Hand height', hint: 'plus is higher' },
] as const;
const ANGLE_FIELDS = [
  { id: 'turnDeg', label: 'Turn', hint: 'plus is turned farther' },
  { id: 'wristSetDeg', label: 'Wrist set', hint: 'plus is cocked more' },
] as const;

/** Top of the backswing as changes on the reference, and the tempo. */
export function SetUpTop() {
  const setUp = useDesk(({ document }) => document.setUp);
  const length = useDesk(({ document }) => document.units.length);
  const { metres, symbol } = LENGTHS[length];
  const perCm = 0.01 / metres;

  const take = (id: keyof SetUp, label: string, unit: string, factor: number) => (typed: number | undefined) => {
    const { min, max } = SET_UP_LIMITS[id];
    const problem = outside(label, typed!, min * factor, max * factor, unit, 1);
    if (problem === undefined) setSetUp({ ...setUp, [id]: Number((typed! / factor).toFixed(4)) });
    return problem;
  };

  return (
    <section aria-labelledby="set-up-top">
      <h3 id="set-up-top">Top of the backswing</h3>
      <p className="fine">
        Changes on the reference:{' '}
        {[...LENGTH_FIELDS, ...ANGLE_FIELDS].map(({ label, hint }) => `${label.toLowerCase()}, ${hint}`).join('; ')}.
      </p>
      <div className="fields">
        {LENGTH_FIELDS.map(({ id, label }) => (
          <NumberField
            key={id}
            label={label}
            unit={symbol}
            decimals={1}
            value={setUp[id] * perCm}
            onTake={take(id, label, symbol, perCm)}
          />
        ))}
        {ANGLE_FIELDS.map(({ id, label }) => (
          <NumberField
            key={id}
            label={label}
            unit="°"
            decimals={1}
            value={setUp[id]}
            onTake={take(id, label, '°', 1)}
          />
        ))}
      </div>
      <Shortfall />
    </section>
  );
}

/** Said when the arm is too short for what was asked. */
function Shortfall() {
  const units = useDesk(({ document }) => document.units);
  const short = useDerived(({ topShortfall }) => topShortfall);
  if (short < NOTICEABLE) return null;
  return <output className="field-problem">{sayTopTooFar(showLength(short, units).inSentence)}</output>;
}

/** How long the downswing takes. */
export function SetUpTempo() {
  const setUp = useDesk(({ document }) => document.setUp);
  return (
    <section aria-labelledby="set-up-tempo">
      <h3 id="set-up-tempo">Tempo</h3>
      <div className="fields">
        <NumberField
          label="Downswing"
          unit="ms"
          decimals={0}
          value={setUp.downswingMs}
          onTake={(typed) => {
            const { min, max } = SET_UP_LIMITS.downswingMs;
            const problem = outside('Downswing', typed!, min, max, 'ms');
            if (problem === undefined) setSetUp({ ...setUp, downswingMs: Math.round(typed!) });
            return problem;
          }}
        />
        <p className="fine">{DOWNSWING_USUAL}</p>
      </div>
    </section>
  );
}

/** The pelvis follows the chest, or turns on its own. */
export function SetUpPelvis() {
  const alone = useDesk(({ document }) => document.movements.pelvis !== null);
  return (
    <section aria-labelledby="set-up-pelvis">
      <h3 id="set-up-pelvis">Hips</h3>
      <button
        type="button"
        className="plain wide"
        role="switch"
        aria-checked={alone}
        onClick={() => setPelvisAlone(!alone)}
      >
        Hips turn on their own
      </button>
      {alone && (
        <div className="own-dials">
          <Dial id="pelvisRate" />
          <Dial id="pelvisDelay" />
        </div>
      )}
    </section>
  );
}
