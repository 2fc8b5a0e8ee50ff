/** The truth table of a 555-type timer followed in small steps: TI SLFS022, reset over trigger over threshold. */
import type { Astable } from '../../src/circuit/astable.ts';

export interface Edge {
  readonly time: number;
  readonly high: boolean;
}

/** A reset pin that is released or held from given moments on. */
export type Pins = readonly { readonly time: number; readonly released: boolean }[];

/** Edges of the output when the reset pin moves as told; the capacitor starts empty. */
export function steppedEdges(a: Astable, pins: Pins, seconds: number, startsReleased: boolean): Edge[] {
  const step = 2e-7;
  const up = Math.exp(-step / (a.chargeOhms * a.farads));
  const down = Math.exp(-step / (a.sinkOhms * a.farads));
  let volts = 0;
  let released = startsReleased;
  let latch = false;
  let high = released;
  let next = 0;
  const edges: Edge[] = [];
  for (let i = 0; i * step < seconds; i++) {
    const t = i * step;
    while (next < pins.length && pins[next]!.time <= t) released = pins[next++]!.released;
    if (!released) latch = false;
    else if (volts <= a.lowerVolts) latch = true;
    else if (volts >= a.upperVolts) latch = false;
    if (latch !== high) {
      edges.push({ time: t, high: latch });
      high = latch;
    }
    volts = latch ? a.chargeVolts + (volts - a.chargeVolts) * up : a.sinkVolts + (volts - a.sinkVolts) * down;
  }
  return edges;
}
