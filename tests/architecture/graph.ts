import { dirname } from 'node:path';
import { findImports, resolveImport, type Source } from './source';

/** Every file with the files it takes something from; types, re-exports, dynamic imports and workers count. */
export type Graph = ReadonlyMap<string, readonly string[]>;

/** The import graph of these files. What leads to none of them (packages, styles, assets) is left out. */
export function graphOf(sources: readonly Source[]): Graph {
  const paths = new Set(sources.map(({ path }) => path));
  const findFile = (place: string): string | undefined =>
    [place, `${place}.ts`, `${place}.tsx`, `${place}/index.ts`].find((path) => paths.has(path));
  return new Map(
    sources.map((source) => {
      const targets = findImports(source).flatMap(({ from }) => findFile(resolveImport(source, from) ?? '') ?? []);
      return [source.path, [...new Set(targets)].filter((path) => path !== source.path)];
    }),
  );
}

/** Groups of files that all reach one another: Tarjan's strongly connected components of more than one file, sorted. */
export function findCircles(graph: Graph): string[][] {
  const order = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const circles: string[][] = [];
  const visit = (file: string): void => {
    order.set(file, order.size);
    low.set(file, order.get(file)!);
    stack.push(file);
    for (const next of graph.get(file) ?? []) {
      if (!order.has(next)) visit(next);
      if (stack.includes(next)) low.set(file, Math.min(low.get(file)!, low.get(next)!));
    }
    if (low.get(file) !== order.get(file)) return;
    const circle = stack.splice(stack.indexOf(file));
    if (circle.length > 1) circles.push(circle.toSorted());
  };
  for (const file of graph.keys()) if (!order.has(file)) visit(file);
  return circles.toSorted((a, b) => a[0].localeCompare(b[0]));
}

/** Folders with more files of their own than this, "folder: count"; what lies in subfolders counts there. */
export function crowdedFolders(paths: readonly string[], most: number): string[] {
  const counts = new Map<string, number>();
  for (const path of paths) counts.set(dirname(path), (counts.get(dirname(path)) ?? 0) + 1);
  return [...counts].filter(([, count]) => count > most).map(([folder, count]) => `${folder}: ${count}`);
}
