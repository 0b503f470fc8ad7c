import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import { releaseBench, setDrawer, useDerived, useDesk, type DrawerId } from '../../store';
import { sayWhyWithheld } from '../../words';
import { sayFetching } from '../../words/showing/errorMessages';
import { GUESS_WAITS } from '../../words/why/guess';
import { preloadable } from '../loading/preloadable';
import { DRAWERS, tabOf } from './Bar';
import { loadingChunk } from '../../store/react/chunkLoadError';
import { ErrorBoundary } from '../loading/ErrorBoundary';
import { CAMERA } from '../player/camera';
import { Notice } from './StageNotices';
import { ABOUT, getReady, RULES, WHY } from '../why/drawers';

/** No part of the first picture: fetched when it is quiet, or asked for. */
const SET_UP = preloadable(async () => ({ default: (await import('../player/SetUp')).SetUp }));
const BALL = preloadable(async () => ({ default: (await import('../ball/Ball')).Ball }));
const JointsBench = lazy(loadingChunk(() => import('../pose/JointsBench')));
const LessonBook = lazy(loadingChunk(() => import('../lessons/LessonBook')));
const Showing = lazy(loadingChunk(() => import('../showing/Showing')));
/** Drawings that belong to drawers, made by who wires the board: panels draw none. */
interface DrawerProps {
  readonly ballDrawings: React.ReactNode;
  /** Both plates of two compared swings, side by side. */
  readonly pairDrawings: React.ReactNode;
  /** Small plates of bodies that give one picture; the chosen one is marked. */
  readonly familyDrawings: (chosen: number) => React.ReactNode;
  /** Called at the first quiet moment: these drawings, and what else can wait, are fetched then. */
  readonly onQuiet: () => void;
}

const CONTENT: Record<DrawerId, (props: DrawerProps) => React.ReactNode> = {
  setUp: () => <SET_UP.Part />,
  ball: ({ ballDrawings }) => <BALL.Part drawings={ballDrawings} />,
  joints: () => (
    <Suspense fallback={<p>{sayFetching('bench')}</p>}>
      <JointsBench />
    </Suspense>
  ),
  lessons: () => (
    <Suspense fallback={<p>{sayFetching('lesson book')}</p>}>
      <LessonBook />
    </Suspense>
  ),
  clip: () => (
    <Suspense fallback={<p>{sayFetching('clip maker')}</p>}>
      <Showing />
    </Suspense>
  ),
  about: () => <ABOUT.Part />,
  ledger: () => <WHY.ledger.Part />,
  map: () => <WHY.map.Part />,
  plan: () => <WHY.plan.Part />,
  seen: () => <WHY.seen.Part />,
  compare: ({ pairDrawings }) => <WHY.compare.Part drawings={pairDrawings} />,
  family: ({ familyDrawings }) => <WHY.family.Part drawings={familyDrawings} />,
  rule: () => <RULES.rule.Part />,
  gains: () => <RULES.gains.Part />,
};

/** What these hold speaks of the swing on the desk. */
const OF_THE_SWING: ReadonlySet<DrawerId> = new Set([
  'ball',
  'clip',
  'ledger',
  'map',
  'plan',
  'seen',
  'compare',
  'family',
] as const);

/** The content of a drawer; of a swing that was not found, only why. What is typed or made in it waits, and is not lost. */
function Content({ id, ...props }: DrawerProps & { id: DrawerId }) {
  const isGuessed = useDesk(({ session }) => session.guess?.stage === 'open');
  const missing = useDerived((of) => (of.isWithheld && OF_THE_SWING.has(id) ? sayWhyWithheld(of) : undefined));
  const withheld = missing ?? (isGuessed && OF_THE_SWING.has(id) ? GUESS_WAITS : undefined);
  // What never was in sight asks for nothing.
  const [isBegun, setBegun] = useState(false);
  if (withheld === undefined && !isBegun) setBegun(true);
  return (
    <>
      {withheld !== undefined && <p>{withheld}</p>}
      {isBegun && <div style={{ display: withheld === undefined ? 'contents' : 'none' }}>{CONTENT[id](props)}</div>}
    </>
  );
}

/** The bench lets go of the figure. */
function Release() {
  const bent = useDesk(({ session }) => session.bench !== null);
  return (
    <button type="button" className="text-button drawer-release" aria-disabled={!bent} onClick={releaseBench}>
      Back to swing
    </button>
  );
}

function close(id: DrawerId): void {
  setDrawer(null);
  const tabs = [`tab-${tabOf(id)}`, 'tab-more', 'bar-more'].map((name) => document.getElementById(name));
  tabs.find((tab) => tab?.checkVisibility())?.focus();
}

/** The drawers that share a tab, one beside the other. */
function Parts({ open }: { open: DrawerId }) {
  const parts = DRAWERS.filter(({ part }) => part?.of === tabOf(open));
  if (parts.length === 0) return null;
  return (
    <nav className="drawer-parts" aria-label={DRAWERS.find(({ id }) => id === tabOf(open))!.tab}>
      {parts.map(({ id, part }) => (
        <button
          key={id}
          type="button"
          id={`part-${id}`}
          aria-current={open === id}
          onClick={() => {
            if (open !== id) setDrawer(id);
          }}
        >
          {part?.name}
        </button>
      ))}
    </nav>
  );
}

/** The open drawer. Its tab gets the focus back when it closes. */
export function Drawer(props: DrawerProps) {
  const { onQuiet } = props;
  useEffect(
    () =>
      getReady(() => {
        for (const part of [SET_UP, BALL, CAMERA]) part.fetch();
        onQuiet();
      }),
    [onQuiet],
  );
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
      <Parts open={open} />
      {/* On some screens the drawer covers the stage, where it stands otherwise. The bench leaves the stage alone. */}
      {open !== 'joints' && <Notice />}
      {/* Some drawers hold nothing to land on: the keyboard scrolls the sheet itself. */}
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex */}
      <div className="drawer-body" tabIndex={0} key={`body ${open}`}>
        {/* What cannot be fetched takes nothing else along. */}
        <ErrorBoundary key={open} part="This drawer">
          <Content id={open} {...props} />
        </ErrorBoundary>
      </div>
    </section>
  );
}
