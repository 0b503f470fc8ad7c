import { lazy, Suspense, useEffect, useLayoutEffect, useState, useSyncExternalStore } from 'react';
import {
  Bar,
  Drawer,
  loadingChunk,
  preloadable,
  LiveRegion,
  ErrorBoundary,
  More,
  Movements,
  Situations,
  StageNotices,
  Status,
  StudentBar,
  StudentSlot,
  Time,
} from './panels';
import { Plate } from './plates';
import type { PlannedDocument } from './player/PlayerPage';
import { useDesk, type Document } from './store';
import { loadOpeners } from './export/link/incomingLinks';
import { sawAt } from './store/desk/whyActions';

/** The panels are there first; the 3D libraries follow. */
const Stage = lazy(loadingChunk(async () => ({ default: (await import('./stage/Stage')).Stage })));

/** What drawers draw is fetched when it is quiet. */
const BALL = preloadable(() => import('./plates/ball/BallDrawings'));
const PAIR = preloadable(() => import('./plates/plate/PairPlates'));
const FAMILY = preloadable(() => import('./plates/plate/FamilyPlates'));
/** Once it is quiet: what can wait. */
const onQuiet = (): void => {
  BALL.fetch();
  PAIR.fetch();
  FAMILY.fetch();
};

/** The screens with room for one slider: `small` and `low` of the desk's style sheet. */
const SMALL = [
  '(max-width: 599px)',
  '(min-width: 600px) and (max-width: 1139px) and (max-height: 559px)',
  '(min-width: 600px) and (max-width: 859px) and (min-aspect-ratio: 901/1000) and (min-height: 560px)',
].join(', ');

function useSmall(): boolean {
  const [query] = useState(() => matchMedia(SMALL));
  return useSyncExternalStore(
    (tell) => {
      query.addEventListener('change', tell);
      return () => query.removeEventListener('change', tell);
    },
    () => query.matches,
  );
}

/** What a link with a plan opens. */
const PlayerPage = lazy(loadingChunk(() => import('./player/PlayerPage')));

const hasPlan = (of: Document): of is PlannedDocument => of.plan !== null;

/** The desk, or the page of a player for whom a plan came. */
export function App() {
  const guest = useDesk(({ session }) => session.guest);
  if (guest === 'opening') return null;
  if (guest === null || !hasPlan(guest)) return <Desk />;
  const openDesk = (): void => void loadOpeners(({ openOnDesk }) => openOnDesk(guest));
  return (
    <Suspense>
      <PlayerPage key={guest.plan.id} document={guest} onOpenDesk={openDesk} />
    </Suspense>
  );
}

/** Who stands where on the board. */
function Desk() {
  const board = useDesk(({ document }) => document.board);
  const drawer = useDesk(({ session }) => session.drawer);
  const turned = useDesk(({ session }) => session.turned);
  const student = useDesk(({ session }) => session.student);
  const isSmall = useSmall();
  const [slot, setSlot] = useState<HTMLElement | null>(null);
  useLayoutEffect(() => {
    document.documentElement.dataset['board'] = board;
  }, [board]);
  // After the frame, which has worked out the styles anyway.
  useEffect(() => {
    const paper = getComputedStyle(document.documentElement).getPropertyValue('--paper');
    document.querySelector('meta[name="theme-color"]')?.setAttribute('content', paper.trim());
  }, [board]);

  return (
    <div
      className="desk"
      data-drawer={(student ? null : drawer) ?? 'none'}
      data-turned={turned || undefined}
      data-student={student || undefined}
      data-dials={isSmall || student ? 'one' : 'all'}
    >
      {student ? <StudentBar onSlot={setSlot} /> : <Bar />}
      <main className="board">
        <div className="stage-place">
          <ErrorBoundary part="The picture">
            <Suspense>
              <Stage />
            </Suspense>
          </ErrorBoundary>
          <StageNotices />
          <Status />
        </div>
        <section className="plates" aria-label="Checkpoint plates">
          <Plate id="leadArmParallel" onSight={(metres) => sawAt('leadArmParallel', metres)} />
          <Plate id="shaftParallel" onSight={(metres) => sawAt('shaftParallel', metres)} />
        </section>
        <Time />
        <Movements />
      </main>
      <StudentSlot value={slot}>
        <Drawer
          ballDrawings={<BALL.Part />}
          pairDrawings={<PAIR.Part />}
          familyDrawings={(chosen) => <FAMILY.Part chosen={chosen} />}
          onQuiet={onQuiet}
        />
      </StudentSlot>
      <Situations />
      <More />
      <LiveRegion />
    </div>
  );
}
