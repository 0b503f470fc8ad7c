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
import { openDoors } from './export/doors';
import { Mishap } from './panels';
import { offline, startBook } from './record';
import { exposeProbe, startDesk } from './store';

startDesk();
startBook();
if (import.meta.env.PROD) offline.start();
exposeProbe();
openDoors();

createRoot(document.getElementById('app')!).render(
  <StrictMode>
    <Mishap>
      <App />
    </Mishap>
  </StrictMode>,
);
