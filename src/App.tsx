import { lazy, Suspense, useEffect, useLayoutEffect } from 'react';
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
  Time,
} from './panels';
import { Plate } from './plates';
import { useDesk } from './store';
import { sawAt } from './store/desk/whyActions';

/** The panels are there first; the 3D libraries follow. */
const Stage = lazy(loadingChunk(async () => ({ default: (await import('./stage/Stage')).Stage })));

/** What drawers draw is fetched when it is quiet. */
const BALL = preloadable(() => import('./plates/ball/BallDrawings'));
const PAIR = preloadable(() => import('./plates/plate/PairPlates'));
/** Once it is quiet: what can wait. */
const onQuiet = (): void => {
  BALL.fetch();
  PAIR.fetch();
};

/** Who stands where on the board. */
export function App() {
  const board = useDesk(({ document }) => document.board);
  const drawer = useDesk(({ session }) => session.drawer);
  useLayoutEffect(() => {
    document.documentElement.dataset['board'] = board;
  }, [board]);
  // After the frame, which has worked out the styles anyway.
  useEffect(() => {
    const paper = getComputedStyle(document.documentElement).getPropertyValue('--paper');
    document.querySelector('meta[name="theme-color"]')?.setAttribute('content', paper.trim());
  }, [board]);

  return (
    <div className="desk" data-drawer={drawer ?? 'none'}>
      <Bar />
      <main className="board">
        <div className="stage-place">
          <ErrorBoundary part="The picture">
            <Suspense>
              <Stage />
            </Suspense>
          </ErrorBoundary>
          <StageNotices />
        </div>
        <section className="plates" aria-label="Checkpoint plates">
          <Plate id="leadArmParallel" onSight={(metres) => sawAt('leadArmParallel', metres)} />
          <Plate id="shaftParallel" onSight={(metres) => sawAt('shaftParallel', metres)} />
        </section>
        <Time />
        <Movements />
      </main>
      <Drawer ballDrawings={<BALL.Part />} pairDrawings={<PAIR.Part />} onQuiet={onQuiet} />
      <Status />
      <Situations />
      <More />
      <LiveRegion />
    </div>
  );
}
