/** Pictures are made this small before a code is looked for in them, px: time grows with their area. */
const [LONGEST_SIDE, SHORTER_SIDE] = [1600, 900];

interface Drawn {
  readonly source: CanvasImageSource;
  readonly width: number;
  readonly height: number;
}

/** The text of a QR code in a picture; undefined where none is found. The reader is loaded when the first picture comes. */
async function findCode({ source, width, height }: Drawn, longest: number): Promise<string | undefined> {
  const { default: jsQR } = await import('jsqr');
  const scale = Math.min(1, longest / Math.max(width, height));
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [Math.round(width * scale), Math.round(height * scale)];
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen || canvas.width === 0 || canvas.height === 0) return undefined;
  pen.drawImage(source, 0, 0, canvas.width, canvas.height);
  const { data } = pen.getImageData(0, 0, canvas.width, canvas.height);
  return jsQR(data, canvas.width, canvas.height, { inversionAttempts: 'dontInvert' })?.data;
}

/** The text of a code in a picture file. Rejects where the file is no picture. */
export async function readPictureCode(file: Blob): Promise<string | undefined> {
  const source = await createImageBitmap(file);
  const drawn = { source, width: source.width, height: source.height };
  try {
    return (await findCode(drawn, LONGEST_SIDE)) ?? (await findCode(drawn, SHORTER_SIDE));
  } finally {
    source.close();
  }
}

/** The text of a code in what a film or camera shows now. */
export const readFrameCode = (video: HTMLVideoElement): Promise<string | undefined> =>
  findCode({ source: video, width: video.videoWidth, height: video.videoHeight }, LONGEST_SIDE);
