/**
 * The light cell. Steady: R = R10·(E/10)^−gamma. Moving: the conductance y, relative to that at 10 lx, follows
 *   dy/dt = (E/10 − y^(1/gamma)) / tau
 * which is a pool of carriers filled in proportion to the light and emptied faster the fuller it is: quick in
 * bright light, slow into the dark. Makers' rise and fall times at 10 lx fix tau. SI units; y has none.
 */
import type { Cell, Voice } from '../design/design.ts';
import { CELLS, LIGHT_HISTORY } from '../parts/cells.ts';
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

/** A voice's cell as it reads: one that was kept in the dark reads lower. */
export function cellOf({ cell, cellKept }: Pick<Voice, 'cell' | 'cellKept'>): Cell {
  return cellKept === 'dark' ? { ...cell, r10Ohms: cell.r10Ohms / LIGHT_HISTORY } : cell;
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
  const cell = new MovingCell(speed, y);
  cell.setLight(lux, lux, lux);
  return cell.startSlope;
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
  const cell = new MovingCell(speed, y);
  cell.setLight(lux0, luxMiddle, lux1);
  cell.step(step);
  return cell.y;
}

/** A step no longer than this share of the cell's own time constant keeps its order, and is far from unstable (2.8). */
const STEP_SHARE = 0.2;

/** Nor may a step change the conductance by more than this share: after a jump of light it moves far in little time. */
const CHANGE_SHARE = 0.1;

/** Below this share of where it goes, a conductance is as good as none, and need not be followed so closely. */
const NEXT_TO_NOTHING = 1e-3;

/**
 * After so many steps one way in light without a bend, at least forty of its time constants, a cell has forgotten how
 * it began; and a stretch of time that would need so many is one step in which it follows the light.
 */
const MANY_STEPS = 300;

/** Steps shorter than this would be lost in the rounding of a time. */
const SHORTEST_STEP: Seconds = 1e-11;

/** Nobody asks for longer steps than this: lights up to which it may be taken are worked out once. */
const LONGEST_STEP: Seconds = 0.00035;

/** A gap this small, relative to the light, is rounding: the cell stands still. */
const STILL = 1e-13;

/** Up to this far from y, relative to it, the power comes from its series: the first term left out is below 2e-13. */
const NEAR = 1 / 32;

/** A cell in time: its conductance y, and beside it the power y^(1/gamma) that each slope needs. */
export class MovingCell {
  /** Light over the step to come, relative to the reference: at its start, middle and end. */
  #light0 = 0;
  #lightMiddle = 0;
  #light1 = 0;
  #gamma = 1;
  #exponent = 1;
  #riseRate = 0;
  #fallRate = 0;
  /** Light, relative to the reference, up to which the longest step will do. */
  #calmLight = 0;
  #y = 0;
  #power = 0;
  /** The way the conductance goes: 1 up, −1 down, else neither; and longest steps made that way. */
  #way = 0;
  #steps = 0;
  #longest: Seconds = LONGEST_STEP;
  #follows = false;
  /** Binomial coefficients of the exponent, from the second on; the first is the exponent itself. */
  #c2 = 0;
  #c3 = 0;
  #c4 = 0;
  #c5 = 0;
  #c6 = 0;

  constructor(speed: CellSpeed, y: number) {
    this.#y = y;
    this.setSpeed(speed);
  }

  /** Another cell from now on; the conductance stays. */
  setSpeed({ gamma, riseTau, fallTau }: CellSpeed): void {
    const p = 1 / gamma;
    this.#gamma = gamma;
    this.#exponent = p;
    this.#riseRate = 1 / riseTau;
    this.#fallRate = 1 / fallTau;
    this.#calmLight = (STEP_SHARE / (LONGEST_STEP * this.#quickest * p)) ** (1 / (1 - gamma));
    this.#c2 = (p * (p - 1)) / 2;
    this.#c3 = (this.#c2 * (p - 2)) / 3;
    this.#c4 = (this.#c3 * (p - 3)) / 4;
    this.#c5 = (this.#c4 * (p - 4)) / 5;
    this.#c6 = (this.#c5 * (p - 5)) / 6;
    this.#power = powerOf(this.#y, p);
    this.bend();
  }

  /** The light bends or jumps here: the cell starts anew toward it. */
  bend(): void {
    this.#steps = 0;
  }

  /** Relative conductance. */
  get y(): number {
    return this.#y;
  }

  /** Light over the step to come: at its start, middle and end. */
  setLight(start: Lux, middle: Lux, end: Lux): void {
    this.#light0 = start / REFERENCE_LUX;
    this.#lightMiddle = middle / REFERENCE_LUX;
    this.#light1 = end / REFERENCE_LUX;
  }

  /** dy/dt in the light at the step's start. */
  get startSlope(): number {
    return this.#rate(this.#light0 - this.#power);
  }

  /** dy/dt in the light at the step's end. */
  get endSlope(): number {
    return this.#rate(this.#light1 - this.#power);
  }

  /** How much of a stretch of time may be taken in one step, in the light set over that stretch. */
  reach(seconds: Seconds): Seconds {
    this.#follows = false;
    if (this.#standsStill()) return seconds;
    const longest = this.#longestStep();
    this.#longest = longest;
    if (longest >= seconds) return seconds;
    const knowsNoStart =
      Math.abs(this.#way) === 1 && this.#steps > MANY_STEPS && longest * MANY_STEPS < seconds;
    this.#follows = knowsNoStart || longest < SHORTEST_STEP;
    return this.#follows ? seconds : longest;
  }

  #longestStep(): Seconds {
    const start = this.startSlope;
    const end = this.endSlope;
    // Bright light makes the cell quick: where it is or where it goes, whichever is brighter.
    const light = Math.max(this.#power, this.#light0, this.#lightMiddle, this.#light1);
    let byDecay = LONGEST_STEP;
    if (light > this.#calmLight) {
      // Up and down may have their own tau; a light that turns in between lets it go both ways.
      const turns = this.#lightMiddle > this.#light0 !== this.#light1 > this.#lightMiddle;
      const way = turns ? 0 : (Math.sign(start) + Math.sign(end)) / 2;
      if (way !== this.#way) this.#steps = 0;
      this.#way = way;
      const rate = way === 1 ? this.#riseRate : way === -1 ? this.#fallRate : this.#quickest;
      byDecay = STEP_SHARE / (rate * this.#exponent * light ** (1 - this.#gamma));
    } else this.#steps = 0;
    const fastest = Math.max(Math.abs(start), Math.abs(end));
    if (fastest * byDecay <= CHANGE_SHARE * this.#y) return byDecay;
    const least = NEXT_TO_NOTHING * light ** this.#gamma;
    return Math.min(byDecay, (CHANGE_SHARE * Math.max(this.#y, least)) / fastest);
  }

  #standsStill(): boolean {
    const light = this.#light0;
    if (light !== this.#lightMiddle || light !== this.#light1) return false;
    return Math.abs(light - this.#power) <= STILL * light;
  }

  get #quickest(): number {
    return Math.max(this.#riseRate, this.#fallRate);
  }

  /** One step in the light set, by Runge–Kutta's fourth order; or what `reach` said instead. */
  step(seconds: Seconds): void {
    if (this.#standsStill()) return;
    if (this.#follows) {
      this.#follow(seconds);
      return;
    }
    this.#steps += seconds / this.#longest;
    const y = this.#y;
    const half = seconds / 2;
    const middle = this.#lightMiddle;
    const k1 = this.startSlope;
    const k2 = this.#rate(middle - this.#powerFrom(y, half * k1));
    const k3 = this.#rate(middle - this.#powerFrom(y, half * k2));
    const k4 = this.#rate(this.#light1 - this.#powerFrom(y, seconds * k3));
    this.#stand(Math.max(0, y + (seconds / 6) * (k1 + 2 * k2 + 2 * k3 + k4)));
  }

  /** As `step` for each, to the last bit; side by side, so that the processor works on both long chains at once. */
  static stepBoth(a: MovingCell, b: MovingCell, seconds: Seconds): void {
    if (a.#follows || b.#follows || a.#standsStill() || b.#standsStill()) {
      a.step(seconds);
      b.step(seconds);
      return;
    }
    a.#steps += seconds / a.#longest;
    b.#steps += seconds / b.#longest;
    const ya = a.#y;
    const yb = b.#y;
    let ka = a.startSlope;
    let kb = b.startSlope;
    let sumA = ka;
    let sumB = kb;
    for (let stage = 0; stage < 3; stage++) {
      const isLast = stage === 2;
      const reach = isLast ? seconds : seconds / 2;
      const pa = a.#powerFrom(ya, reach * ka);
      const pb = b.#powerFrom(yb, reach * kb);
      ka = a.#rate((isLast ? a.#light1 : a.#lightMiddle) - pa);
      kb = b.#rate((isLast ? b.#light1 : b.#lightMiddle) - pb);
      sumA += isLast ? ka : 2 * ka;
      sumB += isLast ? kb : 2 * kb;
    }
    const sixth = seconds / 6;
    a.#stand(Math.max(0, ya + sixth * sumA));
    b.#stand(Math.max(0, yb + sixth * sumB));
  }

  /**
   * A step of very many of the cell's time constants, its start long forgotten: the cell then stands where the light
   * holds it, less what keeps it moving along with the light, tau·dy/dt. Off by the square of that lag.
   */
  #follow(seconds: Seconds): void {
    const light = this.#light1;
    if (light <= 0) {
      this.#stand(0);
      return;
    }
    // Slope at the end of the parabola through the three values.
    const change = (3 * light - 4 * this.#lightMiddle + this.#light0) / seconds;
    const moving = this.#gamma * light ** (this.#gamma - 1) * change;
    const lag = moving / (moving > 0 ? this.#riseRate : this.#fallRate);
    this.#stand(Math.max(0, light - lag) ** this.#gamma);
  }

  #stand(y: number): void {
    this.#y = y;
    this.#power = powerOf(y, this.#exponent);
  }

  #rate(gap: number): number {
    return gap * (gap > 0 ? this.#riseRate : this.#fallRate);
  }

  /** (y + change)^(1/gamma), from the power at y where that is near. */
  #powerFrom(y: number, change: number): number {
    const d = change / y;
    // Written so that NaN (0/0, from darkness into darkness) is not near.
    if (!(d < NEAR && d > -NEAR)) return powerOf(y + change, this.#exponent);
    const tail = this.#c3 + d * (this.#c4 + d * (this.#c5 + d * this.#c6));
    return this.#power * (1 + d * (this.#exponent + d * (this.#c2 + d * tail)));
  }
}

/** y to a power; 0 where there is none. Twice as fast as the general power, and as good to a few units of rounding. */
function powerOf(y: number, exponent: number): number {
  return y > 0 ? Math.exp(exponent * Math.log(y)) : 0;
}
