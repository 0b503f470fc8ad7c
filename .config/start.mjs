// npm start: installs what is missing, then serves the app and prints its address.
// npm start -- --host: for other devices on the local network too, with a code a tablet's camera reads.
import { parseArgs } from 'node:util';
import { installWhatIsMissing, top } from './install.mjs';

const { values } = parseArgs({
  options: { host: { type: 'boolean', default: false }, port: { type: 'string' } },
});
const port = values.port === undefined ? undefined : Number(values.port);
if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port < 65536)) {
  console.error(`--port ${values.port}: not a port. Give a whole number from 0 to 65535.`);
  process.exit(2);
}

installWhatIsMissing();
process.chdir(top);
const { createServer } = await import('vite');
const { renderUnicodeCompact } = await import('uqr');
const server = await createServer({ server: { host: values.host, ...(port === undefined ? {} : { port }) } });
await server.listen();
console.log('\nSlantwise is at');
server.printUrls();
if (values.host) {
  const [address] = server.resolvedUrls?.network ?? [];
  if (address === undefined) {
    console.log('\nThis computer is on no network: other devices cannot reach it. Join one and start again.');
  } else {
    console.log(`\n${renderUnicodeCompact(address, { border: 2 })}`);
    console.log(
      'Point a tablet on the same network at it. Over plain http a browser keeps nothing for use offline and lends',
    );
    console.log('no camera: for those, put what `npm run build` writes on any https server.');
  }
}
console.log('\nCtrl+C stops it.');
