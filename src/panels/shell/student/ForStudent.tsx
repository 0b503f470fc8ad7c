import { createContext, useContext, type ReactNode } from 'react';
import { createPortal } from 'react-dom';

/** Where the sentence of the open drawer stands in large type while a student looks on; null while none does. */
export const StudentSlot = createContext<HTMLElement | null>(null);

/** A drawer's leading sentence: in its place, or before the student, who sees nothing else of the drawer. */
export function ForStudent({ children }: { children: ReactNode }) {
  const slot = useContext(StudentSlot);
  return slot === null ? children : createPortal(children, slot);
}
