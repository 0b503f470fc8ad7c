import { canEncodeVideo } from 'mediabunny';
import { createRandom } from '../../reference/random';
import { openVideo } from '../../../src/video/openVideo';
import { VideoRefused, type OpenVideo, type VideoInfo } from '../../../src/video/video';
import type { VideoQuestion } from '../../../src/video/video.worker';
import { makeNumbered, readNumber, type Numbered } from './films';
import { FILES, type Bytes } from './files';
import type { Rendered } from './rendered';

/** What came of a file: what it says of itself and which of its frames show another's number or none; or why it was refused. */
export interface Outcome {
  readonly info?: VideoInfo;
  readonly wrong?: readonly string[];
  readonly lost?: readonly number[];
  readonly tints?: readonly (readonly number[])[];
  readonly refused?: string;
  readonly codec?: string;
  /** From the file to its first picture or its refusal, ms. */
  readonly ms: number;
}

/** Films that came by a video element. */
let elements = 0;

/** What a test may do with films on this page. */
export interface FilmAlone {
  canEncode(codec: Numbered['codec']): Promise<boolean>;
  /** Jumps, steps and turns about in a numbered film; answers what was shown in the wrong place. */
  jump(order: Numbered, count: number, seed: number): Promise<Outcome>;
  /** Opens one file of the list by its name, and looks at each of its frames. */
  open(name: string): Promise<Outcome>;
  /** Workers decode no more from now on: frames come by a video element. */
  takeDecoderAway(): void;
  /** How many films came by a video element. */
  elements(): number;
  /** Draws the film of a made-up swing in the app's scene, encodes, opens and reads it. */
  render(seed: number): Promise<Rendered | undefined>;
  readonly names: readonly string[];
}

/** A refusal in numbers and words that can leave the page. */
async function opened(file: Blob, look: (video: OpenVideo) => Promise<Omit<Outcome, 'ms' | 'info'>>): Promise<Outcome> {
  const start = performance.now();
  try {
    const video = await openVideo(file);
    try {
      (await video.frame(0))?.close();
      const ms = performance.now() - start;
      return { info: video.info, ms, ...(await look(video)) };
    } finally {
      video.close();
    }
  } catch (error) {
    const ms = performance.now() - start;
    if (!(error instanceof VideoRefused)) return { refused: String(error), ms };
    return { refused: error.reason, ms, ...(error.codec !== undefined && { codec: error.codec }) };
  }
}

/** The number that a frame's glance shows; undefined where it cannot be decoded or there is none. */
async function glanceAt(video: OpenVideo, index: number, rotation: Numbered['rotation']): Promise<number | undefined> {
  const glance = await video.glance!(index);
  if (!glance) return undefined;
  const picture = await createImageBitmap(new ImageData(glance.pixels, glance.w, glance.h));
  const number = readNumber(picture, rotation);
  picture.close();
  return number;
}

/** The number that a frame shows; undefined where it cannot be decoded. */
async function numberAt(video: OpenVideo, index: number, rotation: Numbered['rotation']): Promise<number | undefined> {
  try {
    const picture = await video.frame(index);
    if (!picture) throw new Error('passed over');
    const number = readNumber(picture, rotation);
    picture.close();
    return number;
  } catch (error) {
    if (error instanceof VideoRefused) return undefined;
    throw error;
  }
}

/** Colour of the strip below the bars: at full size, and in the glance. */
async function tintsAt(video: OpenVideo, index: number): Promise<readonly (readonly number[])[]> {
  const [picture, glance] = [await video.frame(index), await video.glance?.(index)];
  const pen = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true })!;
  pen.drawImage(picture!, -picture!.width / 2, -0.9 * picture!.height);
  picture!.close();
  const at = glance && 4 * Math.floor(0.9 * glance.h) * glance.w;
  return [[...pen.getImageData(0, 0, 1, 1).data], ...(glance ? [[...glance.pixels.subarray(at, at! + 4)]] : [])];
}

async function jump(order: Numbered, count: number, seed: number): Promise<Outcome> {
  const film = new Blob([await makeNumbered(order)]);
  const random = createRandom(seed);
  return opened(film, async (video) => {
    const wrong: string[] = [];
    let at = 0;
    for (let k = 0; k < count; k++) {
      const kind = random();
      if (kind < 0.4) at = Math.floor(random() * video.info.frames);
      else if (kind < 0.7) at = Math.min(video.info.frames - 1, at + 1);
      else at = Math.max(0, at - 1);
      // By glances, as while stepping, and now and then at full size, as at rest: what was fetched ahead is overtaken.
      const seen =
        video.glance && random() < 0.8
          ? await glanceAt(video, at, order.rotation)
          : await numberAt(video, at, order.rotation);
      if (seen !== at) wrong.push(`${at} shows ${seen}`);
    }
    return { wrong, tints: await tintsAt(video, at) };
  });
}

/** Looks at every frame, from the last to the first, and once more at those in the middle. */
async function open(name: string): Promise<Outcome> {
  const { make, first = 0, rotation } = FILES[name];
  const made: Bytes = await make();
  return opened(made instanceof Blob ? made : new File([made], name), async (video) => {
    if (video.info.kind === 'picture') return {};
    const wrong: string[] = [];
    const lost: number[] = [];
    for (let at = video.info.frames - 1; at >= 0; at--) {
      const seen = await numberAt(video, at, rotation);
      if (seen === undefined) lost.push(at);
      else if (seen !== at + first) wrong.push(`${at} shows ${seen}`);
    }
    return { wrong, lost };
  });
}

/** From now on a worker's script first takes the decoder away from it. It is asked for the frames' times alone before an element plays them. */
function takeDecoderAway(): void {
  const Before = Worker;
  globalThis.Worker = class extends Before {
    constructor(script: string | URL, options?: WorkerOptions) {
      const lines = [`import ${JSON.stringify(String(script))};`, 'delete globalThis.VideoDecoder;'];
      super(URL.createObjectURL(new Blob(lines, { type: 'text/javascript' })), options);
    }
    override postMessage(message: { readonly question: VideoQuestion }): void {
      if (message.question.what === 'times') elements++;
      super.postMessage(message);
    }
  };
}

const alone: FilmAlone = {
  canEncode: (codec) => canEncodeVideo(codec, { width: 320, height: 160 }),
  jump,
  open,
  takeDecoderAway,
  elements: () => elements,
  render: async (seed) => (await import('./rendered')).renderAndRead(seed),
  names: Object.keys(FILES),
};
Object.assign(globalThis, { alone });
