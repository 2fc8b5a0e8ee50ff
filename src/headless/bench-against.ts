/** What was measured, beside what was measured at a landing before: one line for each figure that is a number. */
import os from 'node:os';

export type Results = Readonly<Record<string, unknown>>;

export interface Baseline {
  /** What it was measured on. */
  readonly machine: string;
  readonly results: Results;
}

/** With the load of its last minute: beside others' work, what goes by the clock comes out worse than it is. */
export function thisMachine(browser: string | null): string {
  const cpus = os.cpus();
  const gigabytes = (os.totalmem() / 1e9).toFixed(0);
  const model = cpus[0]?.model.trim() ?? 'unknown processor';
  return [
    `${cpus.length} × ${model}`,
    `${gigabytes} GB`,
    `${os.type()} ${os.arch()}`,
    `Node ${process.versions.node}`,
    ...(browser === null ? [] : [`Chromium ${browser}`]),
    `load ${os.loadavg()[0]!.toFixed(1)}`,
  ].join(', ');
}

/** Numbers by their path, such as `aliasDb.engine.glide`. */
function numbersIn(results: unknown, path = ''): ReadonlyMap<string, number> {
  if (typeof results === 'number') return new Map([[path, results]]);
  if (typeof results !== 'object' || results === null) return new Map();
  return new Map(
    Object.entries(results).flatMap(([key, value]) => [
      ...numbersIn(value, path === '' ? key : `${path}.${key}`),
    ]),
  );
}

const shown = (value: number | undefined): string =>
  value === undefined ? '–' : `${Number(value.toPrecision(4))}`;

/** The figure, then, now, and now as a share of then. */
export function comparison(before: Results, now: Results): readonly string[] {
  const [old, fresh] = [numbersIn(before), numbersIn(now)];
  const names = [...new Set([...old.keys(), ...fresh.keys()])];
  const rows = names.map((name) => {
    const [was, is] = [old.get(name), fresh.get(name)];
    const share = was === undefined || is === undefined || was === 0 ? '' : `× ${(is / was).toFixed(2)}`;
    return [name, shown(was), shown(is), share];
  });
  const table = [['', 'then', 'now', ''], ...rows];
  const wide = [0, 1, 2, 3].map((column) => Math.max(...table.map((row) => row[column]!.length)));
  return table.map((row) =>
    row
      .map((cell, column) => (column === 0 ? cell.padEnd(wide[0]!) : cell.padStart(wide[column]!)))
      .join('  ')
      .trimEnd(),
  );
}

/** The README with this run's figures in its table, four significant figures each, and the machine above it. */
export function readmeWith(readme: string, { machine, results }: Baseline): string {
  return readme
    .replace(/^Measured on .*$/m, () => `Measured on ${machine}.`)
    .replaceAll(/^(\| `(\w+)` \|) [^|]* \|/gm, (row, start: string, key: string) => {
      const value = results[key];
      return typeof value === 'number' ? `${start} ${Number(value.toPrecision(4))} |` : row;
    });
}
