import { openVideo } from './openVideo';
import { VideoRefused, type OpenVideo } from './video';

/** Most pictures that are opened together: address and both checkpoints. */
const MOST = 3;

/**
 * Opens a film, or one to three pictures of one size as its frames. Rejects with `VideoRefused`; then nothing is held.
 */
export async function openFiles(files: readonly Blob[]): Promise<OpenVideo> {
  if (files.length === 1) return openVideo(files[0]);
  if (files.length > MOST) throw new VideoRefused('many');
  const opened = await Promise.allSettled(files.map((file) => openVideo(file)));
  const pictures = opened.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
  const close = (): void => pictures.forEach((picture) => picture.close());
  const [first, ...others] = pictures.map(({ info }) => info);
  const failed = opened.find((one) => one.status === 'rejected');
  const isMixed = pictures.some(({ info }) => info.kind !== 'picture');
  if (failed || isMixed || others.some(({ w, h }) => w !== first.w || h !== first.h)) {
    close();
    if (failed) throw failed.reason;
    throw new VideoRefused(isMixed ? 'mixed' : 'sizes');
  }
  return {
    info: { ...first, frames: pictures.length },
    frame: (index) => pictures[index].frame(0),
    close,
  };
}
