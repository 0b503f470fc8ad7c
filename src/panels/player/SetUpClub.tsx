import { CLUB_IDS, CLUB_LIMITS, CLUBS, type ClubId, type ClubSpec } from '../../model/club';
import { useMemo } from 'react';
import { MY_CLUB, setClub, useDerived, useDesk } from '../../store';
import { toArmAngle } from '../../store/document/convert';
import { lengthField } from './lengthFields';
import { capital } from '../../words/numbers/capital';
import { outside } from '../../words/numbers/ranges';
import { sayWristEffect } from '../../words/swing/wristEffect';
import { NumberField } from '../fields/NumberField';

const KINDS: readonly { readonly kind: ClubSpec['kind']; readonly text: string }[] = [
  { kind: 'driver', text: 'Driver' },
  { kind: 'wood', text: 'Wood' },
  { kind: 'iron', text: 'Iron' },
  { kind: 'wedge', text: 'Wedge' },
];

const NUMBERS = [
  ['lengthM', 'Length'],
  ['lieDeg', 'Lie'],
  ['loftDeg', 'Loft'],
] as const;
const DEGREES = {
  unit: '°',
  decimals: 1,
  toField: (value: number) => value,
  fromField: (typed: number) => Number(typed.toFixed(4)),
};

/** One of seven clubs, or the player's own with typed length, lie and loft. */
export function SetUpClub() {
  const club = useDesk(({ document }) => document.club);
  const choose = (id: string): void => {
    if (id !== MY_CLUB) return setClub({ ...club, id: id as ClubId });
    const start = club.id === MY_CLUB ? CLUBS['7-iron'] : CLUBS[club.id];
    setClub({ ...club, id: MY_CLUB, my: club.my ?? { ...start, name: 'My club' } });
  };
  return (
    <section aria-labelledby="set-up-club">
      <h3 id="set-up-club" className="unseen">
        Club
      </h3>
      <div className="fields">
        <label className="field">
          <span>Club</span>
          <select value={club.id} onChange={(event) => choose(event.currentTarget.value)}>
            {[...CLUB_IDS, MY_CLUB].map((id) => (
              <option key={id} value={id}>
                {capital(id)}
              </option>
            ))}
          </select>
        </label>
        {club.id === MY_CLUB && club.my ? <MyClub my={club.my} /> : <Figures spec={CLUBS[club.id as ClubId]} />}
        <label className="field">
          <span>Lie</span>
          <select
            value={club.lie ?? 'fitted'}
            onChange={(event) => setClub({ ...club, lie: event.currentTarget.value as 'fitted' | 'rack' })}
          >
            <option value="fitted">Fitted to the player</option>
            <option value="rack">Off the rack</option>
          </select>
        </label>
        <Lag />
      </div>
    </section>
  );
}

/** The angle between lead arm and shaft at lead arm parallel, on which every effect of the wrist hangs. */
function Lag() {
  const club = useDesk(({ document }) => document.club);
  const units = useDesk(({ document }) => document.units);
  const armAngle = useDesk(({ document }) => toArmAngle(document));
  const reference = useDerived(({ referenceSwing }) => referenceSwing);
  const said = useMemo(() => sayWristEffect(reference, armAngle, units), [reference, armAngle, units]);
  const { min, max } = CLUB_LIMITS.lagDeg;
  return (
    <>
      <NumberField
        label="Arm and shaft"
        unit="°"
        decimals={0}
        optional
        placeholder={said.lagDeg}
        value={club.lagDeg ?? undefined}
        onTake={(typed) => {
          const problem = typed === undefined ? undefined : outside('Arm and shaft', typed, min, max, '°');
          if (problem === undefined) setClub({ ...club, lagDeg: typed ?? null });
          return problem;
        }}
      />
      <p className="fine">{said.sentence}</p>
    </>
  );
}

/** What a club measures, for reading. */
function Figures({ spec }: { spec: ClubSpec }) {
  const units = useDesk(({ document }) => document.units);
  const { unit, decimals, toField } = lengthField(units);
  return (
    <p className="fine">
      Length {toField(spec.lengthM).toFixed(decimals)} {unit}, lie {spec.lieDeg}°, loft {spec.loftDeg}°. Typical values,
      a rule of thumb.
    </p>
  );
}

function MyClub({ my }: { my: ClubSpec }) {
  const club = useDesk(({ document }) => document.club);
  const units = useDesk(({ document }) => document.units);
  const lengths = lengthField(units);
  const take = (part: Partial<ClubSpec>): void => setClub({ ...club, id: MY_CLUB, my: { ...my, ...part } });
  return (
    <>
      <label className="field">
        <span>Kind</span>
        <select value={my.kind} onChange={(event) => take({ kind: event.currentTarget.value as ClubSpec['kind'] })}>
          {KINDS.map(({ kind, text }) => (
            <option key={kind} value={kind}>
              {text}
            </option>
          ))}
        </select>
      </label>
      {NUMBERS.map(([id, label]) => {
        const { min, max } = CLUB_LIMITS[id];
        const { unit, decimals, toField, fromField } = id === 'lengthM' ? lengths : DEGREES;
        return (
          <NumberField
            key={id}
            label={label}
            unit={unit}
            decimals={decimals}
            value={toField(my[id])}
            onTake={(typed) => {
              const problem = outside(label, typed!, toField(min), toField(max), unit, decimals);
              if (problem === undefined) take({ [id]: fromField(typed!) });
              return problem;
            }}
          />
        );
      })}
    </>
  );
}
