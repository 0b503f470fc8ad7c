/**
 * Who may import whom. This table is the documentation: a layer may import the layers and packages it lists and
 * nothing else; type imports, re-exports, dynamic imports and workers count. Folders are those of `src`.
 */
export type Layer = {
  /** One line on what lives here. */
  readonly holds: string;
  /** Plain computation: no screen, no clock, no chance, no network. Exported functions carry docstrings. */
  readonly pure?: true;
  readonly layers: readonly string[];
  /** Packages by name; a name covers its sub-paths. */
  readonly packages: readonly string[];
};

const MODEL = ['math', 'model'];
const READING = [...MODEL, 'reading', 'flight'];
const SOLVING = [...READING, 'solving'];
const WORDS = [...SOLVING, 'film', 'words'];
const STORE = [...WORDS, 'practice', 'checking', 'edge', 'store'];

export const LAYERS: Readonly<Record<string, Layer>> = {
  math: { holds: 'angle, vector, spline, root, least squares, check sum', pure: true, layers: [], packages: [] },
  checking: { holds: 'what comes in, checked by schema', pure: true, layers: [], packages: ['valibot'] },
  model: {
    holds: 'body, club, joints, chain, motion, movements',
    pure: true,
    layers: ['math'],
    packages: [],
  },
  figure: { holds: 'the lay figure as lofted shapes, in numbers', pure: true, layers: MODEL, packages: ['gl-matrix'] },
  reading: { holds: 'events, readings, verdicts, delivery', pure: true, layers: MODEL, packages: ['gl-matrix'] },
  flight: {
    holds: 'impact and trajectory of the ball',
    pure: true,
    layers: [...MODEL, 'reading'],
    packages: ['gl-matrix'],
  },
  solving: {
    holds: 'reference swing, contributions, corridor, plan, match, families and rules',
    pure: true,
    layers: READING,
    packages: ['d3-contour'],
  },
  edge: {
    holds: 'names and units at an edge, and rules as they are written',
    pure: true,
    layers: [...SOLVING, 'checking'],
    packages: ['valibot'],
  },
  film: {
    holds: "what marks on a player's film tell: camera, readings with their give or take, causes",
    pure: true,
    layers: [...SOLVING, 'figure'],
    packages: [],
  },
  practice: {
    holds: "a player's practice at home: its record, its code and its calendar file",
    pure: true,
    layers: ['math', 'checking'],
    packages: ['valibot'],
  },
  words: { holds: 'sentences, labels, units', layers: [...SOLVING, 'film', 'edge', 'practice'], packages: [] },
  store: {
    holds: 'document, session, history, share link',
    layers: [...WORDS, 'checking', 'edge'],
    // React for the hooks that screens read it with.
    packages: ['zustand', 'react', 'valibot'],
  },
  look: {
    holds: 'tokens, typefaces, patterns',
    layers: [],
    packages: ['@fontsource-variable/vollkorn', '@fontsource-variable/sofia-sans-semi-condensed'],
  },
  scene: {
    holds: 'a swing with ground, light and traces as fiber components over plain builders, for the stage and for clips',
    layers: [...READING, 'figure', 'look'],
    packages: ['react', 'three', '@react-three/fiber'],
  },
  stage: {
    holds: 'the 3D scene on the desk',
    layers: [...STORE, 'figure', 'look', 'scene'],
    // leva for the developers' panel, which is not in a build.
    packages: ['react', 'zustand', 'three', '@react-three/fiber', '@react-three/drei', 'leva'],
  },
  plates: {
    holds: 'the 2D drawings',
    layers: [...STORE, 'figure', 'look'],
    packages: ['react'],
  },
  panels: {
    holds: 'controls and drawers',
    layers: [...STORE, 'look', 'record', 'export', 'video'],
    packages: ['react', 'react-dom', 'zustand', 'leva', 'jsqr'],
  },
  video: {
    holds: 'films and pictures opened on the device, frame by frame, and what their marks tell, in workers',
    layers: STORE,
    packages: ['mediabunny'],
  },
  record: { holds: 'lesson book: storage and migrations', layers: STORE, packages: ['idb', 'zustand', 'valibot'] },
  export: {
    holds: 'clip, still, sheet, model file, table, link',
    layers: [...STORE, 'figure', 'look', 'plates', 'scene'],
    packages: ['react-dom', 'three', '@react-three/fiber', 'mediabunny', 'gifenc', 'fflate', 'uqr'],
  },
  player: {
    holds: "the player's page: before and after, drills, practice on the device, the camera as a mirror",
    layers: [...STORE, 'figure', 'scene', 'export', 'panels'],
    packages: ['react', 'three', '@react-three/fiber'],
  },
  evaluate: {
    holds: 'the model without a screen, line by line',
    layers: [...SOLVING, 'film', 'checking', 'edge'],
    packages: ['node:', 'valibot'],
  },
};

/** Files directly in `src`: they wire layers together, may import any of them, and are imported by none. */
export const WIRING = ['main.tsx', 'App.tsx'];

export const LONGEST_FILE = 300;

/** Most files that lie flat in a folder of `src`. */
export const MOST_FILES = 13;
