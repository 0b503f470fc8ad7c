import { useLayoutEffect, useState, type ReactNode } from 'react';
import { createPortal } from 'react-dom';
import { useDesk } from '../../store';

/** Where the sentence of the open drawer stands in large type while a student looks on. */
export const STUDENT_SLOT_ID = 'student-slot';

/** A drawer's leading sentence: in its place, or before the student, who sees nothing else of the drawer. */
export function ForStudent({ children }: { children: ReactNode }) {
  const isOn = useDesk(({ session }) => session.student);
  const [slot, setSlot] = useState<HTMLElement | null>(null);
  // The slot comes into the page in the same commit.
  useLayoutEffect(() => setSlot(isOn ? document.getElementById(STUDENT_SLOT_ID) : null), [isOn]);
  return slot === null ? children : createPortal(children, slot);
}
