/** What a truth table holds, and how an evaluator reads a row's inputs. */

type Value = number | string | null;

export interface Row {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  readonly kind: string;
  readonly inputs: Readonly<Record<string, Value>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly allowed: { readonly relative: number } | { readonly absolute: number };
  readonly unit: string;
}

/** A row as read from its file. Throws, with the place, on anything that is not one. */
export function readRow(value: unknown, place: string): Row {
  const row = value as Row;
  const texts = [row.id, row.what, row.source, row.kind, row.unit];
  const [allowed, ...others] = Object.entries(row.allowed ?? {});
  const sound =
    texts.every((text) => typeof text === 'string' && text !== '') &&
    Object.values(row.expected ?? {}).length > 0 &&
    Object.values(row.expected).every(Number.isFinite) &&
    typeof row.inputs === 'object' &&
    others.length === 0 &&
    (allowed?.[0] === 'relative' || allowed?.[0] === 'absolute') &&
    allowed[1] > 0;
  if (!sound) throw new Error(`${place} is not a row of a truth table`);
  return row;
}

/** Reads inputs by name and notices one that is missing. */
export class Inputs {
  readonly #values: Readonly<Record<string, Value>>;

  constructor(values: Readonly<Record<string, Value>>) {
    this.#values = values;
  }

  number(name: string): number {
    const value = this.#values[name];
    if (typeof value !== 'number') throw new Error(`The row has no number "${name}".`);
    return value;
  }

  numberOr<T>(name: string, otherwise: T): number | T {
    return typeof this.#values[name] === 'number' ? this.number(name) : otherwise;
  }

  text(name: string): string {
    const value = this.#values[name];
    if (typeof value !== 'string') throw new Error(`The row has no text "${name}".`);
    return value;
  }
}

/** Figures of a row by name, from the product's own functions; its inputs come from the table. */
export type Evaluators = Readonly<Record<string, (inputs: Inputs) => Readonly<Record<string, number>>>>;
