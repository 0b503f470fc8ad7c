/** Half of a character pair standing alone: no letter, and some storages refuse it. */
const LONE = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;
/** Control characters, and the marks that turn the direction of writing and so can make a name read as another. */
// oxlint-disable-next-line no-control-regex -- they are what is looked for
const UNSEEN = /[\u0000-\u0009\u000B-\u001F\u007F-\u009F\u200E\u200F\u2028\u2029\u202A-\u202E\u2066-\u2069\uFEFF]/g;

/** A text of one or more lines as it may be kept: whole characters, nothing unseen. */
export const toText = (raw: string): string => raw.replace(/\r\n?/g, '\n').replace(LONE, '\uFFFD').replace(UNSEEN, '');

/** A name as it may be kept: one line, no space at the ends, none doubled. */
export const toName = (raw: string): string => toText(raw).replace(/\s+/g, ' ').trim();

/** The first `most` characters, never cutting a character in half. */
export const firstOf = (text: string, most: number): string =>
  text.length <= most ? text : toText(text.slice(0, most)).replace(/\uFFFD$/, '');

/** Part of a file name: small letters, digits and dashes only. */
export function toSlug(text: string): string {
  const slug = text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40)
    .replace(/-$/, '');
  return slug === '' ? 'player' : slug;
}
