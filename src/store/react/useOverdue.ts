import { useEffect } from 'react';
import { desk } from '../desk/desk';
import { useDerived } from './useDesk';

/** A swing is found in some tenths of a second as a rule: until then the last may stand without a word, ms. */
const OVERDUE_MS = 400;

/** Has it said when a reference swing is looked for longer than that. */
export function useOverdue(): void {
  const isSolving = useDerived(({ status }) => status === 'solving');
  useEffect(() => {
    if (!isSolving) return undefined;
    const timer = window.setTimeout(() => desk.setState({ overdue: true }), OVERDUE_MS);
    return () => {
      clearTimeout(timer);
      if (desk.getState().overdue) desk.setState({ overdue: false });
    };
  }, [isSolving]);
}
