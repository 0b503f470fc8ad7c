declare module 'ebml' {
  export interface EbmlTag {
    readonly name: string;
    readonly value: unknown;
    readonly data: Buffer;
  }
  export class Decoder {
    on(event: 'data', listener: (chunk: [kind: 'start' | 'end' | 'tag', tag: EbmlTag]) => void): this;
    write(bytes: Buffer): boolean;
  }
}
