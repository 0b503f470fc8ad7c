import { desk, subscribe } from '../desk/desk';
import type { DrawerId } from '../desk/session';
import { noteAnswered, noteAsked } from '../solver/answering';

/** Drawers that ask for a map, plans, explanations or families. */
const ASKING: readonly (DrawerId | null)[] = ['map', 'plan', 'seen', 'family'];

/** Answers what an open drawer asks. The solvers are fetched with the first such drawer. Answers how to end that. */
export function answerDrawers(): () => void {
  let end: (() => void) | undefined;
  let isFetching = false;
  let isOver = false;
  const look = (): void => {
    if (end || isFetching || !ASKING.includes(desk.getState().session.drawer)) return;
    isFetching = true;
    // The picture waits for this answer too, though who gives it is not there yet.
    noteAsked();
    import('../solver/solverClient').then(
      ({ solverClient }) => {
        if (!isOver) end = solverClient.follow();
      },
      // The drawer's own part did not come either, and says so; the next change tries again.
      () => {
        isFetching = false;
        noteAnswered();
      },
    );
  };
  const stop = subscribe(look);
  look();
  return () => {
    isOver = true;
    stop();
    end?.();
  };
}
