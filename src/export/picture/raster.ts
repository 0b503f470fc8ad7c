import { FONT_FILES } from '../../look/fontFiles';

/** Cache: the typefaces as rules, read when the first picture is made. */
const faces: { rules?: Promise<string> } = {};

/** The typefaces as rules with the files inside: a picture that stands alone can load nothing. */
function fontRules(): Promise<string> {
  const rules = (faces.rules ??= Promise.all(
    FONT_FILES.map(async ({ family, style, weight, url }) => {
      const bytes = new Uint8Array(await (await fetch(url)).arrayBuffer());
      let binary = '';
      for (let at = 0; at < bytes.length; at += 8192) binary += String.fromCharCode(...bytes.subarray(at, at + 8192));
      return `@font-face{font-family:"${family}";font-style:${style};font-weight:${weight};src:url(data:font/woff2;base64,${btoa(binary)}) format("woff2")}`;
    }),
  ).then((texts) => texts.join('')));
  // A failed read is not kept: the next picture tries again.
  rules.catch(() => delete faces.rules);
  return rules;
}

/** An SVG with the typefaces inside. */
export async function withFonts(svg: string): Promise<string> {
  return svg.replace(/(<svg[^>]*>)/, `$1<style>${await fontRules()}</style>`);
}
