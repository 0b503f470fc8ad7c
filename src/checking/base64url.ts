/** Base64 with the alphabet of addresses (RFC 4648, section 5), without padding. */
export function toBase64Url(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** The bytes, or undefined when the text is not base64 as `toBase64Url` writes it. */
export function fromBase64Url(text: string): Uint8Array | undefined {
  if (!/^[\w-]*$/.test(text) || text.length % 4 === 1) return undefined;
  const bytes = Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (letter) => letter.charCodeAt(0));
  // Bits that no byte uses have one spelling only.
  return toBase64Url(bytes) === text ? bytes : undefined;
}
