import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { Rad } from '../../math/angle';
import { DEFAULT_ARM_ANGLE, isReached, type Checkpoints } from '../../reading/checkpoints';
import { MOVEMENT_GROUPS, STILL, type Movements } from '../../model/movements';
import { withMovements, type Swing } from '../../reading/swing';
import { DEFAULT_BANDS, judgedReading, type Bands } from '../../reading/verdicts';
import type { Sightings } from '../../solving/diagnosis/verdictShare';
import { work, type Answer, type Job } from '../../solving/diagnosis/solverJobs';
import { createWorkerClient } from './workerClient';
import { toArmAngle, toFaceReturned, toMovements, toWeather } from '../document/convert';
import { noteAnswered, noteAsked } from './answering';
import { derive, desk, honestSeenOf, subscribe } from '../desk/desk';
import type { HonestSeen } from '../derive/honestSeen';
import type { Derived } from '../derive/derived';
import { USUAL_GIVE_CM } from '../document/sighting';
import type { DeskState } from '../desk/state';

/** The last answer of each kind, and whether a newer one is on its way. */
export interface Asked {
  readonly answer: Answer | null;
  readonly isBusy: boolean;
}
const asked = createStore<Asked>(() => ({ answer: null, isBusy: false }));

/** The answer to what the open drawer asks, for React. */
export const useAsked = <T>(select: (asked: Asked) => T): T => useStore(asked, select);
/**
 * The answer to what the open drawer asks, at this moment.
 * @internal Components subscribe with `useAsked`; tests have no component.
 */
export const askedNow = (): Asked => asked.getState();

/** What an answer depends on; the job is put together only when one of these has changed. */
interface Question {
  readonly key: readonly unknown[];
  readonly job: () => Job;
}

const give = (seen: HonestSeen, id: 'leadArmParallel' | 'shaftParallel'): number =>
  (seen[id]?.plusMinusCm ?? USUAL_GIVE_CM) / 100;

function mapQuestion({ document, session }: DeskState, reference: Swing, bands: Bands): Question {
  const { x, y } = session.why;
  const movements = toMovements(document.movements);
  const armAngle = toArmAngle(document);
  // The two movements on the sides take every value anyway: moving them asks nothing new.
  const rest: Movements = { ...movements, [x]: STILL[x], [y]: STILL[y] };
  return {
    key: ['map', reference, x, y, armAngle, JSON.stringify(rest)],
    // Bands that move are drawn anew from the readings that are there: they ask nothing.
    job: () => ({ kind: 'map', swing: withMovements(reference, rest), x, y, bands, armAngle }),
  };
}

function planQuestion(state: DeskState, { referenceSwing, exactBands, player }: Derived): Question {
  const { document, session } = state;
  const { locked, aim } = session.why;
  const { movements, ball } = document;
  const seen = honestSeenOf(state);
  const armAngle = toArmAngle(document);
  return {
    key: ['plan', referenceSwing, movements, seen, exactBands, armAngle, locked, aim, ball, player],
    job: () => ({
      kind: 'plan',
      swing: withMovements(referenceSwing, toMovements(movements)),
      reference: referenceSwing,
      allow: MOVEMENT_GROUPS.filter((group) => !locked.includes(group)),
      bands: exactBands,
      armAngle,
      aim,
      doubt: { leadArmParallel: give(seen, 'leadArmParallel'), shaftParallel: give(seen, 'shaftParallel') },
      rule: ball.rule,
      faceReturned: toFaceReturned(ball),
      weather: toWeather(ball, player),
    }),
  };
}

/** The marks in metres. */
function toSightings({ leadArmParallel: arm, shaftParallel: shaft }: HonestSeen): Sightings {
  const toMetres = ({ cm, plusMinusCm }: { cm: number; plusMinusCm: number }) => ({
    value: cm / 100,
    plusMinus: plusMinusCm / 100,
  });
  return {
    ...(arm && { leadArmParallel: toMetres(arm) }),
    ...(shaft && { shaftParallel: toMetres(shaft) }),
  };
}

/** Asks what would look like marks; undefined without any. `swing`: the reference swing of whoever was seen. */
export function toMatchJob(seen: HonestSeen, swing: Swing, bands: Bands, armAngle: Rad): Job | undefined {
  if (!seen.leadArmParallel && !seen.shaftParallel) return undefined;
  return { kind: 'match', swing, from: STILL, seen: toSightings(seen), bands, armAngle };
}

function matchQuestion(state: DeskState, { referenceSwing, exactBands }: Derived): Question | undefined {
  const seen = honestSeenOf(state);
  const armAngle = toArmAngle(state.document);
  const job = toMatchJob(seen, referenceSwing, exactBands, armAngle);
  return job && { key: ['match', referenceSwing, seen, exactBands, armAngle], job: () => job };
}

/** What the coach marked; without a mark, the picture that the swing on the desk gives. */
function familyQuestion(state: DeskState, { referenceSwing, checkpoints }: Derived): Question | undefined {
  const armAngle = toArmAngle(state.document);
  const marks = toSightings(honestSeenOf(state));
  const seen = Object.keys(marks).length > 0 ? marks : pictureOf(checkpoints);
  if (Object.keys(seen).length === 0) return undefined;
  const { rule } = state.document.ball;
  const faceReturned = toFaceReturned(state.document.ball);
  return {
    key: ['family', referenceSwing, JSON.stringify(seen), armAngle, rule, faceReturned],
    job: () => ({ kind: 'family', swing: referenceSwing, seen, armAngle, rule, faceReturned }),
  };
}

function pictureOf(checkpoints: Checkpoints): Sightings {
  const seen: { -readonly [id in keyof Sightings]: Sightings[id] } = {};
  for (const id of CHECKPOINT_IDS) {
    const read = checkpoints[id];
    if (isReached(read)) seen[id] = { value: judgedReading(id, read), plusMinus: USUAL_GIVE_CM / 100 };
  }
  return seen;
}

/** What the open drawer wants to know. */
function questionOf(state: DeskState): Question | undefined {
  const { drawer } = state.session;
  const { referenceSwing, exactBands } = derive(state);
  if (drawer === 'map') return mapQuestion(state, referenceSwing, exactBands);
  if (drawer === 'plan') return planQuestion(state, derive(state));
  if (drawer === 'seen') return matchQuestion(state, derive(state));
  if (drawer === 'family') return familyQuestion(state, derive(state));
  return undefined;
}

const same = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((part, i) => part === b[i]);

const BROKE_OFF = 'The search stopped. Leave this page and come back to try again.';
const STOPPED = 'The search stopped. Move a slider to try again.';

/** Answers what the open drawer asks. */
interface SolverClient {
  /** Answers from now on. Answers how to end that. */
  follow(): () => void;
  /** Answers one question beside what the drawer asks. */
  answerOnce(job: Job): Promise<Answer>;
  /**
   * Gets the worker ready before it is needed: it loads, and runs a map of its own until the model is at its full pace. Its
   * answer is nobody's.
   */
  warmUp(): void;
}

function createSolverClient(): SolverClient {
  const worker = createWorkerClient<Job, Answer>(
    () => new Worker(new URL('./solver.worker.ts', import.meta.url), { type: 'module' }),
  );
  let lastKey: readonly unknown[] = [];
  let number = 0;

  /** Where there are no workers (tests, command line) the answer comes at once. */
  const answer = (job: Job): void => {
    if (typeof Worker === 'undefined') {
      for (const one of work(job)) if (one) asked.setState({ answer: one });
      asked.setState({ isBusy: false });
      return;
    }
    const mine = number;
    noteAsked();
    const hear = (one: Answer, isBusy: boolean): void => {
      if (mine !== number) return;
      asked.setState({ answer: one, isBusy });
      noteAnswered();
    };
    worker
      .ask(job, (one) => hear(one, one.kind === 'map' && !one.isFine))
      .catch(() => hear({ kind: 'refused', message: STOPPED }, false));
  };

  const ask = (): void => {
    const question = questionOf(desk.getState());
    if (!question) {
      if (lastKey.length > 0) asked.setState({ answer: null, isBusy: false });
      lastKey = [];
      number++;
      noteAnswered();
      return;
    }
    const { key } = question;
    if (same(key, lastKey)) return;
    const isAnother = key[0] !== lastKey[0] || key[2] !== lastKey[2] || key[3] !== lastKey[3];
    lastKey = key;
    number++;
    // A map of other movements is no help while its own is on the way.
    const isStale = key[0] === 'map' ? isAnother : key[0] !== asked.getState().answer?.kind;
    asked.setState({ answer: isStale ? null : asked.getState().answer, isBusy: true });
    answer(question.job());
  };

  return {
    follow() {
      ask();
      return subscribe(ask);
    },
    async answerOnce(job) {
      let last: Answer = { kind: 'refused', message: BROKE_OFF };
      if (typeof Worker === 'undefined') for (const one of work(job)) last = one ?? last;
      else await worker.ask(job, (one) => (last = one)).catch(() => {});
      return last;
    },
    warmUp() {
      if (worker.isStarted || typeof Worker === 'undefined') return;
      const { referenceSwing } = derive(desk.getState());
      const { x, y } = desk.getState().session.why;
      const job: Job = { kind: 'warm', swing: referenceSwing, x, y, bands: DEFAULT_BANDS, armAngle: DEFAULT_ARM_ANGLE };
      worker.ask(job, () => {}).catch(() => {});
    },
  };
}

/** Cache: the worker of the drawers, and the question it is at. */
export const solverClient = createSolverClient();
