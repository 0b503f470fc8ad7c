import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { answerLine } from '../../src/evaluate/answer';
import { mujocoKinematics } from './golfers';
import type { Session } from './table';
import { timeTogether } from './timing';

export const name = 'evaluate';

/** Swing lines as a study would send them: every one with movements of its own. */
const swingLine = (i: number): string =>
  JSON.stringify({
    kind: 'swing',
    player: { statureM: 1.78, handed: 'right' },
    club: '7-iron',
    movements: {
      leadWristFlexionDeg: (i % 61) - 30,
      rotationRate: 0.7 + ((i * 7) % 61) / 100,
      trailSideBendDeg: ((i * 13) % 21) - 10,
    },
  });

const root = fileURLToPath(new URL('../../', import.meta.url));
/** Loaded into the command beforehand: tells its peak memory in kilobytes when it ends. */
const TELL_PEAK = "process.on('exit', () => process.stderr.write('peak ' + process.resourceUsage().maxRSS))";
const CHUNK = 500;

/** Sends so many lines through the command as fast as it takes them. */
async function runCommand(lines: number): Promise<{ seconds: number; peakMb: number }> {
  const start = performance.now();
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', '--import', `data:text/javascript,${encodeURIComponent(TELL_PEAK)}`, 'src/evaluate/main.ts'],
    { cwd: root, stdio: ['pipe', 'pipe', 'pipe'] },
  );
  let answered = 0;
  let said = '';
  child.stdout.on('data', (bytes: Buffer) => {
    for (let at = bytes.indexOf(10); at >= 0; at = bytes.indexOf(10, at + 1)) answered += 1;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => (said += text));
  const closed = once(child, 'close');
  for (let sent = 0; sent < lines; sent += CHUNK) {
    const chunk = Array.from({ length: Math.min(CHUNK, lines - sent) }, (_, i) => `${swingLine(sent + i)}\n`).join('');
    if (!child.stdin.write(chunk)) await once(child.stdin, 'drain');
  }
  child.stdin.end();
  const [status] = (await closed) as [number];
  const peak = /peak (\d+)/.exec(said)?.[1];
  if (status !== 0 || answered !== lines || peak === undefined) {
    throw new Error(`evaluate answered ${answered} of ${lines} lines, status ${status}: ${said}`);
  }
  return { seconds: (performance.now() - start) / 1000, peakMb: Number(peak) / 1024 };
}

/** Swing lines answered within this process: reading, working out and writing the text, without pipes. */
const texts = Array.from({ length: 256 }, (_, i) => swingLine(i));
function answers(count: number): number {
  let length = 0;
  for (let i = 0; i < count; i++) length += answerLine({ number: i + 1, text: texts[i & 255] }).text.length;
  return length;
}

/** Four times as many: enough to see memory grow that keeps something of every line. `LINES=1000000` sends as many as a large study. */
const FULL = { few: 5000, many: Number(process.env['LINES'] ?? 20_000) } as const;
const QUICK = { few: 500, many: 2500 } as const;

export async function run({ quick, put }: Session): Promise<void> {
  const timing = timeTogether({ mujoco: mujocoKinematics, answers }, quick ? 500 : 2000, quick ? 5 : 15);
  put(
    { what: 'swing line', value: timing.answers.ns / 1000, unit: 'us' },
    {
      what: 'swing line with delivery and flight',
      value: timing.answers.ofFirst,
      unit: 'mj_kinematics',
      goal: 'at most 500',
    },
    { what: 'swing lines', value: 1e9 / timing.answers.ns, unit: '1/s' },
  );
  const { few: fewLines, many: manyLines } = quick ? QUICK : FULL;
  const few = await runCommand(fewLines);
  put(
    { what: `command, ${fewLines} lines, start included`, value: fewLines / few.seconds, unit: 'lines/s' },
    { what: `command, ${fewLines} lines, peak memory`, value: few.peakMb, unit: 'MB' },
  );
  const many = await runCommand(manyLines);
  put(
    { what: `command, ${manyLines} lines`, value: manyLines / many.seconds, unit: 'lines/s' },
    { what: `command, ${manyLines} lines, peak memory`, value: many.peakMb, unit: 'MB' },
    {
      what: `peak memory, ${manyLines} lines over ${fewLines}`,
      value: many.peakMb / few.peakMb,
      unit: 'x',
      goal: 'at most 1.5',
    },
  );
}
