import { SetupError } from '../model/body';
import { CLUB_IDS, CLUBS, clubOf, type ClubId, type ClubSpec } from '../model/club';
import { MY_CLUB, setClub, useDesk } from '../store';
import { lengthField } from './lengthFields';
import { NumberField } from './NumberField';

const named = (id: string): string => id.charAt(0).toUpperCase() + id.slice(1);
const KINDS: readonly { readonly kind: ClubSpec['kind']; readonly text: string }[] = [
  { kind: 'driver', text: 'Driver' },
  { kind: 'wood', text: 'Wood' },
  { kind: 'iron', text: 'Iron' },
  { kind: 'wedge', text: 'Wedge' },
];

/** Takes a club the model accepts; otherwise says why not, in the model's words. */
function takeClub(my: ClubSpec): string | undefined {
  try {
    clubOf(my);
  } catch (error) {
    if (error instanceof SetupError) return error.message;
    throw error;
  }
  setClub({ id: MY_CLUB, my });
  return undefined;
}

/** One of seven clubs, or the player's own with typed length, lie and loft. */
export function SetUpClub() {
  const club = useDesk(({ document }) => document.club);
  const choose = (id: string): void => {
    if (id !== MY_CLUB) return setClub({ ...club, id: id as ClubId });
    const start = club.id === MY_CLUB ? CLUBS['7-iron'] : CLUBS[club.id];
    setClub({ id: MY_CLUB, my: club.my ?? { ...start, name: 'My club' } });
  };
  return (
    <section aria-labelledby="set-up-club">
      <h3 id="set-up-club">Club</h3>
      <div className="fields">
        <label className="field">
          <span>Club</span>
          <select value={club.id} onChange={(event) => choose(event.currentTarget.value)}>
            {[...CLUB_IDS, MY_CLUB].map((id) => (
              <option key={id} value={id}>
                {named(id)}
              </option>
            ))}
          </select>
        </label>
        {club.id === MY_CLUB && club.my ? <MyClub my={club.my} /> : <Figures spec={CLUBS[club.id as ClubId]} />}
      </div>
    </section>
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
  const units = useDesk(({ document }) => document.units);
  const { unit, decimals, toField, fromField } = lengthField(units);
  return (
    <>
      <label className="field">
        <span>Kind</span>
        <select
          value={my.kind}
          onChange={(event) => takeClub({ ...my, kind: event.currentTarget.value as ClubSpec['kind'] })}
        >
          {KINDS.map(({ kind, text }) => (
            <option key={kind} value={kind}>
              {text}
            </option>
          ))}
        </select>
      </label>
      <NumberField
        label="Length"
        unit={unit}
        decimals={decimals}
        value={toField(my.lengthM)}
        onTake={(typed) => takeClub({ ...my, lengthM: fromField(typed!) })}
      />
      <NumberField
        label="Lie"
        unit="°"
        decimals={1}
        value={my.lieDeg}
        onTake={(typed) => takeClub({ ...my, lieDeg: typed! })}
      />
      <NumberField
        label="Loft"
        unit="°"
        decimals={1}
        value={my.loftDeg}
        onTake={(typed) => takeClub({ ...my, loftDeg: typed! })}
      />
    </>
  );
}
