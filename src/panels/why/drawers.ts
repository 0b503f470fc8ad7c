import { preloadable } from '../loading/preloadable';

/** The drawers of why and what to change: fetched at the first quiet moment, before one is asked for. */
export const WHY = {
  ledger: preloadable(() => import('./ledger/Ledger')),
  map: preloadable(() => import('./map/CorridorMap')),
  plan: preloadable(() => import('../plan/ChangePlan')),
  seen: preloadable(() => import('../seen/Seen')),
  compare: preloadable(() => import('./Compare')),
  family: preloadable(() => import('./family/SamePicture')),
};

/** Rules of the trade: fetched when they are asked for. */
export const RULES = {
  rule: preloadable(() => import('./rule/RuleCheck')),
  gains: preloadable(() => import('./rule/Gains')),
};

/** What the model is: read seldom, and fetched with the others. */
export const ABOUT = preloadable(() => import('../shell/About'));

/** Left alone for this long, ms: long enough for the picture to come first. */
const QUIET_MS = 2500;

function prepare(): void {
  for (const { fetch } of [...Object.values(WHY), ABOUT]) fetch();
  // Costs a worker about 0.1 s once. The first coarse map takes 90 ms of processor time without it, 25 with it, and its goal is 100 ms
  // from tap to outline. Without it a drawer starts its worker itself.
  import('../../store/solver/solverClient').then(
    ({ solverClient }) => solverClient.warmUp(),
    () => undefined,
  );
}

/** Gets the drawers and their worker ready at an idle moment, and calls `onQuiet` for the rest. Answers how to call that off. */
export function getReady(onQuiet: () => void): () => void {
  const start = (): void => {
    onQuiet();
    prepare();
  };
  const quiet = setTimeout(() => {
    if (typeof requestIdleCallback === 'function') requestIdleCallback(start);
    else start();
  }, QUIET_MS);
  return () => clearTimeout(quiet);
}
