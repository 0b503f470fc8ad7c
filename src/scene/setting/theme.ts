import { Color } from 'three';

export type Board = 'light' | 'dark';

/** Colours of the scene. Paper, ink, glass, reference, ghost and brass come from the design tokens, the rest is the scene's own. */
export interface Theme {
  readonly paper: Color;
  readonly ink: Color;
  readonly reference: Color;
  readonly ghost: Color;
  readonly glass: Color;
  readonly beech: readonly [Color, Color];
  readonly walnut: readonly [Color, Color];
  readonly brass: Color;
  readonly steel: Color;
  readonly blade: Color;
  readonly dark: Color;
  readonly contour: Color;
  readonly shadow: Color;
  readonly traceStart: Color;
  readonly traceEnd: Color;
  readonly traceEdge: Color;
  readonly sky: Color;
  readonly bounce: Color;
  readonly shadowShare: number;
  readonly contactShare: number;
  readonly gridShare: number;
  readonly glassShare: number;
  readonly hemisphere: number;
  readonly key: number;
  readonly fill: number;
  readonly rim: number;
  readonly room: number;
}

const OWN = {
  light: {
    beech: ['#e8c48f', '#b07f45'],
    walnut: ['#875a3c', '#59371f'],
    brass: '#c79a3e',
    steel: '#b9bdbf',
    blade: '#b3b8bb',
    dark: '#2b2723',
    contour: '#2a2017',
    shadow: '#4a3820',
    traceStart: '#dcae45',
    traceEnd: '#123f3a',
    sky: '#fff8ea',
    bounce: '#d9c7a4',
    shadowShare: 0.34,
    contactShare: 0.5,
    gridShare: 0.07,
    glassShare: 0.1,
    hemisphere: 1.8,
    key: 2.25,
    fill: 0.5,
    rim: 0.6,
    room: 0.5,
  },
  dark: {
    beech: ['#d8b07b', '#a67a44'],
    walnut: ['#85583b', '#563520'],
    brass: '#d9b052',
    steel: '#c9ced1',
    blade: '#c2c8cb',
    dark: '#0f0d0c',
    contour: '#0b0908',
    shadow: '#000000',
    traceStart: '#8a6f2c',
    traceEnd: '#8ad8c6',
    sky: '#f6ead0',
    bounce: '#4a4035',
    shadowShare: 0.55,
    contactShare: 0.75,
    gridShare: 0.13,
    glassShare: 0.1,
    hemisphere: 1.2,
    key: 1.95,
    fill: 0.32,
    rim: 1.5,
    room: 0.48,
  },
} as const;

/** The tokens a scene is coloured by, as the page has them: plain texts, which also reach a worker. */
export const SCENE_TOKENS = ['paper', 'ink', 'reference', 'ghost', 'glass'] as const;
export type SceneTokens = Readonly<Record<(typeof SCENE_TOKENS)[number], string>>;

/** The page's tokens for the board that it shows. */
export function readTokens(): SceneTokens {
  const style = getComputedStyle(document.documentElement);
  const read = SCENE_TOKENS.map((name) => [name, style.getPropertyValue(`--${name}`).trim() || '#808080'] as const);
  return Object.fromEntries(read) as SceneTokens;
}

/** The colours of a board, its tokens read from the page. */
export const readTheme = (board: Board): Theme => themeOf(board, readTokens());

/** The colours of a board with these tokens. */
export function themeOf(board: Board, tokens: SceneTokens): Theme {
  const token = (name: keyof SceneTokens): Color => new Color(tokens[name]);
  const own = OWN[board];
  const ink = token('ink');
  return {
    ...own,
    paper: token('paper'),
    ink,
    reference: token('reference'),
    ghost: token('ghost'),
    glass: token('glass'),
    beech: [new Color(own.beech[0]), new Color(own.beech[1])],
    walnut: [new Color(own.walnut[0]), new Color(own.walnut[1])],
    brass: new Color(own.brass),
    steel: new Color(own.steel),
    blade: new Color(own.blade),
    dark: new Color(own.dark),
    contour: new Color(own.contour),
    shadow: new Color(own.shadow),
    traceStart: new Color(own.traceStart),
    traceEnd: new Color(own.traceEnd),
    traceEdge: board === 'light' ? ink : new Color(own.contour),
    sky: new Color(own.sky),
    bounce: new Color(own.bounce),
  };
}
