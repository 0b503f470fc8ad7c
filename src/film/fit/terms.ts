import { addAddressTerms } from './addressTerms';
import { createCameraUnknowns } from './cameraUnknowns';
import { addCheckpointTerms } from './checkpointTerms';
import type { FilmMarks } from '../marks';
import { createSight, type Pinhole } from '../pinhole';
import type { Expected, Player } from './player';
import { createTermList } from './termList';
import { U } from './unknowns';

/** What the marks ask of the unknowns: one number for each coordinate that was marked, in its own standard deviations. */
export interface Terms {
  readonly count: number;
  /** Unknowns other than movements that something marked answers to. */
  readonly used: readonly number[];
  write(x: Float64Array, out: Float64Array): void;
  /** Where a search starts. */
  guess(x: Float64Array): void;
  camera(x: Float64Array): Pinhole;
  /** The mark that fits the rest worst, and by how many of its standard deviations. */
  worst(x: Float64Array): { readonly name: string; readonly spreads: number };
}

/** The terms of a film. `player` is asked for poses as they are written. Writing allocates nothing. */
export function createTerms(expected: Expected, marks: FilmMarks, player: Player): Terms {
  const { size, address, camera: typed } = marks;
  const [u, v] = address.clubHead;
  const [gripU, gripV] = address.gripEnd;
  const px = Math.hypot(gripU - u, gripV - v);
  const sight = createSight();
  const camera = createCameraUnknowns(expected, size, typed);
  const list = createTermList(px / expected.swing.rig.club.length);
  const used = [
    U.eyeX,
    U.eyeY,
    U.eyeZ,
    U.yaw,
    U.pitch,
    U.roll,
    U.focal,
    ...addAddressTerms(list, sight, camera, expected, marks),
    ...addCheckpointTerms(list, sight, player, expected, marks),
  ];
  const count = list.terms.reduce((sum, term) => sum + term.size, 0);
  const write = (x: Float64Array, out: Float64Array): void => {
    camera.look(x, sight);
    player.take(x);
    let at = 0;
    for (const term of list.terms) {
      term.write(x, out, at);
      at += term.size;
    }
  };
  return {
    count,
    used,
    write,
    guess: (x) => camera.guess(x, { px, middle: [(u + gripU) / 2, (v + gripV) / 2] }),
    camera: (x) => camera.read(x),
    worst(x) {
      const out = new Float64Array(count);
      write(x, out);
      let at = 0;
      let worst = { name: '', spreads: 0 };
      for (const { name, size: numbers } of list.terms) {
        const spreads = Math.hypot(...out.subarray(at, at + numbers));
        if (spreads > worst.spreads) worst = { name, spreads };
        at += numbers;
      }
      return worst;
    },
  };
}
