/**
 * The light cell. Steady: R = R10·(E/10)^−gamma. Moving: the conductance y, relative to that at 10 lx, follows
 *   dy/dt = (E/10 − y^(1/gamma)) / tau
 * which is a pool of carriers filled in proportion to the light and emptied faster the fuller it is: quick in
 * bright light, slow into the dark. Makers' rise and fall times at 10 lx fix tau. SI units; y has none.
 */
import type { Cell } from '../design/design.ts';
import { CELLS } from '../parts/cells.ts';
import type { Lux, Ohms, Seconds } from '../quantity/units.ts';

/** Reference light of every figure in the makers' sheets. */
const REFERENCE_LUX = 10;

/** Published pair of times is met by one tau when it predicts the fall within this share. */
const ONE_TAU_WITHIN = 0.2;

export interface CellSpeed {
  readonly gamma: number;
  readonly riseTau: Seconds;
  readonly fallTau: Seconds;
}

/** Steady resistance at an illuminance, limited by the dark resistance. */
export function cellOhms(cell: Cell, lux: Lux): Ohms {
  return ohmsOf(cell, steadyConductance(cell.gamma, lux));
}

/** Steady relative conductance at an illuminance. */
export function steadyConductance(gamma: number, lux: Lux): number {
  return lux > 0 ? (lux / REFERENCE_LUX) ** gamma : 0;
}

/** Resistance as read, from the relative conductance: the dark value limits the reading, not y itself. */
export function ohmsOf(cell: Cell, y: number): Ohms {
  return Math.min(CELLS[cell.family].darkOhms, cell.r10Ohms / y);
}

/** The illuminance that holds the cell at a resistance; null when even darkness reads less than that. */
export function luxFor(cell: Cell, ohms: Ohms): Lux | null {
  if (ohms >= CELLS[cell.family].darkOhms || ohms <= 0) return null;
  return REFERENCE_LUX * (cell.r10Ohms / ohms) ** (1 / cell.gamma);
}

/** Time from dark to 63 % of the conductance at the light that gives y = 1, in units of tau. */
export function riseFactor(gamma: number): number {
  // ∫0^y dy/(1 − y^p), p = 1/gamma, as its series; y = 1 − 1/e keeps it short.
  const p = 1 / gamma;
  const y = 1 - Math.exp(-1);
  let sum = 0;
  for (let k = 0; k < 400; k++) {
    const term = y ** (k * p + 1) / (k * p + 1);
    sum += term;
    if (term < 1e-15 * sum) break;
  }
  return sum;
}

/** Time from y = 1 into the dark until 37 % is left, in units of tau. */
export function fallFactor(gamma: number): number {
  const q = 1 / gamma - 1;
  return q < 1e-9 ? 1 : (Math.exp(q) - 1) / q;
}

/** The cell's time constants, from its published times and its own slope. */
export function cellSpeed(cell: Cell): CellSpeed {
  const { riseSeconds, fallSeconds } = CELLS[cell.family];
  const riseTau = riseSeconds / riseFactor(cell.gamma);
  const predictedFall = riseTau * fallFactor(cell.gamma);
  const agree = Math.abs(predictedFall / fallSeconds - 1) <= ONE_TAU_WITHIN;
  return { gamma: cell.gamma, riseTau, fallTau: agree ? riseTau : fallSeconds / fallFactor(cell.gamma) };
}

/** dy/dt at an illuminance. */
export function conductanceSlope(speed: CellSpeed, y: number, lux: Lux): number {
  const gap = lux / REFERENCE_LUX - (y > 0 ? y ** (1 / speed.gamma) : 0);
  return gap / (gap > 0 ? speed.riseTau : speed.fallTau);
}

/** One Runge–Kutta step of fourth order; the light at start, middle and end of the step. */
export function stepConductance(
  speed: CellSpeed,
  y: number,
  step: Seconds,
  lux0: Lux,
  luxMiddle: Lux,
  lux1: Lux,
): number {
  const k1 = conductanceSlope(speed, y, lux0);
  const k2 = conductanceSlope(speed, y + (step / 2) * k1, luxMiddle);
  const k3 = conductanceSlope(speed, y + (step / 2) * k2, luxMiddle);
  const k4 = conductanceSlope(speed, y + step * k3, lux1);
  return Math.max(0, y + (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4));
}
