import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LONGEST_TEXT, packJson, readHash, readText, toAddress, toText } from '../../src/export/link/link';
import { readEmbedded, toMarked, withGifComment } from '../../src/export/files/embedded';
import { withPngText } from '../../src/export/picture/png';
import type { Document } from '../../src/store';
import { documents } from './documents';
import { smallGif, smallPng } from './pictures';

/** How many damaged links and how many damaged files are tried. */
const MUTATIONS = Number(process.env['LINK_MUTATIONS'] ?? 10_000);
const plain = (document: Document): unknown => JSON.parse(JSON.stringify(document));

test('a link opens as the document it was made from', () => {
  fc.assert(
    fc.property(documents, (document) => {
      expect(readText(toText(document))).toEqual({ document: plain(document) });
      const { hash, href } = new URL(toAddress(document, 'https://board.invalid/any/place/?probe#s1.old'));
      expect(readHash(hash)).toEqual({ document: plain(document) });
      expect(href).not.toContain('?');
    }),
    { numRuns: 200 },
  );
});

test('a link stays under 1,500 characters whatever is set, and under the longest that is read with any plan', () => {
  fc.assert(
    fc.property(documents, (document) => {
      expect(toAddress({ ...document, plan: null }, 'https://board.invalid/').length).toBeLessThan(1500);
      expect(toText(document).length).toBeLessThan(LONGEST_TEXT);
    }),
  );
});

test('pictures carry the document and give it back', () => {
  fc.assert(
    fc.property(documents, (document) => {
      const text = toMarked(document);
      for (const file of [
        withPngText(smallPng(), 'Comment', text),
        withGifComment(smallGif(), text),
        new TextEncoder().encode(`<svg><metadata>${text}</metadata></svg>`),
      ]) {
        expect(readEmbedded(file)).toEqual({ document: plain(document) });
      }
    }),
    { numRuns: 200 },
  );
});

type Change = { readonly kind: 'set' | 'drop' | 'add' | 'cut' | 'swap'; readonly at: number; readonly by: number };
const changes = fc.array(
  fc.record({
    kind: fc.constantFrom('set' as const, 'drop' as const, 'add' as const, 'cut' as const, 'swap' as const),
    at: fc.nat(1_000_000),
    by: fc.nat(255),
  }),
  { minLength: 1, maxLength: 4 },
);
function damage(bytes: Uint8Array, steps: readonly Change[]): Uint8Array {
  const list = [...bytes];
  for (const { kind, at, by } of steps) {
    const i = at % (list.length + 1);
    if (kind === 'set') list[i] = by;
    else if (kind === 'drop') list.splice(i, 1 + (by % 5));
    else if (kind === 'add') list.splice(i, 0, by, by ^ 1);
    else if (kind === 'cut') list.length = i;
    else [list[0], list[i]] = [list[i] ?? by, list[0] ?? by];
  }
  return Uint8Array.from(list);
}

/** What is damaged: the damage is drawn anew each run, the documents are these. */
const WHOLE = fc.sample(documents, { numRuns: 200, seed: 5 }).map((document) => ({
  document: plain(document),
  link: new TextEncoder().encode(toText(document)),
  png: withPngText(smallPng(), 'Comment', toMarked(document)),
  gif: withGifComment(smallGif(), toMarked(document)),
}));
const whole = fc.nat(WHOLE.length - 1).map((i) => WHOLE[i]);

test('a damaged link is refused whole: it opens as what was sent or not at all', () => {
  let refused = 0;
  fc.assert(
    fc.property(whole, changes, ({ document, link }, steps) => {
      const read = readText(new TextDecoder('latin1').decode(damage(link, steps)));
      if ('problem' in read) refused++;
      else expect(read.document).toEqual(document);
    }),
    { numRuns: MUTATIONS },
  );
  expect(refused).toBeGreaterThan(MUTATIONS / 2);
});

test('a damaged file is refused whole: it opens as what was saved or not at all', () => {
  fc.assert(
    fc.property(whole, changes, fc.boolean(), ({ document, png, gif }, steps, isPng) => {
      const read = readEmbedded(damage(isPng ? png : gif, steps));
      if (read && 'document' in read) expect(read.document).toEqual(document);
    }),
    { numRuns: MUTATIONS },
  );
});

test('a link whose content was changed and sealed again has to pass the same door as a saved document', () => {
  const values = fc.oneof(fc.jsonValue(), fc.constantFrom(null, -1e9, Infinity, 'left', [], {}));
  fc.assert(
    fc.property(documents, fc.nat(), values, (document, pick, value) => {
      const copy = plain(document) as Record<string, Record<string, unknown>>;
      const sections = Object.keys(copy).filter((name) => typeof copy[name] === 'object' && copy[name] !== null);
      const section = copy[sections[pick % sections.length]];
      const fields = Object.keys(section);
      section[fields[pick % fields.length]] = value;
      const read = readText(packJson(JSON.stringify(copy)));
      // What is let in is in itself a document: it can be sent on and comes back the same.
      if ('document' in read) expect(readText(toText(read.document))).toEqual(read);
    }),
    { numRuns: 400 },
  );
});
