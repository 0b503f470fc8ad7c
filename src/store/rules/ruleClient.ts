import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { MovementId } from '../../model/movements';
import { checkRule } from '../../solving/rule/checkRule';
import type { Gain } from '../../solving/rule/gains';
import type { RuleJob, RuleWork } from '../../solving/rule/ruleJobs';
import {
  BLOCK,
  createTally,
  FEWEST_MET,
  type RuleAnswer,
  type RuleCount,
  type RuleQuestion,
} from '../../solving/rule/tally';
import { SetupError } from '../../model/body';
import type { DeliveryConditions } from '../../solving/playOut';
import type { Rad } from '../../math/angle';
import { createWorkerClient, type WorkerClient } from '../solver/workerClient';

/** How a rule that is being tried, or was tried last, is doing. */
export type RuleState =
  | { readonly status: 'idle' }
  | { readonly status: 'running' | 'shrinking' | 'stopped'; readonly count: RuleCount }
  | { readonly status: 'done'; readonly answer: RuleAnswer }
  | { readonly status: 'refused'; readonly field: string; readonly message: string };

/** What a movement does to every height and club, as far as it is known. */
export interface GainsState {
  readonly gains: readonly Gain[];
  readonly isBusy: boolean;
}

const ruleState = createStore<RuleState>(() => ({ status: 'idle' }));
const gainsState = createStore<GainsState>(() => ({ gains: [], isBusy: false }));

/** How the rule is doing, for React. */
export const useRule = <T>(select: (state: RuleState) => T): T => useStore(ruleState, select);
/** The table of gains, for React. */
export const useGains = <T>(select: (state: GainsState) => T): T => useStore(gainsState, select);

/** Workers that share the trials: one for each processor, but never more than help. */
const LANES = Math.max(1, Math.min(2, typeof navigator === 'undefined' ? 1 : navigator.hardwareConcurrency || 1));
const STOPPED = 'The trials stopped by themselves. Try once more.';

type Lane = WorkerClient<RuleJob, RuleWork>;

/** Where there are no workers (tests) the work is done at once. */
function createLane(): Lane {
  if (typeof Worker !== 'undefined') {
    return createWorkerClient<RuleJob, RuleWork>(
      () => new Worker(new URL('./rule.worker.ts', import.meta.url), { type: 'module' }),
    );
  }
  // Reference swings and solvers stay with the worker: the page would load them for nothing.
  const work = import('../../solving/rule/ruleJobs').then(({ createRuleWorker }) => createRuleWorker());
  return {
    async ask(job, hear) {
      for (const answer of (await work)(job)) hear(answer);
    },
    isStarted: true,
    end() {},
  };
}

/** Tries rules in workers, and tells what movements do. */
function createRuleClient() {
  const lanes = Array.from({ length: LANES }, createLane);
  let turn = 0;

  const endAll = (): void => {
    turn++;
    for (const lane of lanes) lane.end();
  };
  /** The answer to a job: the last that its worker says. */
  async function ask(lane: Lane, job: RuleJob): Promise<RuleWork | undefined> {
    let said: RuleWork | undefined;
    await lane.ask(job, (answer) => (said = answer));
    return said;
  }

  async function run(question: RuleQuestion, mine: number): Promise<void> {
    const key = JSON.stringify([question, mine]);
    const tally = createTally(question);
    let from = 0;
    const isOver = (): boolean => mine !== turn || tally.count().isDone;
    await Promise.all(
      lanes.map(async (lane) => {
        while (!isOver()) {
          const job: RuleJob = { kind: 'block', key, question, from, count: BLOCK };
          from += BLOCK;
          const said = await ask(lane, job);
          if (mine !== turn || said?.kind !== 'block') return;
          ruleState.setState({ status: 'running', count: tally.add(said.block) }, true);
        }
      }),
    );
    if (mine !== turn) return;
    const count = tally.count();
    ruleState.setState({ status: 'shrinking', count }, true);
    const job: RuleJob = { kind: 'shrink', key, question, failures: tally.failures() };
    const said = count.met >= FEWEST_MET ? await ask(lanes[0], job) : undefined;
    if (mine !== turn) return;
    const shrunk = said?.kind === 'shrunk' ? said.shrunk : undefined;
    ruleState.setState({ status: 'done', answer: tally.answer(shrunk) }, true);
  }

  return {
    /** Tries a rule. What cannot be tried is said at once, before anything runs. */
    start(question: RuleQuestion): void {
      endAll();
      const mine = turn;
      try {
        checkRule(question.of, question.bands);
      } catch (error) {
        if (!(error instanceof SetupError)) throw error;
        ruleState.setState({ status: 'refused', field: error.field, message: error.message }, true);
        return;
      }
      ruleState.setState({ status: 'running', count: createTally(question).count() }, true);
      run(question, mine).catch(() => {
        if (mine === turn) ruleState.setState({ status: 'refused', field: '', message: STOPPED }, true);
      });
    },
    /** Stops at once; what was counted stays. */
    stop(): void {
      const now = ruleState.getState();
      endAll();
      if ('count' in now) ruleState.setState({ status: 'stopped', count: now.count }, true);
    },
    /** Forgets what was tried last. */
    clear(): void {
      endAll();
      ruleState.setState({ status: 'idle' }, true);
    },
    /** Works out what `amount` (model units) of a movement does to all heights and clubs, and to the height `own`, m. */
    gains(
      movement: MovementId,
      amount: number,
      own: number,
      conditions: DeliveryConditions & { readonly armAngle: Rad },
    ): () => void {
      const mine = ++turn;
      gainsState.setState({ gains: [], isBusy: true });
      const job: RuleJob = { kind: 'gains', movement, amount, own, conditions };
      lanes[0]
        .ask(job, (said) => {
          if (mine !== turn || said.kind !== 'gain') return;
          gainsState.setState(({ gains }) => ({ gains: [...gains, said.gain], isBusy: true }));
        })
        .catch(() => undefined)
        .finally(() => {
          if (mine === turn) gainsState.setState(({ gains }) => ({ gains, isBusy: false }));
        });
      return endAll;
    },
  };
}

/** Cache: the workers that try rules. */
export const ruleClient = createRuleClient();
