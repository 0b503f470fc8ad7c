// npm run bench [-- NAME] [-- --quick]: measures what every tests/bench/*.bench.ts measures and prints each row as it comes.
// NAME keeps the files whose name has it. --quick gives the goals only, from fewer repetitions. A missed goal is no failure.
import { readdirSync } from 'node:fs';
import { createSite } from '../tests/bench/site';
import { measureAll, type Bench } from '../tests/bench/table';

const folder = new URL('../tests/bench/', import.meta.url);
const words = process.argv.slice(2);
const quick = words.includes('--quick');
const [only = ''] = words.filter((word) => !word.startsWith('--'));
const files = readdirSync(folder)
  .filter((file) => file.endsWith('.bench.ts') && file.includes(only))
  .toSorted();
if (files.length === 0) {
  console.error(`No tests/bench/*.bench.ts${only && ` with "${only}" in its name`}.`);
  process.exit(1);
}

const benches = files.map((file) => ({
  file,
  load: async () => (await import(new URL(file, folder).href)) as Bench,
}));
const site = createSite();
try {
  const { failures } = await measureAll(benches, { quick, withPage: site.withPage }, (line) => console.log(line));
  process.exitCode = failures > 0 ? 1 : 0;
} finally {
  await site.close();
}
