/** Remainder of every byte, by the reflected polynomial EDB88320. */
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  return sum;
});

/**
 * CRC-32 of some bytes, 0 to 2^32 - 1: shows any error burst of up to 32 bits. The one of PNG, zip and gzip.
 * Source: ISO 3309; sample code in the PNG specification, annex D.
 */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = TABLE[(sum ^ byte) & 0xff] ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}
