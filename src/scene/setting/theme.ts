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
  /** Of the trace, evenly from the top to impact: brass to verdigris. */
  readonly trace: readonly [Color, Color, Color, Color];
  readonly traceEdge: Color;
  /** Width of the trace's edge, css px. */
  readonly traceEdgePen: number;
  /** Half the least width of a shaft on the screen, css px. A pale one on a dark board looks thinner, so it is drawn wider. */
  readonly leastShaft: number;
  /** Oil on wood that turns away from the eye, and how strongly it gleams. */
  readonly gleam: Color;
  readonly gleamShare: number;
  /** The board where the lamp stands over it, and in its corners. */
  readonly lamp: Color;
  readonly corner: Color;
  /** Share of the ghost's colour in its wash. */
  readonly ghostWash: number;
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
    beech: ['#f2cb8a', '#b87c38'],
    walnut: ['#8f5f3e', '#553219'],
    brass: '#cf9d38',
    steel: '#c6cacb',
    blade: '#c3c8ca',
    dark: '#2b2723',
    contour: '#2a2017',
    shadow: '#6a4518',
    trace: ['#e6b13c', '#c09338', '#6a8c5c', '#0c4942'],
    traceEdgePen: 0.95,
    leastShaft: 1.75,
    gleam: '#ffd9a0',
    gleamShare: 0.34,
    lamp: '#fcf8ee',
    corner: '#f0e8d6',
    ghostWash: 0.17,
    sky: '#fff8ea',
    bounce: '#d9c7a4',
    shadowShare: 0.4,
    contactShare: 0.62,
    gridShare: 0.085,
    glassShare: 0.1,
    hemisphere: 2.1,
    key: 2.5,
    fill: 0.55,
    rim: 0.95,
    room: 0.5,
  },
  dark: {
    beech: ['#e9c084', '#ad783a'],
    walnut: ['#8f5f3f', '#573419'],
    brass: '#d9b052',
    steel: '#c9ced1',
    blade: '#c2c8cb',
    dark: '#0f0d0c',
    contour: '#0b0908',
    shadow: '#000000',
    trace: ['#b2832b', '#c3a149', '#86bd8f', '#a9f7e3'],
    traceEdgePen: 0.35,
    leastShaft: 2.4,
    gleam: '#ffcf8a',
    gleamShare: 0.75,
    lamp: '#262725',
    corner: '#151615',
    ghostWash: 0.2,
    sky: '#f6ead0',
    bounce: '#4a4035',
    shadowShare: 0.55,
    contactShare: 0.75,
    gridShare: 0.13,
    glassShare: 0.1,
    hemisphere: 1.5,
    key: 2.1,
    fill: 0.34,
    rim: 1.9,
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
    trace: [new Color(own.trace[0]), new Color(own.trace[1]), new Color(own.trace[2]), new Color(own.trace[3])],
    gleam: new Color(own.gleam),
    lamp: new Color(own.lamp),
    corner: new Color(own.corner),
    traceEdge: board === 'light' ? ink : new Color(own.contour),
    sky: new Color(own.sky),
    bounce: new Color(own.bounce),
  };
}

/** The trace's colour at a share of the time from the top to impact, 0 to 1. */
export function traceColour({ trace }: Theme, share: number): Color {
  const at = Math.min(trace.length - 1, Math.max(0, share * (trace.length - 1)));
  const i = Math.min(trace.length - 2, Math.floor(at));
  return new Color().lerpColors(trace[i], trace[i + 1], at - i);
}
