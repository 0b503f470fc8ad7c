import type { WrittenRule } from '../../../edge/rule';
import { CLUB_IDS } from '../../../model/club';
import { sayWho, WHO_SUBJECTS } from '../../../words/why/rule';
import { NumberField } from '../../fields/NumberField';
import { Select } from '../../fields/Select';
import { editRule } from '../../../store/rules/keptRules';

type Who = NonNullable<WrittenRule['who']>;
type RangeField = keyof typeof WHO_SUBJECTS;

/** Where a range begins when it is first set. */
const FIRST: Readonly<Record<RangeField, readonly [number, number]>> = {
  statureM: [1.6, 1.9],
  lagDeg: [90, 120],
  handDepthCm: [-6, 6],
  handHeightCm: [-6, 6],
  turnDeg: [-10, 10],
  wristSetDeg: [-10, 10],
};

const without = (who: Who, field: keyof Who): Who =>
  Object.fromEntries(Object.entries(who).filter(([name]) => name !== field));

/** Whom a rule is about: any player, until something is said. */
export function WhoFields({ rule }: { rule: WrittenRule }) {
  const who = rule.who ?? {};
  const take = (next: Who): void => editRule({ who: next });
  return (
    <details className="rule-who">
      <summary>{sayWho(rule)}</summary>
      {(Object.keys(WHO_SUBJECTS) as RangeField[]).map((field) => (
        <Range key={field} field={field} who={who} onTake={take} />
      ))}
      <fieldset className="rule-clubs">
        <legend>Clubs</legend>
        {CLUB_IDS.map((id) => {
          const isOn = who.clubs?.includes(id) ?? true;
          const next = CLUB_IDS.filter((one) => (one === id ? !isOn : (who.clubs?.includes(one) ?? true)));
          return (
            <label key={id}>
              <input
                type="checkbox"
                checked={isOn}
                onChange={() => take(next.length === CLUB_IDS.length ? without(who, 'clubs') : { ...who, clubs: next })}
              />
              {id}
            </label>
          );
        })}
      </fieldset>
      <Select
        label="Hand"
        value={who.handed ?? 'either'}
        options={[
          ['either', 'either'],
          ['right', 'right'],
          ['left', 'left'],
        ]}
        onChoose={(hand) => take(hand === 'either' ? without(who, 'handed') : { ...who, handed: hand })}
      />
    </details>
  );
}

function Range({ field, who, onTake }: { field: RangeField; who: Who; onTake: (who: Who) => void }) {
  const range = who[field];
  const { name, unit } = WHO_SUBJECTS[field];
  return (
    <div className="rule-range">
      <label>
        <input
          type="checkbox"
          checked={range !== undefined}
          onChange={() => {
            const [from, to] = FIRST[field];
            onTake(range ? without(who, field) : { ...who, [field]: { from, to } });
          }}
        />
        {name}
      </label>
      {range &&
        (['from', 'to'] as const).map((end) => (
          <NumberField
            key={end}
            label={end}
            unit={unit}
            decimals={2}
            value={range[end]}
            onTake={(typed) => {
              onTake({ ...who, [field]: { ...range, [end]: typed! } });
              return undefined;
            }}
          />
        ))}
    </div>
  );
}
