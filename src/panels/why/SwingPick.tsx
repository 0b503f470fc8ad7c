import { useMemo } from 'react';
import { useDesk } from '../../store';
import { beforeLastStep } from '../../store/derive/swings';
import { chooseSwing, type SwingPlace } from '../../store/desk/whyActions';
import { useBook } from '../lessons/navigation';
import { Pick } from './Pick';
import { bookGroups, deskGroups } from './swingChoice';

/** Any swing there is, for one place: the desk's own, a ready-made situation, or one from the lesson book. */
export function SwingPick({ label, place }: { label: string; place: SwingPlace }) {
  const chosen = useDesk(({ session }) => session.why[place]);
  const brought = useDesk(({ session }) => session.why.brought);
  const hasGhost = useDesk((state) => state.session.ghost !== 'plan' && state.session.ghost !== null);
  const hasPlan = useDesk(({ document }) => document.plan !== null);
  const before = useDesk((state) => beforeLastStep(state)?.name);
  const records = useBook((book) => book.records);
  const fromBook = useMemo(() => bookGroups(records), [records]);
  const groups = [...deskGroups(hasGhost, hasPlan, before), ...fromBook];
  const options = groups.flatMap((group) => group.options);
  const isListed = options.some(({ value }) => value === chosen);
  // One that has left the book since stays chosen until another is.
  const gone = isListed ? undefined : brought.find(({ id }) => id === chosen);
  const others = gone ? [{ label: 'Chosen before', options: [{ value: gone.id, text: gone.swing.name }] }] : [];
  return (
    <Pick
      label={label}
      groups={[...groups, ...others]}
      value={isListed || gone ? chosen : 'now'}
      onPick={(id) => chooseSwing(place, id, options.find(({ value }) => value === id)?.swing)}
    />
  );
}
