import { beforeEach, describe, expect, test } from 'vitest';
import { createOffline } from '../../src/record/storage/offline';

const log: string[] = [];
beforeEach(() => {
  log.length = 0;
});

/** The worker of a new version, as the browser shows it to the page. */
class NewWorker extends EventTarget {
  postMessage(message: unknown): void {
    log.push(JSON.stringify(message));
  }
}
class Registration extends EventTarget {
  installing: NewWorker | null = null;
  waiting: NewWorker | null = null;
  update(): Promise<void> {
    return Promise.resolve();
  }
  /** A new version is found, fetched and put in the wings. */
  bring(): void {
    const worker = new NewWorker();
    this.installing = worker;
    this.dispatchEvent(new Event('updatefound'));
    [this.installing, this.waiting] = [null, worker];
    worker.dispatchEvent(new Event('statechange'));
  }
}
class Container extends EventTarget {
  readonly registration = new Registration();
  constructor(public controller: object | null) {
    super();
  }
  register(): Promise<Registration> {
    return Promise.resolve(this.registration);
  }
}

async function start({ controlled = true, offline = false } = {}) {
  const lesson = { isOpen: false };
  const container = new Container(controlled ? {} : null);
  if (offline) container.register = () => Promise.reject(new Error('no network'));
  const program = createOffline(
    container as unknown as ServiceWorkerContainer,
    () => 'sw.js',
    () => lesson.isOpen,
    () => Promise.resolve(log.push('saved')),
    () => log.push('started again'),
  );
  const offers: boolean[] = [];
  program.listen(() => offers.push(program.isReady()));
  program.start();
  await new Promise((resolve) => setTimeout(resolve));
  return { lesson, container, program, offers };
}

describe('a new version', () => {
  test('is offered when it lies ready, and not before', async () => {
    const { container, program, offers } = await start();
    expect(program.isReady()).toBe(false);
    container.registration.bring();
    expect(program.isReady()).toBe(true);
    expect(offers).toEqual([true]);
  });

  test('is not taken while a lesson is open, whoever presses what', async () => {
    const { lesson, container, program } = await start();
    container.registration.bring();
    lesson.isOpen = true;
    expect(await program.take()).toBe(false);
    expect(log).toEqual([]);
    lesson.isOpen = false;
    expect(await program.take()).toBe(true);
    expect(log).toEqual(['saved', '{"type":"SKIP_WAITING"}']);
  });

  test('starts the page again once it is in charge, after everything was saved', async () => {
    const { container } = await start();
    container.dispatchEvent(new Event('controllerchange'));
    await new Promise((resolve) => setTimeout(resolve));
    expect(log).toEqual(['saved', 'started again']);
  });

  test('is not there on the first visit: the first worker takes the page without starting it again', async () => {
    const { container, program } = await start({ controlled: false });
    container.dispatchEvent(new Event('controllerchange'));
    await new Promise((resolve) => setTimeout(resolve));
    expect(log).toEqual([]);
    expect(await program.take()).toBe(false);
  });
});

test('without a worker the program runs and offers nothing', async () => {
  const { program } = await start({ offline: true });
  expect(program.isReady()).toBe(false);
  expect(await program.take()).toBe(false);
});
