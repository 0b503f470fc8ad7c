import { afterEach, describe, expect, test, vi } from 'vitest';
import { createBaseSwings } from '../../src/store/derive/baseSwings';
import { createCompare, createGhostClock } from '../../src/store/derive/compare';
import { createDeriver } from '../../src/store/derive/deriver';
import { createLedger } from '../../src/store/derive/ledger';
import { NO_REFERENCES, referenceKey, type References } from '../../src/store/derive/references';
import { createCameraReader } from '../../src/store/derive/throughCameras';
import { FRESH_DESK, type DeskState } from '../../src/store/desk/state';
import { toBodyAndClub } from '../../src/store/document/convert';
import { DEFAULT_DOCUMENT, STILL_DIALLED, type Document } from '../../src/store/document/document';
import { solveReference } from '../../src/solving/reference/reference';

/** Freezes everything a state holds. Typed arrays cannot be frozen; their contents are compared instead. */
function freezeAll<T>(value: T): T {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value) || Object.isFrozen(value)) return value;
  Object.freeze(value);
  const inside: readonly unknown[] = value instanceof Map ? [...value.values()] : Object.values(value);
  for (const one of inside) freezeAll(one);
  return value;
}

// Nobody may be asked while a state is looked at: a worker that starts, a clock, a request or a storage is an error.
const asked = vi.fn();
class Refused {
  constructor() {
    asked();
    throw new Error('A selector asked for something.');
  }
}
vi.stubGlobal('Worker', Refused);
for (const name of [
  'setTimeout',
  'setInterval',
  'requestAnimationFrame',
  'requestIdleCallback',
  'fetch',
  'queueMicrotask',
])
  vi.stubGlobal(name, () => new Refused());
afterEach(() => expect(asked).not.toHaveBeenCalled());

const NOT_SHIPPED: Document['player'] = { statureM: 1.765, handed: 'right' };
const { body, club } = toBodyAndClub({ player: NOT_SHIPPED, club: DEFAULT_DOCUMENT.club });
const FOUND: References = new Map([[referenceKey(body, club), solveReference(body, club)]]);

const cupped: Document = {
  ...DEFAULT_DOCUMENT,
  movements: { ...STILL_DIALLED, leadWristFlexionDeg: -16, rotationRate: 1.06 },
};
const tall: Document = { ...cupped, player: NOT_SHIPPED };
const onDesk = (document: Document, more: Partial<DeskState> = {}): DeskState => ({ ...FRESH_DESK, document, ...more });
const comparing = (state: DeskState): DeskState => ({
  ...state,
  session: {
    ...state.session,
    drawer: 'compare',
    why: { ...state.session.why, solid: 'now', ghost: 'situation cupped' },
  },
});

const STATES: readonly (readonly [string, DeskState])[] = [
  ['a fresh desk', FRESH_DESK],
  ['a cupped swing', onDesk(cupped)],
  ['a ghost, doubled', onDesk(cupped, { session: { ...FRESH_DESK.session, ghost: STILL_DIALLED, exaggerate: true } })],
  ['two swings compared', comparing(onDesk(cupped))],
  ['a player whose swing was found', onDesk(tall, { references: FOUND })],
  ['a player whose swing is being found', onDesk(tall)],
  [
    'a player whose swing was not found',
    onDesk(tall, { references: new Map([[referenceKey(body, club), { failed: 'No swing meets the ball.' }]]) }),
  ],
  ['a set-up that cannot be', onDesk({ ...tall, player: { statureM: 9, handed: 'right' } })],
];

/** Everything that is worked out from a state, by caches of its own. */
function lookAtAll(state: DeskState) {
  const bases = createBaseSwings();
  const { derive, poseOf, jointsOf } = createDeriver(bases);
  return () => ({
    derived: derive(state),
    joints: Array.from(jointsOf(state)),
    pose: Array.from(poseOf(state)),
    cameras: createCameraReader(derive)(state),
    ghostTime: createGhostClock(derive)(state),
    compared: createCompare(bases)(state),
    ledger: createLedger(bases)(state),
  });
}

describe.each(STATES)('%s', (_, given) => {
  const state = freezeAll(given);

  test('gives the same answers twice, asking nobody', () => {
    const [one, other] = [lookAtAll(state), lookAtAll(state)];
    const first = one();
    expect(other()).toEqual(first);
    // Asked again, the same deriver answers the same objects: screens compare them.
    expect(one().derived).toBe(first.derived);
  });

  test('does not depend on what was asked before', () => {
    const { derive } = createDeriver();
    for (const [, before] of STATES) derive(before);
    expect(derive(state)).toEqual(createDeriver().derive(state));
  });
});

test('while a swing is being found the last good ground stays; what the state does not know was never found', () => {
  const { derive } = createDeriver();
  const found = derive(onDesk(tall, { references: FOUND }));
  expect(found).toMatchObject({ status: 'ready', player: NOT_SHIPPED });
  // The deriver has seen it, the state has not.
  expect(derive(onDesk(tall))).toMatchObject({ status: 'solving', player: DEFAULT_DOCUMENT.player });
  expect(derive(onDesk(tall, { references: NO_REFERENCES, lastGround: found.ground }))).toMatchObject({
    status: 'solving',
    player: NOT_SHIPPED,
  });
});
