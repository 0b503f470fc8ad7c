import type { WithPage } from './site';

/** What one `tests/bench/*.bench.ts` file exports. */
export interface Bench {
  readonly name: string;
  /** False where no row has a goal: a quick run leaves it out. */
  readonly hasGoals?: false;
  /** Measures, and hands over each row as soon as it is known. */
  readonly run: (session: Session) => Promise<void> | void;
}

/** What a bench is run with. */
export interface Session {
  /** Only the rows with a goal are wanted, from as few repetitions as still tell met from missed. */
  readonly quick: boolean;
  /** Lends a page and the address of the built app, which is built once for all benches. */
  readonly withPage: WithPage;
  readonly put: (...rows: readonly Row[]) => void;
}

/** One measured number. A goal is words of the form "at most 50" or "at least 1000", read by `meetsGoal`. */
export interface Row {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly goal?: string | undefined;
}

const GOAL = /^at (most|least) (\d+(?:\.\d+)?)$/;

/** Whether a row meets its goal; undefined when it has none. A goal that cannot be read is an error, not a pass. */
export function meetsGoal({ what, value, goal }: Row): boolean | undefined {
  if (goal === undefined) return undefined;
  const [, bound, number] = GOAL.exec(goal) ?? [];
  if (number === undefined) throw new Error(`Goal of "${what}" is "${goal}". Write "at most 50" or "at least 50".`);
  return bound === 'most' ? value <= Number(number) : value >= Number(number);
}

/** How a run ended. */
export interface Summary {
  readonly met: number;
  readonly missed: number;
  /** Benches that threw or measured nothing. */
  readonly failures: number;
}

/**
 * Runs the benches one after the other: together they would measure each other. Prints each row as it comes. A failing bench does
 * not stop the rest.
 */
export async function measureAll(
  benches: readonly { readonly file: string; readonly load: () => Bench | Promise<Bench> }[],
  session: Omit<Session, 'put'>,
  print: (line: string) => void,
): Promise<Summary> {
  const count = { met: 0, missed: 0, failures: 0 };
  const began = performance.now();
  for (const { file, load } of benches) {
    const start = performance.now();
    let rows = 0;
    const put = (...given: readonly Row[]): void => {
      for (const row of given) {
        rows++;
        const isMet = meetsGoal(row);
        if (isMet !== undefined) count[isMet ? 'met' : 'missed']++;
        if (isMet !== undefined || !session.quick) print(toLine(row));
      }
    };
    try {
      const bench = await load();
      if (session.quick && bench.hasGoals === false) continue;
      print(bench.name);
      await bench.run({ ...session, put });
      if (rows === 0) throw new Error('measured nothing');
    } catch (error) {
      count.failures++;
      print(`  FAILED ${file}: ${error instanceof Error ? error.message : String(error)}`);
    }
    print(`  (${toSeconds(start)} s)`);
  }
  print(
    `${count.met} goals MET, ${count.missed} MISSED, ${count.failures} benches failed, ${toSeconds(began)} s in all`,
  );
  return count;
}

/** Whole seconds since then. */
const toSeconds = (start: number): string => ((performance.now() - start) / 1000).toFixed(0);

const VERDICT = { true: 'MET', false: 'MISSED', undefined: '' } as const;
/** Widths of the columns: rows are printed before the longest entry is known. */
const WIDTHS = { what: 74, value: 8, unit: 14, goal: 16 } as const;

/** A row as a line of the table. */
export function toLine(row: Row): string {
  const { what, value, unit, goal = '' } = row;
  return [
    `  ${what.padEnd(WIDTHS.what)}`,
    toDigits(value).padStart(WIDTHS.value),
    unit.padEnd(WIDTHS.unit),
    goal.padEnd(WIDTHS.goal),
    VERDICT[`${meetsGoal(row)}`],
  ]
    .join(' ')
    .trimEnd();
}

/** The value that this share of the values stays below: 0.5 is the median. */
export const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))];

/** Three significant digits below 1000, whole numbers above: more would pretend the machine is quieter than it is. */
function toDigits(value: number): string {
  return Math.abs(value) >= 1000 ? Math.round(value).toString() : Number(value.toPrecision(3)).toString();
}
