/** What one `tests/bench/*.bench.ts` file exports. */
export type Bench = {
  readonly name: string;
  run(): Promise<readonly Row[]>;
};

/** One measured number. A goal is words of the form "at most 50" or "at least 1000", read by `meetsGoal`. */
export type Row = {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly goal?: string;
};

export type Section = { readonly name: string; readonly rows: readonly Row[] };

const GOAL = /^at (most|least) (\d+(?:\.\d+)?)$/;

/** Whether a row meets its goal; undefined when it has none. A goal that cannot be read is an error, not a pass. */
export function meetsGoal({ what, value, goal }: Row): boolean | undefined {
  if (goal === undefined) return undefined;
  const [, bound, number] = GOAL.exec(goal) ?? [];
  if (number === undefined) throw new Error(`Goal of "${what}" is "${goal}". Write "at most 50" or "at least 50".`);
  return bound === 'most' ? value <= Number(number) : value >= Number(number);
}

/** Runs the benches one after the other: together they would measure each other. A failing one does not stop the rest. */
export async function measureAll(
  benches: readonly { file: string; bench: Bench }[],
): Promise<{ sections: Section[]; failures: string[] }> {
  const sections: Section[] = [];
  const failures: string[] = [];
  for (const { file, bench } of benches) {
    try {
      const rows = await bench.run();
      if (rows.length === 0) throw new Error('measured nothing');
      sections.push({ name: bench.name, rows });
    } catch (error) {
      failures.push(`${file}: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  return { sections, failures };
}

const VERDICT = { true: 'met', false: 'MISSED', undefined: '' } as const;

/** One plain table of all sections; columns are as wide as their longest entry. */
export function toTable(sections: readonly Section[]): string {
  const lines = sections.flatMap(({ name, rows }) =>
    rows.map((row) => [name, row.what, toDigits(row.value), row.unit, row.goal ?? '', VERDICT[`${meetsGoal(row)}`]]),
  );
  const all = [['bench', 'what', 'value', 'unit', 'goal', ''], ...lines];
  const widths = all[0].map((_, column) => Math.max(...all.map((line) => line[column].length)));
  return all
    .map((line) =>
      line
        .map((cell, column) => (column === 2 ? cell.padStart(widths[column]) : cell.padEnd(widths[column])))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** Three significant digits below 1000, whole numbers above: more would pretend the machine is quieter than it is. */
function toDigits(value: number): string {
  return Math.abs(value) >= 1000 ? Math.round(value).toString() : Number(value.toPrecision(3)).toString();
}
