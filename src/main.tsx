import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './look/fonts.css';
import './look/tokens.css';
import './look/base.css';
import './look/desk.css';
import './look/bar.css';
import './look/movements.css';
import './look/time.css';
import './look/drawer.css';
import { App } from './App';
import { acceptIncomingLinks } from './export/link/incomingLinks';
import { ErrorBoundary } from './panels';
import { offline, startBook } from './record';
import { exposeProbe, startDesk } from './store';

/** What breaks before the first picture is shown like anything that breaks later, with the way to save everything. */
function Broken({ error }: { error: unknown }): never {
  throw error;
}

/** Starts everything, also when one start fails; the first failure comes back. */
function startAll(starts: readonly (() => unknown)[]): { readonly error: unknown } | undefined {
  const failures: { readonly error: unknown }[] = [];
  for (const start of starts) {
    try {
      start();
    } catch (error) {
      failures.push({ error });
    }
  }
  return failures[0];
}

const broken = startAll([
  startDesk,
  startBook,
  () => import.meta.env.PROD && offline.start(),
  exposeProbe,
  acceptIncomingLinks,
]);

createRoot(document.getElementById('app')!).render(
  <StrictMode>
    <ErrorBoundary>{broken ? <Broken {...broken} /> : <App />}</ErrorBoundary>
  </StrictMode>,
);
