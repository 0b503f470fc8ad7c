import sofia from '@fontsource-variable/sofia-sans-semi-condensed/files/sofia-sans-semi-condensed-latin-wght-normal.woff2?url';
import vollkornItalic from '@fontsource-variable/vollkorn/files/vollkorn-latin-wght-italic.woff2?url';
import vollkorn from '@fontsource-variable/vollkorn/files/vollkorn-latin-wght-normal.woff2?url';

/** The typefaces as files, for pictures that have to carry them along. The same as in fonts.css. */
export const FONT_FILES: readonly {
  readonly family: string;
  readonly style: 'normal' | 'italic';
  readonly weight: string;
  readonly url: string;
}[] = [
  { family: 'Vollkorn Variable', style: 'normal', weight: '400 900', url: vollkorn },
  { family: 'Vollkorn Variable', style: 'italic', weight: '400 900', url: vollkornItalic },
  { family: 'Sofia Sans Semi Condensed Variable', style: 'normal', weight: '1 1000', url: sofia },
];
