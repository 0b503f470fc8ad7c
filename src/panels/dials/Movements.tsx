import { useRef } from 'react';
import { DIALS, MOVEMENT_GROUPS, type MovementGroup } from '../../model/movements';
import { dialValue, putText, setDial, useDesk, useWritten, type DeskState, type DialId } from '../../store';
import { Dial } from './Dial';
import { dialWords } from '../../words/swing/edgeDials';
import { ResetButton } from './MovementActions';
import { SITUATIONS_ID } from './Situations';

/** What the three movements are called on the page. */
export const GROUP_NAMES: Readonly<Record<MovementGroup, string>> = {
  leadWrist: 'Lead wrist',
  rotation: 'Body turn',
  sideTilt: 'Side bend',
};

/** The three movements, each with its second dial. Where there is room for one slider, five picks choose it and show all values. */
export function Movements() {
  return (
    <>
      <fieldset className="pick" aria-label="Movement">
        {DIALS.map(({ id }) => (
          <PickButton key={id} id={id} />
        ))}
      </fieldset>
      <section className="moves" aria-label="Movements">
        {MOVEMENT_GROUPS.map((group) => (
          <fieldset key={group} aria-label={GROUP_NAMES[group]} className="move" data-group={group}>
            {DIALS.filter((dial) => dial.group === group).map((dial, i) => (
              <Dial key={dial.id} id={dial.id} leads={i === 0} />
            ))}
          </fieldset>
        ))}
        <div className="acts">
          <button type="button" className="plain" popoverTarget={SITUATIONS_ID}>
            Typical swings
          </button>
          <ResetButton />
        </div>
      </section>
    </>
  );
}

/** Names short enough for a fifth of a phone's width. */
const PICK_NAMES: Readonly<Record<(typeof DIALS)[number]['id'], string>> = {
  leadWristFlexion: 'Lead wrist',
  rotationRate: 'Body turn',
  rotationDelay: 'Start',
  trailSideBend: 'Side bend',
  pelvisShift: 'Hip slide',
};

/** Its value is written, not rendered: it changes at every step of a slider. */
function PickButton({ id }: { id: keyof typeof PICK_NAMES & DialId }) {
  const isChosen = useDesk(({ session }) => session.dial === id);
  const units = useDesk(({ document }) => document.units);
  const button = useRef<HTMLButtonElement>(null);
  const words = useRef<HTMLElement>(null);
  useWritten(
    ({ document }: DeskState) => dialValue(document.movements, id),
    (value) => {
      const { short, past } = dialWords(id, value, units);
      if (words.current) putText(words.current, id === 'leadWristFlexion' && value === 0 ? '0°' : short);
      if (button.current) button.current.dataset['past'] = String(past !== undefined);
    },
  );
  return (
    <button ref={button} type="button" aria-pressed={isChosen} onClick={() => setDial(id)}>
      {PICK_NAMES[id]}
      <b ref={words} />
    </button>
  );
}
