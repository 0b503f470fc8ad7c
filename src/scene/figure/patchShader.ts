/**
 * Shader source of three's with chunks replaced. Throws for a chunk that is not there: after a change of three's a replacement must
 * not fail in silence.
 */
export function patchShader(source: string, replacements: Readonly<Record<string, string>>): string {
  return Object.entries(replacements).reduce((text, [chunk, by]) => {
    if (!text.includes(chunk)) throw new Error(`three's shader has no "${chunk}".`);
    return text.replace(chunk, () => by);
  }, source);
}
