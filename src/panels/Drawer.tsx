import { lazy, Suspense, useEffect, useRef } from 'react';
import { releaseBench, setDrawer, useDesk, type DrawerId } from '../store';
import { About } from './About';
import { Ball } from './Ball';
import { DRAWERS } from './Bar';
import { SetUp } from './SetUp';

const JointsBench = lazy(() => import('./JointsBench'));
const LessonBook = lazy(() => import('./lessons/LessonBook'));
const Showing = lazy(() => import('./showing/Showing'));
const Ledger = lazy(() => import('./why/Ledger'));
const CorridorMap = lazy(() => import('./why/CorridorMap'));
const ChangePlan = lazy(() => import('./why/ChangePlan'));
const Seen = lazy(() => import('./why/Seen'));
const Compare = lazy(() => import('./why/Compare'));

/** Drawings that belong to drawers, made by who wires the board: panels draw none. */
export interface DrawerProps {
  readonly ballDrawings: React.ReactNode;
  /** Both plates of two compared swings, side by side. */
  readonly pairDrawings: React.ReactNode;
}

const CONTENT: Record<DrawerId, (props: DrawerProps) => React.ReactNode> = {
  setUp: () => <SetUp />,
  ball: ({ ballDrawings }) => <Ball drawings={ballDrawings} />,
  joints: () => (
    <Suspense fallback={<p>Fetching the bench …</p>}>
      <JointsBench />
    </Suspense>
  ),
  lessons: () => (
    <Suspense fallback={<p>Fetching the lesson book …</p>}>
      <LessonBook />
    </Suspense>
  ),
  clip: () => (
    <Suspense fallback={<p>Fetching the clip maker …</p>}>
      <Showing />
    </Suspense>
  ),
  about: () => <About />,
  ledger: () => later(<Ledger />),
  map: () => later(<CorridorMap />),
  plan: () => later(<ChangePlan />),
  seen: () => later(<Seen />),
  compare: ({ pairDrawings }) => later(<Compare drawings={pairDrawings} />),
};

const later = (drawer: React.ReactNode): React.ReactNode => <Suspense fallback={<p>Opening …</p>}>{drawer}</Suspense>;

/** The bench lets go of the figure. */
function Release() {
  const bent = useDesk(({ session }) => session.bench !== null);
  return (
    <button type="button" className="text-button drawer-release" aria-disabled={!bent} onClick={releaseBench}>
      Release
    </button>
  );
}

function close(id: DrawerId): void {
  setDrawer(null);
  const tab = document.getElementById(`tab-${id}`);
  (tab?.checkVisibility() ? tab : document.getElementById('tab-more'))?.focus();
}

/** The open drawer. Its tab gets the focus back when it closes. */
export function Drawer(props: DrawerProps) {
  const open = useDesk(({ session }) => session.drawer);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (!open) return undefined;
    heading.current?.focus();
    const onEscape = (event: KeyboardEvent): void => {
      const inside = event.target instanceof Element && event.target.closest('#drawer');
      if (event.key === 'Escape' && inside) close(open);
    };
    document.addEventListener('keydown', onEscape);
    return () => document.removeEventListener('keydown', onEscape);
  }, [open]);
  if (!open) return null;

  const { title } = DRAWERS.find(({ id }) => id === open)!;
  return (
    <section id="drawer" className="drawer" data-drawer={open} aria-labelledby="drawer-title">
      <div className="drawer-head">
        <h2 id="drawer-title" ref={heading} tabIndex={-1}>
          {title}
        </h2>
        {open === 'joints' && <Release />}
        <button type="button" className="text-button" onClick={() => close(open)}>
          Close
        </button>
      </div>
      {/* Some drawers hold nothing to land on: the keyboard scrolls the sheet itself. */}
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex */}
      <div className="drawer-body" tabIndex={0}>
        {CONTENT[open](props)}
      </div>
    </section>
  );
}
