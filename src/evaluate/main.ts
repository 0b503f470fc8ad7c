// npm run -s evaluate < in.jsonl > out.jsonl: one JSON object a line in, one a line out. Exit status 1 if any line was in error.
import { evaluateStream } from './stream';

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // The reader closed the pipe: no error.
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});
process.exitCode = (await evaluateStream(process.stdin, process.stdout)) > 0 ? 1 : 0;
