import { DIALS, MOVEMENT_GROUPS, type MovementGroup } from '../../model/movements';
import { setGroup, useDesk } from '../../store';
import { Dial } from './Dial';
import { ExaggerateSwitch, GhostButton, ResetButton } from './MovementActions';
import { SITUATIONS_ID } from './Situations';

/** What the three movements are called on the page. */
export const GROUP_NAMES: Readonly<Record<MovementGroup, string>> = {
  leadWrist: 'Lead wrist',
  rotation: 'Rotation',
  sideTilt: 'Side bend',
};

/** The three movements. All at once where there is room; on a phone one at a time, chosen by three tabs. */
export function Movements() {
  const chosen = useDesk(({ session }) => session.group);
  return (
    <>
      <fieldset className="pick" aria-label="Movement">
        {MOVEMENT_GROUPS.map((group) => (
          <button key={group} type="button" aria-pressed={group === chosen} onClick={() => setGroup(group)}>
            {GROUP_NAMES[group]}
          </button>
        ))}
      </fieldset>
      <section className="moves" aria-label="Movements">
        {MOVEMENT_GROUPS.map((group) => (
          <fieldset
            key={group}
            aria-label={GROUP_NAMES[group]}
            className="move"
            data-group={group}
            data-chosen={group === chosen}
          >
            {DIALS.filter((dial) => dial.group === group).map((dial, i) => (
              <Dial key={dial.id} id={dial.id} leads={i === 0} />
            ))}
            {group === 'leadWrist' && <Actions />}
          </fieldset>
        ))}
      </section>
    </>
  );
}

const Actions = () => (
  <div className="acts">
    <ResetButton />
    <GhostButton />
    <button type="button" className="plain" popoverTarget={SITUATIONS_ID}>
      Situations
    </button>
    <ExaggerateSwitch />
  </div>
);
