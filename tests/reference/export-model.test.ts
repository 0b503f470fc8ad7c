// The exported model is read by two others: Khronos' own validator (gltf-validator), and a small reader written here from the
// glTF 2.0 specification (sections 4.4 GLB, 3.6 accessors, 3.11 and appendix C animations).
import { validateBytes } from 'gltf-validator';
import { beforeAll, expect, test } from 'vitest';
import { readEmbedded } from '../../src/export/files/embedded';
import { toModelFile } from '../../src/export/files/modelFile';
import { takeSnapshot } from '../../src/export/task/exportSnapshot';
import { createFigure } from '../../src/figure/figure';
import { createPlacement, PART, PART_IDS, type PartId } from '../../src/figure/partIds';
import { placeFigure } from '../../src/figure/place';
import { heelLiftAt } from '../../src/figure/stance';
import { AT, createPose } from '../../src/model/chain';
import { K } from '../../src/model/keys';
import { isReached, type CheckpointId } from '../../src/reading/checkpoints';
import { swingPose } from '../../src/reading/swing';
import { current, desk, setMovement, setPlayer } from '../../src/store';

/** What three's exporter asks of a browser. */
class ReaderOfBlobs {
  result: ArrayBuffer | string | null = null;
  onloadend: (() => void) | null = null;
  readAsArrayBuffer(blob: Blob): void {
    void blob.arrayBuffer().then((bytes) => {
      this.result = bytes;
      this.onloadend?.();
    });
  }
}

type Gltf = {
  readonly nodes: readonly { readonly name?: string; readonly scale?: readonly number[] }[];
  readonly accessors: readonly {
    bufferView: number;
    byteOffset?: number;
    count: number;
    type: 'SCALAR' | 'VEC3' | 'VEC4';
  }[];
  readonly bufferViews: readonly { byteOffset?: number; byteStride?: number }[];
  readonly animations: readonly {
    readonly samplers: readonly { input: number; output: number; interpolation?: string }[];
    readonly channels: readonly { sampler: number; target: { node: number; path: string } }[];
  }[];
};

const WIDTH = { SCALAR: 1, VEC3: 3, VEC4: 4 } as const;

function readGlb(bytes: Uint8Array): {
  gltf: Gltf;
  readonly sample: (node: string, path: string, seconds: number) => number[] | undefined;
} {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  expect(view.getUint32(0, true)).toBe(0x46546c67);
  expect(view.getUint32(8, true)).toBe(bytes.length);
  const length = view.getUint32(12, true);
  const gltf = JSON.parse(new TextDecoder().decode(bytes.subarray(20, 20 + length))) as Gltf;
  const data = 20 + length + 8;
  const numbers = (index: number): Float32Array => {
    const { bufferView, byteOffset = 0, count, type } = gltf.accessors[index];
    const start = data + (gltf.bufferViews[bufferView].byteOffset ?? 0) + byteOffset;
    return Float32Array.from({ length: count * WIDTH[type] }, (_, i) => view.getFloat32(start + 4 * i, true));
  };
  const [animation] = gltf.animations;
  return {
    gltf,
    sample(name, path, seconds) {
      const node = gltf.nodes.findIndex((one) => one.name === name);
      const channel = animation.channels.find(({ target }) => target.node === node && target.path === path);
      if (!channel) return undefined;
      const { input, output, interpolation = 'LINEAR' } = animation.samplers[channel.sampler];
      expect(interpolation).toBe('LINEAR');
      const times = numbers(input);
      const values = numbers(output);
      const width = values.length / times.length;
      let i = 0;
      while (i < times.length - 2 && times[i + 1] < seconds) i++;
      const share = Math.min(1, Math.max(0, (seconds - times[i]) / (times[i + 1] - times[i])));
      const at = (k: number): number[] => [...values.subarray((i + k) * width, (i + k + 1) * width)];
      const [a, b] = [at(0), at(1)];
      const mixed = a.map((value, k) => value + (b[k] - value) * share);
      const size = path === 'rotation' ? Math.hypot(...mixed) : 1;
      return mixed.map((value) => value / size);
    },
  };
}

/** A vector turned by a unit quaternion. */
function turned([x, y, z, w]: readonly number[], [a, b, c]: readonly number[]): number[] {
  const t = [2 * (y * c - z * b), 2 * (z * a - x * c), 2 * (x * b - y * a)];
  return [a + w * t[0] + y * t[2] - z * t[1], b + w * t[1] + z * t[0] - x * t[2], c + w * t[2] + x * t[1] - y * t[0]];
}

let bytes: Uint8Array;
beforeAll(async () => {
  Object.assign(globalThis, { FileReader: ReaderOfBlobs });
  setMovement('leadWristFlexion', -20);
  setMovement('trailSideBend', 6);
  const subject = takeSnapshot(desk.getState(), current(), 'reference');
  bytes = new Uint8Array(await (await toModelFile(subject, subject.now)).arrayBuffer());
});

test('the validator of glTF finds no error and no warning', async () => {
  const report = await validateBytes(bytes);
  const { numErrors, numWarnings, messages } = report.issues;
  expect(messages.filter(({ severity }) => severity < 2)).toEqual([]);
  expect([numErrors, numWarnings]).toEqual([0, 0]);
  expect(report.info.animationCount).toBe(1);
});

for (const id of ['leadArmParallel', 'shaftParallel'] as const satisfies readonly CheckpointId[]) {
  test(`at ${id} every part of the exported figure stands where the model has it, to 0.1 mm`, () => {
    const { swing, body, club, checkpoints } = current();
    const checkpoint = checkpoints[id];
    if (!isReached(checkpoint)) throw new Error('The checkpoint is missing.');
    const { sample } = readGlb(bytes);
    const seconds = (checkpoint.t - swing.curves.times[K.address]) * swing.tempo;
    const pose = createPose();
    swingPose(swing, checkpoint.t, pose);
    const placement = createPlacement();
    const ballPoint = swing.reference.ballPoint;
    placeFigure(createFigure(body, club), pose, { ballPoint, heelLift: heelLiftAt(swing, checkpoint.t) }, placement);
    const joints: [PartId, number][] = [
      ['shoulderLead', AT.leadShoulder],
      ['shoulderTrail', AT.trailShoulder],
      ['elbowTrail', AT.trailElbow],
    ];
    for (const [part, at] of joints) {
      const place = sample(part, 'translation', seconds)!;
      place.forEach((value, axis) => expect(Math.abs(value - pose[at + axis]), part).toBeLessThan(1e-4));
    }
    for (const part of PART_IDS) {
      // The head looks at the ball as the stage draws it, half a ball in front of the face's own point.
      if (part === 'headEgg' || part === 'neck') continue;
      const m = placement.subarray(PART[part] * 12);
      const place = sample(part, 'translation', seconds)!;
      const turn = sample(part, 'rotation', seconds)!;
      const size = sample(part, 'scale', seconds) ?? [1, 1, 1];
      place.forEach((value, axis) => expect(Math.abs(value - m[9 + axis]), part).toBeLessThan(1e-4));
      // The far end of a part 30 cm along its axis.
      const end = turned(turn, [0, 0.3 * size[1], 0]);
      end.forEach((value, axis) => expect(Math.abs(value - 0.3 * m[3 + axis]), part).toBeLessThan(1e-4));
    }
  });
}

test('the head of the club is at the model\u2019s place at impact', () => {
  const { swing } = current();
  const { sample } = readGlb(bytes);
  const t = swing.curves.times[K.impact];
  const pose = createPose();
  swingPose(swing, t, pose);
  const seconds = (t - swing.curves.times[K.address]) * swing.tempo;
  const place = sample('grip', 'translation', seconds)!;
  const { length, gripInset } = swing.rig.club;
  const turn = sample('grip', 'rotation', seconds)!;
  const along = turned(turn, [0, 1, 0]);
  // The grip's own axis is the shaft: either way along it, the head lies on that line.
  const head = [0, 1, 2].map((axis) => pose[AT.head + axis] - place[axis]);
  const size = Math.hypot(...head);
  const off = head.map(
    (value, axis) => value - along[axis] * (along[0] * head[0] + along[1] * head[1] + along[2] * head[2]),
  );
  expect(Math.hypot(...off)).toBeLessThan(1e-4);
  expect(size).toBeLessThan(length + 1e-3);
  expect(size).toBeGreaterThan(length - gripInset - 0.3);
});

test('the model carries the document, and opens as it', () => {
  expect(readEmbedded(bytes)).toEqual({ document: desk.getState().document });
});

test('a left-handed player is the mirror image', async () => {
  const { player } = desk.getState().document;
  setPlayer({ ...player, handed: 'left' });
  try {
    const subject = takeSnapshot(desk.getState(), current(), 'reference');
    const left = new Uint8Array(await (await toModelFile(subject, subject.now)).arrayBuffer());
    const root = readGlb(left).gltf.nodes.find(({ name }) => name === 'Slantwise');
    expect(root?.scale).toEqual([1, 1, -1]);
    expect((await validateBytes(left)).issues.numErrors).toBe(0);
  } finally {
    setPlayer(player);
  }
});
