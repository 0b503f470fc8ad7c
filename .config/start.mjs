// npm start: installs what is missing, then serves the app and prints its address.
import { installWhatIsMissing, top } from './install.mjs';

installWhatIsMissing();
process.chdir(top);
const { createServer } = await import('vite');
const server = await createServer();
await server.listen();
console.log('\nSlantwise is at');
server.printUrls();
console.log('\nCtrl+C stops it.');
