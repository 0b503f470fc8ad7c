import { beforeEach, expect, test } from 'vitest';
import { linkDesk } from '../../src/record/book/deskLink';
import type { LessonRecord } from '../../src/record/book/recordTypes';
import { desk, redo, setMovement, undo, type Document } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { setSeen, takeDialled } from '../../src/store/desk/whyActions';
import { STILL_DIALLED, type Dialled } from '../../src/store/document/document';
import { startEffects } from '../../src/store/effects/startEffects';
import { choosePlan, clearPlan, editPlan } from '../../src/store/plan/planActions';
import { createRandom } from '../reference/random';
import { createKeeper, createShelf, makeLesson, makePlayer, puts, standBook } from '../unit/record-stand';

/** How many random lessons, and how many steps each; `LESSONS=500 npm test -- lesson-apart` tries more. */
const LESSONS = Number(process.env['LESSONS'] ?? 12);
const STEPS = 30;

startEffects();
beforeEach(() => clearDesk());

/** What a lesson is about, as the test keeps it: three things, and the steps back and forward. */
type Three = Pick<Document, 'seen' | 'plan' | 'movements'>;
const three = ({ seen, plan, movements }: Document): Three => ({ seen, plan, movements });

test(`over ${LESSONS} random lessons what was seen, the plan and the desk stay apart, and the lesson is what was shown last`, async () => {
  const tried = new Set<string>();
  for (let seed = 1; seed <= LESSONS; seed++) {
    const random = createRandom(seed);
    const pick = (count: number): number => Math.floor(random() * count);
    const dials = (): Dialled => ({
      ...STILL_DIALLED,
      leadWristFlexionDeg: pick(41) - 20,
      rotationDelayMs: pick(31) - 15,
    });
    const shelf = createShelf();
    let stand = await standBook({ keeper: createKeeper(shelf) });
    let link = linkDesk(stand.book, stand.clock);
    link.start();
    const player = makePlayer();
    const lesson = makeLesson(player.id);
    stand.book.apply(puts(player, lesson));
    link.open(lesson);

    let now: Three = three(desk.getState().document);
    let [past, future]: [Three[], Three[]] = [[], []];
    const expectThree = (what: string): void =>
      expect(three(desk.getState().document), `seed ${seed}, ${what}`).toEqual(now);
    /** One undo step that may change nothing but `part`. */
    const step = <K extends keyof Three>(part: K, act: () => void): void => {
      act();
      const next = desk.getState().document[part];
      if (JSON.stringify(next) !== JSON.stringify(now[part])) {
        [past, future] = [[...past, now], []];
        now = { ...now, [part]: next };
      }
    };
    const acts: Record<string, () => void | Promise<void>> = {
      see: () =>
        step('seen', () =>
          setSeen(pick(2) ? 'leadArmParallel' : 'shaftParallel', {
            cm: pick(30) - 10,
            plusMinusCm: 1 + pick(4),
            from: 'typed',
          }),
        ),
      forget: () => step('seen', () => setSeen('leadArmParallel', null)),
      choose: () =>
        step('plan', () =>
          choosePlan(
            { from: dials(), movements: dials(), targetCm: { leadArmParallel: pick(9), shaftParallel: null } },
            `plan${seed}x${String(pick(1e6)).padStart(10, '0')}`,
          ),
        ),
      word: () => step('plan', () => editPlan('Own words', { words: `word ${pick(1000)}` })),
      clear: () => step('plan', clearPlan),
      apply: () => step('movements', () => takeDialled('Use this swing', dials())),
      dial: () => step('movements', () => setMovement('leadWristFlexion', pick(41) - 20)),
      undo: () => {
        undo();
        const last = past.pop();
        if (last) [future, now] = [[now, ...future], last];
      },
      redo: () => {
        redo();
        const [next, ...rest] = future;
        if (next) [past, now, future] = [[...past, now], next, rest];
      },
      save: async () => {
        await stand.clock.go(400);
        const kept = stand.book.state.getState().records.get(lesson.id) as LessonRecord;
        expect(three(kept.now), `seed ${seed}, saved`).toEqual(now);
      },
      reopen: async () => {
        // As a page that is left does.
        link.follow();
        await stand.book.flush();
        clearDesk();
        stand = await standBook({ keeper: createKeeper(shelf), starts: false });
        link = linkDesk(stand.book, stand.clock);
        link.start();
        stand.book.start();
        await stand.clock.go(100);
        expect(link.openLesson()?.id).toBe(lesson.id);
        // Steps are kept with the desk, not with the lesson.
        [past, future] = [[], []];
      },
    };
    const names = Object.keys(acts);
    for (let at = 0; at < STEPS; at++) {
      const name = names[pick(names.length)];
      await acts[name]();
      tried.add(name);
      expectThree(name);
    }
    await acts['save']();
    link.close();
  }
  expect([...tried].toSorted()).toEqual([
    'apply',
    'choose',
    'clear',
    'dial',
    'forget',
    'redo',
    'reopen',
    'save',
    'see',
    'undo',
    'word',
  ]);
}, 120_000);
