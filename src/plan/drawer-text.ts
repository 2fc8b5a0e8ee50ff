/** A drawer as the text that `drawer-file.ts` reads: a part a line. */
import type { Drawer, Stock } from '../design/pitch.ts';

type Lists = Pick<Drawer, 'resistors' | 'trimmers' | 'capacitors'>;

/** What one line says, entry by entry; empty where nothing is said. */
export interface DrawerLine {
  readonly value: string;
  readonly tolerance: string;
  readonly kind: string;
  readonly quantity: string;
  readonly price: string;
}

const PREFIXES: readonly (readonly [exponent: number, prefix: string])[] = [
  [6, 'M'],
  [3, 'k'],
  [0, ''],
  [-6, 'u'],
  [-9, 'n'],
  [-12, 'p'],
];

/** Shortest text of a value with its prefix that reads back as the same number. */
function valueText(value: number, unit: '' | 'F'): string {
  const fits = PREFIXES.find(([exponent]) => value >= Number(`1e${exponent}`)) ?? PREFIXES.at(-1)!;
  const [exponent, prefix] = unit === 'F' && fits[0] >= 0 ? ([-6, 'u'] as const) : fits;
  // By way of the exponent, so that no product rounds.
  const [mantissa, own] = value.toExponential().split('e') as [string, string];
  return `${Number(`${mantissa}e${Number(own) - exponent}`)}${prefix}${unit}`;
}

function percent(share: number): string {
  const [mantissa, exponent] = share.toExponential().split('e') as [string, string];
  return `${Number(`${mantissa}e${Number(exponent) + 2}`)}%`;
}

const stockOf = ({ quantity, price }: Stock) => ({
  quantity: quantity === null ? '' : String(quantity),
  price: price === null ? '' : String(price),
});

/** Every part of a drawer, resistors first. */
export function drawerLines({ resistors, trimmers, capacitors }: Lists): readonly DrawerLine[] {
  return [
    ...resistors.map((one) => ({
      ...stockOf(one),
      kind: 'resistor',
      ...valued(one.ohms, '', one.tolerance),
    })),
    ...trimmers.map((one) => ({ ...stockOf(one), kind: one.part, ...valued(one.ohms, '', one.tolerance) })),
    ...capacitors.map((one) => ({
      ...stockOf(one),
      kind: one.dielectric,
      ...valued(one.farads, 'F', one.tolerance),
    })),
  ];
}

const valued = (value: number, unit: '' | 'F', tolerance: number) => ({
  value: valueText(value, unit),
  tolerance: percent(tolerance),
});

export function drawerText(lists: Lists): string {
  return drawerLines(lists)
    .map(({ value, kind, tolerance, quantity, price }) =>
      [value, kind, tolerance, quantity && `x${quantity}`, price && `@${price}`].filter(Boolean).join(' '),
    )
    .join('\n');
}
