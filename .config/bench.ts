// npm run bench: runs every tests/bench/*.bench.ts and prints one table. An argument keeps the files whose name has it.
import { readdirSync } from 'node:fs';
import { measureAll, toTable, type Bench } from '../tests/bench/table';

const folder = new URL('../tests/bench/', import.meta.url);
const [only = ''] = process.argv.slice(2);
const files = readdirSync(folder)
  .filter((file) => file.endsWith('.bench.ts') && file.includes(only))
  .toSorted();

const benches: { file: string; bench: Bench }[] = [];
for (const file of files) {
  benches.push({ file, bench: (await import(new URL(file, folder).href)) as Bench });
}
if (benches.length === 0) {
  console.error(`No tests/bench/*.bench.ts${only && ` with "${only}" in its name`}.`);
  process.exit(1);
}

const { sections, failures } = await measureAll(benches);
console.log(toTable(sections));
for (const failure of failures) console.error(failure);
process.exitCode = failures.length > 0 ? 1 : 0;
