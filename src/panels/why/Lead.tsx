import type { ReactNode } from 'react';
import { useDerived } from '../../store';
import { ForStudent } from '../shell/student/ForStudent';
import { NUMBERS_NOT_EXAGGERATED } from '../../words/why/why';
import './why.css';

/** Heads a drawer whose numbers are never doubled, while those on the plates beside it are. */
export function AsItIs() {
  const isDoubled = useDerived(({ exaggerated }) => exaggerated);
  return isDoubled && <p className="fine why-as-it-is">{NUMBERS_NOT_EXAGGERATED}</p>;
}

/** The one sentence that leads a drawer. A screen reader hears its twin with the units written out. */
export function Lead({ text, spoken = text, isPrivate = false }: LeadProps) {
  const sentence = (
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
  return isPrivate ? sentence : <ForStudent>{sentence}</ForStudent>;
}

interface LeadProps {
  readonly text: string;
  readonly spoken?: string;
  /** May hold a name: never stands before a student. */
  readonly isPrivate?: boolean;
}

/** Where the numbers of a drawer come from. */
export const Source = ({ children }: { children: ReactNode }) => <p className="fine why-source">{children}</p>;
