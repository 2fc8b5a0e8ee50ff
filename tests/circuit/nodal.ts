/**
 * An independent solver for the tests: resistors, fixed voltages and currents, by Kirchhoff's current law and
 * elimination. It shares nothing with the product's closed forms.
 */

/** Node names; "0" is 0 V. */
export type Part =
  | { readonly kind: 'resistor'; readonly between: readonly [string, string]; readonly ohms: number }
  | { readonly kind: 'rail'; readonly node: string; readonly volts: number }
  /** Current into a node, amperes. */
  | { readonly kind: 'current'; readonly into: string; readonly amperes: number };

export const resistor = (a: string, b: string, ohms: number): Part => ({
  kind: 'resistor',
  between: [a, b],
  ohms,
});
export const rail = (node: string, volts: number): Part => ({ kind: 'rail', node, volts });
export const current = (into: string, amperes: number): Part => ({ kind: 'current', into, amperes });

/** Voltage of every node. Resistors of 0 Ω are taken as a millionth of an ohm. */
export function solve(parts: readonly Part[]): Readonly<Record<string, number>> {
  const known: Record<string, number> = { '0': 0 };
  for (const part of parts) if (part.kind === 'rail') known[part.node] = part.volts;
  const names = new Set<string>();
  for (const part of parts) {
    if (part.kind === 'resistor') for (const node of part.between) names.add(node);
    if (part.kind === 'current') names.add(part.into);
  }
  const open = [...names].filter((name) => !(name in known));
  const at = new Map(open.map((name, i) => [name, i]));
  const rows = open.map(() => new Float64Array(open.length + 1));
  for (const part of parts) {
    if (part.kind === 'current') {
      const row = at.get(part.into);
      if (row !== undefined) rows[row]![open.length]! += part.amperes;
    }
    if (part.kind !== 'resistor') continue;
    const siemens = 1 / Math.max(1e-6, part.ohms);
    for (const [here, there] of [part.between, [part.between[1], part.between[0]] as const]) {
      const row = at.get(here);
      if (row === undefined) continue;
      rows[row]![row]! += siemens;
      const other = at.get(there);
      if (other === undefined) rows[row]![open.length]! += siemens * known[there]!;
      else rows[row]![other]! -= siemens;
    }
  }
  const volts = eliminated(rows);
  return { ...known, ...Object.fromEntries(open.map((name, i) => [name, volts[i]!])) };
}

function eliminated(rows: Float64Array[]): readonly number[] {
  const n = rows.length;
  for (let column = 0; column < n; column++) {
    let best = column;
    for (let r = column + 1; r < n; r++)
      if (Math.abs(rows[r]![column]!) > Math.abs(rows[best]![column]!)) best = r;
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    for (let r = 0; r < n; r++) {
      if (r === column) continue;
      const share = rows[r]![column]! / rows[column]![column]!;
      for (let c = column; c <= n; c++) rows[r]![c]! -= share * rows[column]![c]!;
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
}
