import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createWorkerClient, serveWorker, WorkerStopped } from '../../src/store/solver/workerClient';

type Message = { readonly data: unknown };

/** A worker in the same thread: what it is sent arrives later, as a copy. */
class NearWorker {
  onmessage: ((event: Message) => void) | null = null;
  onerror: ((event: { preventDefault: () => void; message: string }) => void) | null = null;
  terminated = false;
  readonly scope: { onmessage: ((event: Message) => void) | null } = { onmessage: null };

  /** Runs the script of a worker with a `self` of its own. */
  constructor(script: () => void) {
    vi.stubGlobal('self', {
      postMessage: (data: unknown) =>
        queueMicrotask(() => !this.terminated && this.onmessage?.({ data: structuredClone(data) })),
      set onmessage(listener: (event: Message) => void) {
        scope.onmessage = listener;
      },
    });
    const { scope } = this;
    script();
  }
  postMessage(data: unknown): void {
    queueMicrotask(() => !this.terminated && this.scope.onmessage?.({ data: structuredClone(data) }));
  }
  terminate(): void {
    this.terminated = true;
  }
}

let started: NearWorker[];
beforeEach(() => (started = []));
afterEach(() => vi.unstubAllGlobals());

function clientOf<Q, A>(script: () => void) {
  return createWorkerClient<Q, A>(() => {
    const worker = new NearWorker(script);
    started.push(worker);
    return worker as unknown as Worker;
  });
}
const countTo = () =>
  serveWorker<number, number>((to, say) => {
    if (to < 0) throw new RangeError('below zero');
    for (let i = 1; i <= to; i++) say(i);
  });

describe('a worker client', () => {
  test('starts its worker with the first question and hears every answer of each question', async () => {
    const client = clientOf<number, number>(countTo);
    expect(client.isStarted).toBe(false);
    const heard: string[] = [];
    await Promise.all([client.ask(2, (n) => heard.push(`a${n}`)), client.ask(3, (n) => heard.push(`b${n}`))]);
    expect(heard).toEqual(['a1', 'a2', 'b1', 'b2', 'b3']);
    expect(started).toHaveLength(1);
  });

  test('hands on what the work threw, and goes on working', async () => {
    const client = clientOf<number, number>(countTo);
    await expect(client.ask(-1, () => {})).rejects.toMatchObject({ name: 'RangeError', message: 'below zero' });
    const heard: number[] = [];
    await client.ask(1, (n) => heard.push(n));
    expect(heard).toEqual([1]);
    expect(started).toHaveLength(1);
  });

  test('a worker that breaks off rejects all that is open, and the next question starts another', async () => {
    const client = clientOf<number, number>(() => serveWorker(() => new Promise<void>(() => {})));
    const open = [client.ask(1, () => {}), client.ask(2, () => {})];
    const preventDefault = vi.fn();
    started[0].onerror!({ preventDefault, message: 'out of memory' });
    for (const one of open) await expect(one).rejects.toThrow(WorkerStopped);
    expect(preventDefault).toHaveBeenCalled();
    expect(started[0].terminated).toBe(true);
    expect(client.isStarted).toBe(false);
    void client.ask(3, () => {}).catch(() => {});
    expect(started).toHaveLength(2);
    client.end();
    expect(started[1].terminated).toBe(true);
  });

  test('long work sees between two breaths that a newer question has come', async () => {
    const client = clientOf<string, string>(() =>
      serveWorker<string, string>(async (name, say, isLast) => {
        for (let row = 0; row < 3; row++) {
          await new Promise((resolve) => setTimeout(resolve));
          if (!isLast()) return;
          say(`${name}${row}`);
        }
      }),
    );
    const heard: string[] = [];
    await Promise.all([client.ask('old', (said) => heard.push(said)), client.ask('new', (said) => heard.push(said))]);
    expect(heard).toEqual(['new0', 'new1', 'new2']);
  });
});
