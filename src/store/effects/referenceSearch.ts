import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import type { ReferenceFit } from '../../solving/reference/reference';
import { findUsual } from '../../solving/reference/usual';
import { judgeFit } from '../../solving/reference/usable';
import { referenceKey, type Found } from '../derive/references';
import { findSwing, pairOf } from '../derive/swings';
import { desk, put, subscribe } from '../desk/desk';
import type { DeskState } from '../desk/state';
import type { SwingOf } from '../desk/whyState';
import { toBodyAndClub } from '../document/convert';
import type { Shelf } from '../document/persistence';
import { createWorkerClient } from '../solver/workerClient';
import { findKept, keepReference } from './keptReferences';
import type { ReferenceQuestion } from './referenceQuestion';

/** A player with a club. */
type Golfer = Pick<SwingOf, 'player' | 'club'>;

/** Finds the reference swings that the desk needs. */
export interface ReferenceSearch {
  /**
   * Looks from now on for whatever the desk shows or compares, and keeps what is found on the shelf, if there is one. A search that failed is
   * made again when its player and club are chosen anew. Answers how to end that.
   */
  follow(shelf: Shelf | undefined): () => void;
  /** Looks for the reference swing of one more player and club, unless it is known. */
  want(golfer: Golfer): void;
  /** From now on every search is made here and at once, by `solve`: for Node, where there are no workers. */
  searchHere(solve: Solve): void;
}
type Solve = (body: Body, club: Club) => ReferenceFit;

/** Answers kept at hand; the one not looked for the longest goes first, to be found again where it is wanted again. */
const MOST_KNOWN = 32;
const STOPPED = 'The search for this reference swing stopped. Change the set-up and back to try again.';

/** What the golfers on the desk depend on: while these are the same objects, so are they. */
const cause = ({ document, session, history }: DeskState): readonly unknown[] => [
  document.player,
  document.club,
  history.past,
  session.drawer,
  session.ghost,
  session.why,
];
function golfersOn(state: DeskState): readonly Golfer[] {
  const { from, to, solid, ghost } = state.session.why;
  const pair = pairOf(state);
  const all = [pair.solid, pair.ghost ?? pair.solid, ...[from, to, solid, ghost].map((id) => findSwing(id, state))];
  return all.filter((one, i) => all.findIndex(({ player, club }) => player === one.player && club === one.club) === i);
}

/** A search that has not begun. */
function createReferenceSearch(): ReferenceSearch {
  const worker = createWorkerClient<ReferenceQuestion, ReferenceFit>(
    () => new Worker(new URL('./reference.worker.ts', import.meta.url), { type: 'module' }),
  );
  let solveHere: Solve | undefined;
  const asked = new Set<string>();
  /** Everything looked for; what was looked for last comes last. */
  const recent = new Set<string>();
  let keptOn: Shelf | undefined;
  let wanted: ReadonlySet<string> = new Set();

  const tell = (key: string, found: Found): void => {
    asked.delete(key);
    const references = new Map(desk.getState().references).set(key, found);
    const oldest = [...recent].find((one) => references.has(one) && !wanted.has(one) && one !== key);
    if (references.size > MOST_KNOWN && oldest !== undefined) references.delete(oldest);
    put({ references });
  };
  const judge = (key: string, fit: ReferenceFit): Found => {
    const usable = judgeFit(fit);
    if ('refused' in usable) return { failed: usable.refused };
    if (keptOn) keepReference(keptOn, key, usable.reference);
    return usable;
  };

  /** Looks for a golfer's reference swing; answers the key, or nothing for one that is at hand, or that cannot be. */
  const look = ({ player, club: choice }: Golfer, isNew: (key: string) => boolean): string | undefined => {
    let golfer: ReferenceQuestion;
    try {
      golfer = toBodyAndClub({ player, club: choice });
    } catch {
      // Whoever derives says in words what is wrong with the set-up.
      return undefined;
    }
    const { body, club } = golfer;
    if (findUsual(body, club)) return undefined;
    const key = referenceKey(body, club);
    recent.delete(key);
    recent.add(key);
    const known = desk.getState().references.get(key);
    if (asked.has(key) || (known && !('failed' in known && isNew(key)))) return key;
    asked.add(key);
    const kept = keptOn && findKept(keptOn, key, body, club);
    if (kept) tell(key, { reference: kept });
    else if (solveHere) tell(key, judge(key, solveHere(body, club)));
    else {
      if (known) forget(key);
      worker.ask({ body, club }, (fit) => tell(key, judge(key, fit))).catch(() => tell(key, { failed: STOPPED }));
    }
    return key;
  };
  const forget = (key: string): void => {
    const references = new Map(desk.getState().references);
    references.delete(key);
    put({ references });
  };

  const lookForAll = (): void => {
    const before = wanted;
    const keys = golfersOn(desk.getState()).flatMap((golfer) => look(golfer, (key) => !before.has(key)) ?? []);
    wanted = new Set(keys);
  };
  return {
    follow(shelf) {
      keptOn = shelf;
      let last = cause(desk.getState());
      lookForAll();
      return subscribe((state) => {
        const now = cause(state);
        if (now.every((part, i) => part === last[i])) return;
        last = now;
        lookForAll();
      });
    },
    want(golfer) {
      look(golfer, () => false);
    },
    searchHere(solve) {
      solveHere = solve;
    },
  };
}

/** Cache: the searches that are under way, and the worker that makes them. */
export const referenceSearch = createReferenceSearch();
