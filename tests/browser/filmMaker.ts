import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type * as Mediabunny from 'mediabunny';
import type { Browser, Page } from 'playwright-core';
import { createFigure } from '../../src/figure/figure';
import { createPlacement } from '../../src/figure/partIds';
import { placeFigure } from '../../src/figure/place';
import { AT, createPose } from '../../src/model/chain';
import { K } from '../../src/model/keys';
import { DEFAULT_ARM_ANGLE, isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { swingPose } from '../../src/reading/swing';
import { findExpected } from '../../src/film/fit/player';
import { traceParts } from '../../src/film/trace';
import { sightOf, toImage, type Pinhole } from '../../src/film/pinhole';
import { playerWith, referenceSwing } from '../reference/solvingPlayers';

/** A film as it is asked for: pictures of a swing, or of the frames' own numbers in bars of black and white. */
export interface FilmOrder {
  readonly container: 'mp4' | 'mov' | 'webm';
  readonly codec: 'avc' | 'vp8' | 'vp9' | 'av1';
  readonly fps: number;
  readonly w: number;
  readonly h: number;
  readonly frames: number;
  /** The encoded frames so many times over: a long film for the time that a short one takes. */
  readonly times?: number;
  /** Bits a second at most, and whether the bars stand on a ground like grass, with something that moves before it. */
  readonly bitrate?: number;
  readonly isRough?: boolean;
  /** Convex shapes of every frame in the order in which they are painted: x and y in turn, px. */
  readonly shapes?: readonly (readonly (readonly number[])[])[];
  /** Where the ground begins, px from the top. */
  readonly horizon?: number;
}

/** Bars that carry a frame's number, lowest bit first. */
const BITS = 10;

/** A page that encodes films as the test browser can. */
export async function openFilmMaker(browser: Browser): Promise<{
  make(order: FilmOrder): Promise<Buffer>;
  close(): Promise<void>;
}> {
  const page = await browser.newPage();
  // The loader that runs the benches marks functions with their names by a function of its own, which the page does not have.
  await page.addInitScript('globalThis.__name = (work) => work');
  const folder = dirname(createRequire(import.meta.url).resolve('mediabunny'));
  const script = readFileSync(join(folder.slice(0, folder.indexOf('dist') + 4), 'bundles/mediabunny.min.mjs'));
  await page.route('http://localhost/**', (route) =>
    route.fulfill(
      route.request().url().endsWith('.mjs')
        ? { contentType: 'text/javascript', body: script }
        : { contentType: 'text/html', body: '<p></p>' },
    ),
  );
  await page.goto('http://localhost/');
  await page.addScriptTag({ type: 'module', content: "import * as kit from '/mediabunny.mjs'; globalThis.kit = kit;" });
  await page.waitForFunction(() => 'kit' in globalThis);
  return {
    make: (order) => encode(page, order),
    close: () => page.close(),
  };
}

async function encode(page: Page, order: FilmOrder): Promise<Buffer> {
  const text = await page.evaluate(
    async ({ order: asked, bits }) => {
      const { kit } = globalThis as unknown as { readonly kit: typeof Mediabunny };
      const { w, h, fps, frames, shapes, horizon = 0, codec, container, times = 1, bitrate = 4e6, isRough } = asked;
      const canvas = new OffscreenCanvas(w, h);
      const pen = canvas.getContext('2d')!;
      const target = new kit.BufferTarget();
      const format = {
        mp4: () => new kit.Mp4OutputFormat(),
        mov: () => new kit.MovOutputFormat(),
        webm: () => new kit.WebMOutputFormat(),
      }[container];
      const output = new kit.Output({ format: format(), target });
      const source = new kit.CanvasSource(canvas, { codec, bitrate, keyFrameInterval: 0.25 });
      output.addVideoTrack(source, { frameRate: fps });
      /** The film over and over: packets with later times, and nothing encoded again. */
      const repeat = async (once: ArrayBuffer): Promise<ArrayBuffer> => {
        const input = new kit.Input({ source: new kit.BufferSource(once), formats: kit.ALL_FORMATS });
        const track = (await input.getPrimaryVideoTrack())!;
        const packets: Mediabunny.EncodedPacket[] = [];
        for await (const packet of new kit.EncodedPacketSink(track).packets()) packets.push(packet);
        const long = new kit.BufferTarget();
        const longer = new kit.Output({ format: format(), target: long });
        const copies = new kit.EncodedVideoPacketSource(codec);
        longer.addVideoTrack(copies, { frameRate: fps });
        await longer.start();
        const decoderConfig = (await track.getDecoderConfig())!;
        for (let k = 0; k < times; k++) {
          for (const packet of packets) {
            await copies.add(packet.clone({ timestamp: packet.timestamp + (k * frames) / fps }), { decoderConfig });
          }
        }
        await longer.finalize();
        return long.buffer!;
      };
      // A ground of grain that stands still, and a piece of it that moves, as a player before grass.
      const tile = new OffscreenCanvas(256, 256);
      const grain = new ImageData(256, 256);
      for (let i = 0, noise = 1; i < grain.data.length; i++) {
        noise = (Math.imul(noise, 1_664_525) + 1_013_904_223) >>> 0;
        grain.data[i] = i % 4 === 3 ? 255 : 112 + (noise >>> 28);
      }
      tile.getContext('2d')!.putImageData(grain, 0, 0);
      const paintRough = (i: number): void => {
        for (let y = 0; y < h; y += 256) for (let x = 0; x < w; x += 256) pen.drawImage(tile, x, y);
        for (let k = 0; k < 3; k++) pen.drawImage(tile, w / 3 + 2 * i, h / 4 + 256 * k + 3 * i);
      };
      await output.start();
      for (let i = 0; i < frames; i++) {
        pen.fillStyle = '#c4cdd3';
        pen.fillRect(0, 0, w, h);
        if (shapes) {
          pen.fillStyle = '#9aa384';
          pen.fillRect(0, horizon, w, h);
          for (const shape of shapes[i]) {
            pen.beginPath();
            for (let k = 0; k < shape.length; k += 2) pen.lineTo(shape[k], shape[k + 1]);
            pen.closePath();
            pen.fillStyle = '#8a8478';
            pen.fill();
            pen.stroke();
          }
        } else {
          if (isRough) paintRough(i);
          for (let bit = 0; bit < bits; bit++) {
            pen.fillStyle = (i >> bit) & 1 ? '#fff' : '#000';
            pen.fillRect((bit * w) / bits, isRough ? h / 2 - 20 : 0, w / bits, isRough ? 40 : h);
          }
        }
        await source.add(i / fps, 1 / fps);
      }
      await output.finalize();
      const bytes = new Uint8Array(times === 1 ? target.buffer! : await repeat(target.buffer!));
      let out = '';
      for (let i = 0; i < bytes.length; i += 8192) out += String.fromCharCode(...bytes.subarray(i, i + 8192));
      return btoa(out);
    },
    { order, bits: BITS },
  );
  return Buffer.from(text, 'base64');
}

type Point = readonly [number, number];

/** A made-up film of a cupped swing at 240 frames a second, where its marks are in truth, and what is true about it. */
export function stageSwing(): {
  readonly order: FilmOrder;
  readonly address: Readonly<Record<string, Point>>;
  readonly frames: readonly Readonly<Record<'hands' | 'clubHead' | 'trailShoulder' | 'trailElbow', Point>>[];
  readonly armFrame: number;
  readonly shaftFrame: number;
  readonly truthCm: readonly [number, number];
} {
  const reference = referenceSwing();
  const swing = playerWith({ leadWristFlexion: -0.38 });
  const expected = findExpected(reference, DEFAULT_ARM_ANGLE)!;
  const { leadArmParallel: arm, shaftParallel: shaft } = readCheckpoints(swing);
  if (!isReached(arm) || !isReached(shaft)) throw new Error('the swing reaches no checkpoint');
  const size = { w: 540, h: 960 };
  const { hands, head, lie, lean, trailToe, leadToe } = expected;
  const camera: Pinhole = {
    eye: [hands[0] - 4.2, 1.25, hands[2] - 0.3],
    yaw: 0.05,
    pitch: -0.09,
    roll: 0.01,
    focal: 1050,
  };
  const sight = sightOf(camera);
  const image = new Float64Array(2);
  const see = (x: number, y: number, z: number): Point => {
    toImage(sight, size, x, y, z, image);
    return [image[0], image[1]];
  };
  const { body, club } = reference.rig;
  const figure = createFigure(body, club);
  const placement = createPlacement();
  const pose = createPose();
  const rate = 240;
  const still = 3;
  // From a little before the first checkpoint to a little after the second: encoding takes most of a test's time.
  const from = Math.floor(arm.t * rate) - 5;
  const length = Math.ceil(shaft.t * rate) + 5 - from + still;
  const film = Array.from({ length }, (_, i) => {
    swingPose(swing, i < still ? reference.reference.times[K.address] : (i - still + from) / rate, pose);
    placeFigure(figure, pose, { ballPoint: reference.reference.ballPoint, heelLift: 0 }, placement);
    const at = (place: number): Point => see(pose[place], pose[place + 1], pose[place + 2]);
    return {
      shapes: traceParts(figure, placement, sight, size).map((shape) =>
        Array.from(shape, (v) => Math.round(v * 10) / 10),
      ),
      hands: at(AT.leadGrip),
      clubHead: at(AT.head),
      trailShoulder: at(AT.trailShoulder),
      trailElbow: at(AT.trailElbow),
    };
  });
  const across = club.length * Math.cos(lean);
  return {
    order: {
      container: 'mp4',
      codec: 'avc',
      fps: rate,
      ...size,
      frames: film.length,
      shapes: film.map(({ shapes }) => shapes),
      horizon: see(4000, 1.25, 0)[1],
    },
    address: {
      clubHead: see(...head),
      gripEnd: see(
        head[0] - club.length * Math.sin(lean),
        head[1] + across * Math.sin(lie),
        head[2] - across * Math.cos(lie),
      ),
      stickA: see(head[0] - 0.5, 0, head[2] + 0.2),
      stickB: see(head[0] + 1, 0, head[2] + 0.2),
      trailToe: see(trailToe[0], 0.02, trailToe[1]),
      leadToe: see(leadToe[0], 0.02, leadToe[1]),
    },
    frames: film,
    armFrame: still - from + Math.round(arm.t * rate),
    shaftFrame: still - from + Math.floor(shaft.t * rate),
    truthCm: [100 * arm.readings.bicepGap, 100 * shaft.readings.headDepth],
  };
}
