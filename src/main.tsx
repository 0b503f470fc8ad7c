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

let broken: { readonly error: unknown } | undefined;
for (const start of [
  startDesk,
  startBook,
  () => import.meta.env.PROD && offline.start(),
  exposeProbe,
  acceptIncomingLinks,
]) {
  try {
    start();
  } catch (error) {
    broken ??= { error };
  }
}

createRoot(document.getElementById('app')!).render(
  <StrictMode>
    <ErrorBoundary>{broken ? <Broken {...broken} /> : <App />}</ErrorBoundary>
  </StrictMode>,
);
