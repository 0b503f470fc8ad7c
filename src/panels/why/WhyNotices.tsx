import { useDesk } from '../../store';

/** What is shown for a moment in place of the swing now. */
export function TrialNotice() {
  const label = useDesk(({ session }) => (session.guess ? undefined : session.trial?.label));
  return label === undefined ? null : <p className="slip slip-mark">Only {label}</p>;
}
