import { useLayoutEffect } from 'react';
import { Bar, Drawer, LiveRegion, Movements, Situations, Slips, Status, Time } from './panels';
import { Plate } from './plates';
import { useDesk } from './store';

/** Who stands where on the board. */
export function App() {
  const board = useDesk(({ document }) => document.board);
  const drawer = useDesk(({ session }) => session.drawer);
  useLayoutEffect(() => {
    document.documentElement.dataset['board'] = board;
    const paper = getComputedStyle(document.documentElement).getPropertyValue('--paper');
    document.querySelector('meta[name="theme-color"]')?.setAttribute('content', paper.trim());
  }, [board]);

  return (
    <div className="desk" data-drawer={drawer ?? 'none'}>
      <Bar />
      <main className="board">
        <section className="stage-place" aria-label="Stage">
          <Slips />
        </section>
        <section className="plates" aria-label="Checkpoint plates">
          <Plate id="leadArmParallel" />
          <Plate id="shaftParallel" />
        </section>
        <Time />
        <Movements />
      </main>
      <Drawer />
      <Status />
      <Situations />
      <LiveRegion />
    </div>
  );
}
