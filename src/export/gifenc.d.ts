declare module 'gifenc' {
  export type Palette = number[][];
  export interface FrameOptions {
    readonly palette?: Palette;
    /** ms */
    readonly delay?: number;
    /** -1 once, 0 for ever. */
    readonly repeat?: number;
  }
  export interface Encoder {
    writeFrame(index: Uint8Array, width: number, height: number, options?: FrameOptions): void;
    finish(): void;
    bytes(): Uint8Array<ArrayBuffer>;
  }
  export function GIFEncoder(): Encoder;
  export function quantize(rgba: Uint8Array | Uint8ClampedArray, maxColors: number): Palette;
  export function applyPalette(rgba: Uint8Array | Uint8ClampedArray, palette: Palette): Uint8Array<ArrayBuffer>;
}
