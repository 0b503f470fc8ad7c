import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';

/**
 * What the built page may load: its own files and nothing else. Inline styles are allowed because the joints
 * bench's panel library injects its style sheet; blob: is for workers and for pictures and clips made on the device.
 */
const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  'media-src blob:',
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/**
 * The same policy for servers that read a `_headers` file, with what only a header can say. The service worker is asked
 * for anew every time, so that a new version is found.
 */
const headers = `/*
  Content-Security-Policy: ${contentSecurityPolicy}; frame-ancestors 'none'
  X-Content-Type-Options: nosniff
  Referrer-Policy: no-referrer
  Cross-Origin-Opener-Policy: same-origin
  Permissions-Policy: camera=(self), geolocation=(), microphone=(), payment=(), usb=()
/sw.js
  Cache-Control: no-cache
`;

/** The policy goes in at build time only: the development server needs inline scripts and a web socket. */
const lockDown = (): Plugin => ({
  name: 'content-security-policy',
  apply: 'build',
  generateBundle() {
    this.emitFile({ type: 'asset', fileName: '_headers', source: headers });
  },
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: contentSecurityPolicy },
      injectTo: 'head-prepend',
    },
  ],
});

/**
 * The picture's code is fetched while the panels are still being put up, behind everything that they need: the page itself asks for
 * it only once it stands.
 */
const preloadStage = (): Plugin => ({
  name: 'preload-stage',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler: (_, { bundle = {} }) => {
      const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
      const importsOf = (names: readonly string[], seen = new Set<string>()): Set<string> => {
        for (const name of names.filter((one) => !seen.has(one))) {
          seen.add(name);
          importsOf(chunks.find(({ fileName }) => fileName === name)?.imports ?? [], seen);
        }
        return seen;
      };
      const first = importsOf(chunks.filter(({ isEntry }) => isEntry).map(({ fileName }) => fileName));
      const stage = chunks.find(({ facadeModuleId }) => facadeModuleId?.endsWith('/stage/Stage.tsx'));
      if (!stage) throw new Error('There is no chunk of the stage to preload.');
      return [...importsOf([stage.fileName])]
        .filter((name) => !first.has(name))
        .map((name) => ({
          tag: 'link',
          attrs: { rel: 'modulepreload', crossorigin: true, fetchpriority: 'low', href: `./${name}` },
          injectTo: 'body' as const,
        }));
    },
  },
});

/**
 * One chunk per library family, so that a change to the app leaves them cached. React first, or it lands in leva's;
 * zustand with it, or the store would wait for the 3D libraries that share it.
 */
const groups = [
  {
    name: 'react',
    test: /node_modules[\\/](react|react-dom|scheduler|use-sync-external-store|zustand)[\\/]/,
    priority: 40,
  },
  {
    // Without three's add-ons: the exporter of the model file comes with the button that makes one.
    name: 'three',
    test: /node_modules[\\/](three[\\/](?!examples)|@react-three[\\/]fiber|its-fine|react-use-measure|suspend-react|@babel[\\/]runtime)[\\/]/,
    priority: 30,
  },
  {
    // What turns the stage's camera comes after the first picture.
    name: 'controls',
    test: /node_modules[\\/](@react-three[\\/]drei|camera-controls)[\\/]/,
    priority: 20,
  },
  {
    name: 'leva',
    test: /node_modules[\\/](leva|@stitches|@radix-ui|@use-gesture|@floating-ui|colord|v8n)[\\/]/,
    priority: 10,
  },
];

/**
 * Installable, and everything there without a network after the first load. A new version waits: the page offers it, and
 * never takes it while a lesson is open (src/record/storage/offline.ts registers the worker and decides).
 */
const offline = VitePWA({
  registerType: 'prompt',
  injectRegister: false,
  manifest: {
    name: 'Slantwise',
    short_name: 'Slantwise',
    description: 'Turn three movements of the downswing and watch both checkpoints answer. On the device, offline.',
    start_url: './',
    scope: './',
    display: 'standalone',
    background_color: '#f6f0e3',
    theme_color: '#f6f0e3',
    lang: 'en',
    icons: [
      { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
      { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  },
  workbox: {
    globPatterns: ['**/*.{html,js,css,woff2,svg,png,json,webmanifest}'],
    globIgnores: ['sw.js'],
    maximumFileSizeToCacheInBytes: 32 * 1024 * 1024,
    navigateFallback: 'index.html',
    cleanupOutdatedCaches: true,
    // The first worker takes the page it came with, so that parts fetched later are there offline too.
    clientsClaim: true,
    skipWaiting: false,
    inlineWorkboxRuntime: true,
    sourcemap: false,
  },
});

const MINUTE_MS = 60_000;

export default defineConfig({
  // Tests name their files from the top of the project; the app lives in src.
  root: process.env['VITEST'] ? '.' : 'src',
  base: './',
  publicDir: process.env['VITEST'] ? 'assets' : '../assets',
  // Beside the other caches, not in src, where the default would put it.
  cacheDir: `${import.meta.dirname}/node_modules/.cache/vite`,
  plugins: [react(), lockDown(), preloadStage(), offline],
  worker: { format: 'es' },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 800,
    rolldownOptions: { output: { codeSplitting: { groups } } },
  },
  test: {
    // Two files at a time, on two cores and on more: the browser tests wait for conditions, never for times.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['unit', 'reference', 'property', 'architecture'].map(
            (folder) => `tests/${folder}/**/*.test.{ts,tsx}`,
          ),
          setupFiles: ['tests/propertySeed.ts'],
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/setup.ts'],
          testTimeout: 2 * MINUTE_MS,
          hookTimeout: 2 * MINUTE_MS,
        },
      },
    ],
  },
});
