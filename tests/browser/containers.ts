// Clips read back by others than those who wrote them: mp4box (GPAC's reader for MP4), ebml (a decoder of Matroska's
// structure, the base of WebM), omggif (GIF89a). Mediabunny and gifenc, which write, are not asked.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Decoder, type EbmlTag } from 'ebml';
import { createFile } from 'mp4box';
import { GifReader } from 'omggif';

/** What a clip says of itself. */
export interface Container {
  readonly codec: string;
  readonly width: number;
  readonly height: number;
  /** Start of every frame, s. */
  readonly times: readonly number[];
  readonly seconds: number;
}

export function readMp4(bytes: Buffer): Container {
  const file = createFile();
  let read: Container | undefined;
  file.onReady = ({ tracks }) => {
    const [track] = tracks;
    const samples = file.getTrackSamplesInfo(track.id);
    read = {
      codec: track.codec,
      width: track.video!.width,
      height: track.video!.height,
      times: samples.map(({ cts, timescale }) => cts / timescale).toSorted((a, b) => a - b),
      seconds: track.samples_duration / track.timescale,
    };
  };
  const copy = new Uint8Array(bytes).buffer;
  file.appendBuffer(Object.assign(copy, { fileStart: 0 }));
  file.flush();
  if (!read) throw new Error('mp4box found no film in the file.');
  return read;
}

export function readWebm(bytes: Buffer): Container {
  const tags: EbmlTag[] = [];
  const decoder = new Decoder();
  decoder.on('data', ([kind, tag]) => {
    if (kind === 'tag') tags.push(tag);
  });
  decoder.write(bytes);
  // Older readers call a timestamp a timecode.
  const value = (...names: string[]): EbmlTag => {
    const found = tags.find(({ name }) => names.includes(name));
    if (!found) throw new Error(`No ${names.join(' or ')} in the file.`);
    return found;
  };
  const tick = Number(value('TimestampScale', 'TimecodeScale').value) / 1e9;
  let cluster = 0;
  const times: number[] = [];
  for (const tag of tags) {
    if (tag.name === 'Timecode' || tag.name === 'Timestamp') cluster = Number(tag.value);
    // Track number, then the time within the cluster as a signed 16-bit number (RFC 9559, section 10.1).
    if (tag.name === 'SimpleBlock' || tag.name === 'Block') times.push((cluster + tag.data.readInt16BE(1)) * tick);
  }
  return {
    codec: String(value('CodecID').value),
    width: Number(value('PixelWidth').value),
    height: Number(value('PixelHeight').value),
    times,
    seconds: Number(value('Duration').value) * tick,
  };
}

export function readGif(bytes: Buffer): Container {
  const gif = new GifReader(bytes);
  const times: number[] = [];
  let seconds = 0;
  for (let i = 0; i < gif.numFrames(); i++) {
    times.push(seconds);
    seconds += gif.frameInfo(i).delay / 100;
  }
  return { codec: 'gif', width: gif.width, height: gif.height, times, seconds };
}

/** What ffprobe says of a film after decoding all of it; nothing where ffprobe is not installed. */
export function askFfprobe(
  bytes: Buffer,
  extension: string,
): (Omit<Container, 'times'> & { frames: number }) | undefined {
  const folder = mkdtempSync(join(tmpdir(), 'film-'));
  const path = join(folder, `film.${extension}`);
  try {
    writeFileSync(path, bytes);
    const shown = 'stream=codec_name,width,height,nb_read_frames:format=duration';
    const { error, stdout } = spawnSync(
      'ffprobe',
      ['-v', 'error', '-count_frames', '-select_streams', 'v:0', '-show_entries', shown, '-of', 'json', path],
      { encoding: 'utf8' },
    );
    if (error) return undefined;
    const { streams, format } = JSON.parse(stdout) as {
      streams: { codec_name: string; width: number; height: number; nb_read_frames: string }[];
      format: { duration: string };
    };
    const [{ codec_name: codec, width, height, nb_read_frames: frames }] = streams;
    return { codec, width, height, frames: Number(frames), seconds: Number(format.duration) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
