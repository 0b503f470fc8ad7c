/** Table of the CRC-32 of ISO 3309 (the one of PNG and ZIP), by the reversed polynomial 0xEDB88320. */
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  return sum;
});

/** CRC-32 of a text in UTF-8, as eight hex digits: any single flipped bit shows. */
export function sumOf(text: string): string {
  let sum = 0xffffffff;
  for (const byte of new TextEncoder().encode(text)) sum = TABLE[(sum ^ byte) & 255] ^ (sum >>> 8);
  return ((sum ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0');
}
