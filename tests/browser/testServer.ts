import { createServer, type Server } from 'node:http';
import { inject } from 'vitest';

/** A server of one's own before the built app: it can go away and come back, and it can bring a new version. */
export interface Relay {
  readonly address: string;
  /** From now on the worker's file is a different one, as after an update. */
  update(): void;
  /** Gone: what is being answered is answered, then every connection is cut, and whoever asks is refused. */
  close(): Promise<void>;
  /** There again, under the same address. */
  reopen(): Promise<void>;
}

/** Passes everything on to the built app. */
export async function openRelay(): Promise<Relay> {
  const app = inject('address');
  let version = 1;
  const inHand = new Set<Promise<unknown>>();
  const server: Server = createServer((request, response) => {
    const answered = new Promise<void>((resolve) => response.once('close', resolve));
    inHand.add(answered);
    void answered.then(() => inHand.delete(answered));
    const target = new URL(request.url ?? '/', app);
    fetch(target)
      .then(async (answer) => {
        let body = Buffer.from(await answer.arrayBuffer());
        if (target.pathname.endsWith('/sw.js')) body = Buffer.concat([body, Buffer.from(`\n// ${version}\n`)]);
        response.writeHead(answer.status, {
          'content-type': answer.headers.get('content-type') ?? 'application/octet-stream',
          'cache-control': 'no-store',
        });
        response.end(body);
      })
      .catch(() => response.destroy());
  });
  const listen = (port: number): Promise<void> => new Promise((resolve) => server.listen(port, 'localhost', resolve));
  await listen(0);
  const place = server.address();
  if (place === null || typeof place === 'string') throw new Error('The relay has no port.');
  return {
    address: `http://localhost:${place.port}${new URL(app).pathname}`,
    update() {
      version++;
    },
    async close() {
      const closed = new Promise((resolve) => server.close(resolve));
      while (inHand.size > 0) await Promise.all(inHand);
      server.closeAllConnections();
      await closed;
    },
    reopen: () => listen(place.port),
  };
}
