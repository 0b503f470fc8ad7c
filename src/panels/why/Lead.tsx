import type { ReactNode } from 'react';
import './why.css';

/** The one sentence that leads a drawer. A screen reader hears its twin with the units written out. */
export const Lead = ({ text, spoken = text }: { text: string; spoken?: string }) => (
  <p className="why-lead">
    {spoken === text ? (
      text
    ) : (
      <>
        <span aria-hidden="true">{text}</span>
        <span className="unseen">{spoken}</span>
      </>
    )}
  </p>
);

/** Where the numbers of a drawer come from. */
export const Source = ({ children }: { children: ReactNode }) => <p className="fine why-source">{children}</p>;
