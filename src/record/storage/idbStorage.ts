import { openDB, type IDBPDatabase, type IDBPTransaction } from 'idb';
import { NewerStore, Outdated, type Batch, type StoragePort } from './storagePort';

export const STORE_NAME = 'slantwise.lesson-book';

type Upgrade = (db: IDBPDatabase, transaction: IDBPTransaction<unknown, string[], 'versionchange'>) => void;

/**
 * The steps from an empty store to today's, one for each version of its layout. A step is only ever added: a store of
 * any age is brought forward by those it has not seen.
 */
export const LAYOUT: readonly Upgrade[] = [
  (db) => {
    db.createObjectStore('records', { keyPath: 'id' }).createIndex('playerId', 'playerId');
    db.createObjectStore('meta');
  },
  // Records of version 3, which a tab of an older program must not write over.
  () => {},
];

/** The book in IndexedDB. `layout` stands in for a newer program in tests. */
export function createIdbStorage(name = STORE_NAME, layout: readonly Upgrade[] = LAYOUT): StoragePort {
  let connection: Promise<IDBPDatabase> | undefined;

  const connect = (): Promise<IDBPDatabase> => {
    const opening = openDB(name, layout.length, {
      upgrade(db, from, _to, transaction) {
        for (const step of layout.slice(from)) step(db, transaction as never);
      },
      // A newer program wants to bring the store forward: stand aside, the next call reconnects or is told so.
      blocking: (_old, _new, event) => {
        (event.target as IDBDatabase).close();
        connection = undefined;
      },
      terminated: () => {
        connection = undefined;
      },
    }).catch((error: unknown) => {
      if (connection === opening) connection = undefined;
      throw nameOf(error) === 'VersionError' ? new NewerStore('A newer Slantwise has changed the lesson book.') : error;
    });
    return opening;
  };
  const db = (): Promise<IDBPDatabase> => (connection ??= connect());

  return {
    async claim() {
      const transaction = (await db()).transaction('meta', 'readwrite');
      const before: unknown = await transaction.store.get('claim');
      const claim = (typeof before === 'number' ? before : 0) + 1;
      await transaction.store.put(claim, 'claim');
      await transaction.done;
      return claim;
    },

    async load() {
      const transaction = (await db()).transaction(['records', 'meta']);
      const [records, meta] = await Promise.all([
        transaction.objectStore('records').getAll() as Promise<unknown[]>,
        transaction.objectStore('meta').get('book') as Promise<unknown>,
      ]);
      return { records, meta };
    },

    async commit(claim, { put, remove, meta }: Batch) {
      const transaction = (await db()).transaction(['records', 'meta'], 'readwrite', { durability: 'strict' });
      const [records, about] = [transaction.objectStore('records'), transaction.objectStore('meta')];
      if ((await about.get('claim')) !== claim) {
        transaction.abort();
        await transaction.done.catch(() => {});
        throw new Outdated('Another tab writes the lesson book now.');
      }
      await Promise.all([
        ...put.map((record) => records.put(record)),
        ...remove.map((id) => records.delete(id)),
        about.put(meta, 'book'),
        transaction.done,
      ]);
    },

    async readBack(ids) {
      const { store } = (await db()).transaction('records');
      return Promise.all(ids.map((id) => store.get(id) as Promise<unknown>));
    },

    async probe(word) {
      await (await db()).put('meta', word, 'probe');
      const there: unknown = await (await db()).get('meta', 'probe');
      await (await db()).delete('meta', 'probe');
      return there === word && (await (await db()).get('meta', 'probe')) === undefined;
    },

    reconnect() {
      const old = connection;
      connection = undefined;
      old?.then((open) => open.close()).catch(() => {});
    },
  };
}

const nameOf = (error: unknown): unknown =>
  typeof error === 'object' && error !== null ? (error as { name?: unknown }).name : undefined;
