// npm run test:offline: the browser tests once more, with the server gone after the first visit. Arguments go to vitest.
import { run } from './install.mjs';

process.env['OFFLINE'] = '1';
const args = ['--no-install', 'vitest', 'run', '--project', 'browser', '--exclude', 'tests/browser/offline.test.ts'];
process.exitCode = run('npx', [...args, ...process.argv.slice(2)]);
