import { deskLink } from '../../record';
import { desk, setDrawer, type DrawerId } from '../../store';
import { goTo } from './navigation';

/** The steps of a lesson, in their order. Any can be left out. */
export type LessonStep = 'seen' | 'ledger' | 'plan' | 'clip' | 'lessons';

const NEXT: Readonly<Record<LessonStep, { readonly to: DrawerId; readonly text: string }>> = {
  lessons: { to: 'seen', text: 'Next: what causes it' },
  seen: { to: 'ledger', text: 'Next: why' },
  ledger: { to: 'plan', text: 'Next: what to change' },
  plan: { to: 'clip', text: 'Next: show and send' },
  clip: { to: 'lessons', text: 'Next: save the lesson' },
};

/** Leads from one step of a lesson to the next. */
export function NextStep({ from }: { from: LessonStep }) {
  const { to, text } = NEXT[from];
  const go = (): void => {
    const open = deskLink.openLesson();
    if (to === 'lessons' && open) goTo({ page: 'lesson', id: open.id });
    if (desk.getState().session.drawer !== to) setDrawer(to);
  };
  return (
    <p className="next-step">
      <button type="button" className="plain" onClick={go}>
        {text}
      </button>
    </p>
  );
}
