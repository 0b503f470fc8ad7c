import { BALL_LIMITS, setBall, useDesk } from '../../store';
import { SPEEDS } from '../../words';
import { outside } from '../../words/numbers/ranges';
import { NumberField } from '../fields/NumberField';

const M_PER_FOOT = 0.3048;

type Field = keyof typeof BALL_LIMITS;
const FIELDS: readonly { readonly id: Field; readonly label: string }[] = [
  { id: 'tailWindMps', label: 'Wind with the shot, against is minus' },
  { id: 'crossWindMps', label: 'Wind left to right, back is minus' },
  { id: 'altitudeM', label: 'Height above the sea' },
];

/** Wind and altitude: the day the ball flies on. Set by the coach, stored with the swing. */
export function BallDay() {
  const ball = useDesk(({ document }) => document.ball);
  const units = useDesk(({ document }) => document.units);
  const speed = { unit: units.speed, perSi: 1 / SPEEDS[units.speed].metresPerSecond };
  const height = units.length === 'cm' ? { unit: 'm', perSi: 1 } : { unit: 'ft', perSi: 1 / M_PER_FOOT };
  return (
    <section aria-labelledby="ball-day">
      <h3 id="ball-day">Conditions</h3>
      <div className="fields">
        {FIELDS.map(({ id, label }) => {
          const { unit, perSi } = id === 'altitudeM' ? height : speed;
          const { min, max } = BALL_LIMITS[id];
          const take = (typed: number | undefined): string | undefined => {
            const problem = outside(label.split(',')[0], typed!, min * perSi, max * perSi, unit, 1);
            if (problem === undefined) setBall({ ...ball, [id]: Number((typed! / perSi).toFixed(4)) });
            return problem;
          };
          return (
            <NumberField
              key={id}
              label={label}
              unit={unit}
              decimals={id === 'altitudeM' ? 0 : 1}
              value={ball[id] * perSi}
              onTake={take}
            />
          );
        })}
      </div>
    </section>
  );
}
