/** The worker never came up, or broke off: what was asked of it is lost, and the next question starts another. */
export class WorkerStopped extends Error {
  override readonly name = 'WorkerStopped';
}

/** A worker that is asked questions. It starts with the first one. */
export interface WorkerClient<Question, Answer> {
  /**
   * Sends a question, and what goes over with it instead of being copied; `hear` gets every answer as it comes. Settles when the work
   * is done: rejects with `WorkerStopped`, or with what the work threw (its name and message only).
   */
  ask(question: Question, hear: (answer: Answer) => void, goesOver?: Transferable[]): Promise<void>;
  /** Whether a worker is up, or on its way. */
  readonly isStarted: boolean;
  /** Ends the worker at once. What is still open is rejected with `WorkerStopped`. */
  end(): void;
}

interface Asked<Question> {
  readonly id: number;
  readonly question: Question;
}
type Said<Answer> =
  | { readonly id: number; readonly answer: Answer }
  | { readonly id: number; readonly failed?: { readonly name: string; readonly message: string } };

interface Open<Answer> {
  readonly hear: (answer: Answer) => void;
  readonly resolve: () => void;
  readonly reject: (error: Error) => void;
}

/**
 * A client of the worker that `start` makes; its script calls `serveWorker`. The constructor stands with the caller because bundlers find a
 * worker's script only by `new Worker(new URL('...', import.meta.url))`.
 */
export function createWorkerClient<Question, Answer>(start: () => Worker): WorkerClient<Question, Answer> {
  const open = new Map<number, Open<Answer>>();
  let worker: Worker | undefined;
  let count = 0;

  const end = (why = 'The worker was ended.'): void => {
    worker?.terminate();
    worker = undefined;
    for (const { reject } of open.values()) reject(new WorkerStopped(why));
    open.clear();
  };
  const listen = (started: Worker): Worker => {
    started.onmessage = ({ data }: MessageEvent<Said<Answer>>) => {
      const one = open.get(data.id);
      if (!one) return;
      if ('answer' in data) return one.hear(data.answer);
      open.delete(data.id);
      if (data.failed) one.reject(Object.assign(new Error(data.failed.message), { name: data.failed.name }));
      else one.resolve();
    };
    started.onerror = (event) => {
      event.preventDefault();
      end(event.message || 'The worker stopped.');
    };
    return started;
  };

  return {
    ask(question, hear, goesOver = []) {
      const id = count++;
      return new Promise<void>((resolve, reject) => {
        open.set(id, { hear, resolve, reject });
        worker ??= listen(start());
        worker.postMessage({ id, question } satisfies Asked<Question>, goesOver);
      });
    },
    get isStarted() {
      return worker !== undefined;
    },
    end: () => end(),
  };
}

/**
 * The other side, called once by a worker's script. `work` says its answers one by one, and what goes over with one instead of being copied; `isLast` tells it between two breaths whether a newer
 * question has come in.
 */
export function serveWorker<Question, Answer>(
  work: (
    question: Question,
    say: (answer: Answer, goesOver?: Transferable[]) => void,
    isLast: () => boolean,
  ) => void | Promise<void>,
): void {
  const post = (said: Said<Answer>, transfer: Transferable[] = []): void => self.postMessage(said, { transfer });
  let last = -1;
  self.onmessage = async ({ data: { id, question } }: MessageEvent<Asked<Question>>) => {
    last = id;
    try {
      await work(
        question,
        (answer, goesOver) => post({ id, answer }, goesOver),
        () => last === id,
      );
      post({ id });
    } catch (error) {
      const { name, message } = error instanceof Error ? error : { name: 'Error', message: String(error) };
      post({ id, failed: { name, message } });
    }
  };
}
