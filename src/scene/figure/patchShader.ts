/**
 * Shader source of three with chunks replaced. Throws for a chunk that is not there, so that an upgrade of three cannot
 * break a replacement silently.
 */
export function patchShader(source: string, replacements: Readonly<Record<string, string>>): string {
  return Object.entries(replacements).reduce((text, [chunk, by]) => {
    if (!text.includes(chunk)) throw new Error(`three's shader has no "${chunk}".`);
    return text.replace(chunk, () => by);
  }, source);
}
