/**
 * The drawer as a search uses it: every part once, in one order whatever the order of its lines, with what may be
 * ordered added. Lines of the same part are one part with the quantities added and the lowest price.
 */
import type { Drawer, DrawerCapacitor, DrawerResistor, DrawerTrimmer, Stock } from '../design/pitch.ts';
import { seriesBetween, TIMING_FARADS, TIMING_OHMS, TRIMMER_OHMS } from '../parts/preferred.ts';
import { TRIMMERS } from '../parts/trimmers.ts';

export interface Parts {
  readonly resistors: readonly DrawerResistor[];
  readonly trimmers: readonly DrawerTrimmer[];
  readonly capacitors: readonly DrawerCapacitor[];
}

const ORDERED: Stock = { quantity: null, price: null };

/** Parts at hand, and those that may be ordered. With `use: 'order'` nothing runs short. */
export function partsOf({ use, order, ...lists }: Drawer): Parts {
  const orders = use === 'order';
  const { resistors, trimmers, capacitors } = orders ? order : NO_ORDER;
  return {
    resistors: merged(
      [
        ...lists.resistors,
        ...(resistors === null
          ? []
          : seriesBetween(resistors.series, TIMING_OHMS.min, TIMING_OHMS.max).map((ohms) => ({
              ohms,
              tolerance: resistors.tolerance,
              ...ORDERED,
            }))),
      ],
      ({ ohms, tolerance }) => [ohms, tolerance],
      orders,
    ),
    trimmers: merged(
      [
        ...lists.trimmers,
        ...(trimmers === null
          ? []
          : TRIMMER_OHMS.map((ohms) => ({
              ohms,
              part: trimmers.part,
              tolerance: TRIMMERS[trimmers.part].tolerance,
              ...ORDERED,
            }))),
      ],
      ({ ohms, part, tolerance }) => [ohms, part, tolerance],
      orders,
    ),
    capacitors: merged(
      [
        ...lists.capacitors,
        ...(capacitors === null
          ? []
          : seriesBetween(capacitors.series, TIMING_FARADS.min, TIMING_FARADS.max).map((farads) => ({
              farads,
              dielectric: capacitors.dielectric,
              tolerance: capacitors.tolerance,
              ...ORDERED,
            }))),
      ],
      ({ farads, dielectric, tolerance }) => [farads, dielectric, tolerance],
      orders,
    ),
  };
}

const NO_ORDER: Drawer['order'] = { resistors: null, trimmers: null, capacitors: null };

type Key = readonly (number | string)[];

function merged<T extends Stock>(
  lines: readonly T[],
  keyOf: (part: T) => Key,
  orders: boolean,
): readonly T[] {
  const byKey = new Map<string, T>();
  for (const line of lines) {
    const key = keyOf(line).join('|');
    const other = byKey.get(key);
    byKey.set(key, other === undefined ? line : { ...other, ...together(other, line) });
  }
  const all = [...byKey.values()].map((part) => (orders ? { ...part, quantity: null } : part));
  return all
    .filter(({ quantity }) => quantity === null || quantity > 0)
    .toSorted((a, b) => compare(keyOf(a), keyOf(b)));
}

function together(a: Stock, b: Stock): Stock {
  const quantity = a.quantity === null || b.quantity === null ? null : a.quantity + b.quantity;
  const price = a.price === null ? b.price : b.price === null ? a.price : Math.min(a.price, b.price);
  return { quantity, price };
}

function compare(a: Key, b: Key): number {
  for (const [i, one] of a.entries()) {
    const other = b[i]!;
    if (one !== other) return one < other ? -1 : 1;
  }
  return 0;
}
