import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './look/fonts.css';
import './look/tokens.css';

createRoot(document.getElementById('app')!).render(
  <StrictMode>
    <main>
      <h1>Slantwise</h1>
    </main>
  </StrictMode>,
);
