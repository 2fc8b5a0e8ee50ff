/** Lines, bands, ticks and patterns of the hours chart. Pixels, hours, lux; the drawing itself is `hours-chart.ts`. */
import { css, svg } from 'lit';
import type { Lux } from '../../quantity/units.ts';
import type { Course } from './calm-place.ts';

/** `y` null: not known there. */
export interface Point {
  readonly x: number;
  readonly y: number | null;
}

type Placed = Point & { readonly y: number };

/** Runs of points that are known. */
function piecesOf(points: readonly Point[]): readonly (readonly Placed[])[] {
  const pieces: Placed[][] = [];
  let open = false;
  for (const point of points) {
    if (point.y === null) {
      open = false;
      continue;
    }
    if (!open) pieces.push([]);
    pieces.at(-1)!.push(point as Placed);
    open = true;
  }
  return pieces;
}

const at = ({ x, y }: Placed): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

export function lineThrough(points: readonly Point[]): string {
  return piecesOf(points)
    .map((piece) => `M${piece.map(at).join('L')}`)
    .join('');
}

/** Both edges know the same hours. */
export function areaBetween(low: readonly Point[], high: readonly Point[]): string {
  const lows = piecesOf(low);
  return piecesOf(high)
    .map((piece, i) => `M${piece.map(at).join('L')}L${(lows[i] ?? []).toReversed().map(at).join('L')}Z`)
    .join('');
}

/** A line's height at any x, straight between its points. */
export function courseOf(points: readonly Point[]): Course {
  return (x) => {
    const after = points.findIndex((point) => point.x >= x);
    if (after <= 0) return after === 0 && points[0]!.x === x ? points[0]!.y : null;
    const [a, b] = [points[after - 1]!, points[after]!];
    if (a.y === null || b.y === null) return null;
    return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
  };
}

/** Widest span drawn: what is more than five decades beneath the top is as good as dark. */
const MOST = 1e5;
const AROUND = 1.5;

/** From a little below the least light to a little above the most, never less than a decade. */
export function luxSpan(light: readonly Lux[], thresholds: readonly Lux[]): [Lux, Lux] {
  const top = Math.max(1, ...light) * AROUND;
  const inSight = [...light, ...thresholds].filter(
    (lux) => lux > 0 && Number.isFinite(lux) && lux <= 20 * top,
  );
  const most = Math.max(top, ...inSight.map((lux) => lux * 1.1));
  const least = Math.min(...inSight, most / 10) / AROUND;
  return [Math.max(least, most / MOST), most];
}

/** 1 and 3 in every decade; where there is little room the tens alone. */
export function luxTicks([least, most]: readonly [Lux, Lux], few: boolean): readonly Lux[] {
  const ticks: Lux[] = [];
  for (let decade = Math.floor(Math.log10(least)); decade <= Math.log10(most); decade++)
    for (const step of few && most / least > 1000 ? [1] : [1, 3]) {
      const lux = Number((step * 10 ** decade).toPrecision(1));
      if (lux >= least && lux <= most) ticks.push(lux);
    }
  return ticks;
}

const STEPS = [0.25, 0.5, 1, 2, 3, 4, 6];

/** Round hours, as many as there is room for. */
export function hourTicks([from, to]: readonly [number, number], room: number): readonly number[] {
  const step = STEPS.find((each) => (to - from) / each <= room) ?? 12;
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.max(0, Math.floor(to / step + 1e-9) - first + 1);
  return Array.from({ length: count }, (_, i) => (first + i) * step);
}

/** Fillings that tell the states apart without colour: full, slanted lines, crossed lines. */
export const statePatterns = svg`
  <pattern id="slanted" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
    <rect class="ground" width="7" height="7"></rect>
    <rect class="stripe marginal" width="2.5" height="7"></rect>
  </pattern>
  <pattern id="crossed" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
    <rect class="ground" width="8" height="8"></rect>
    <rect class="stripe wrong" width="1.5" height="8"></rect>
    <rect class="stripe wrong" width="8" height="1.5"></rect>
  </pattern>`;

export const hoursStyles = css`
  .drawing {
    min-height: 22rem;
  }
  .cloud {
    fill: var(--ink);
    opacity: 0.14;
  }
  .cloud.shade {
    opacity: 0.08;
  }
  .course {
    fill: none;
    stroke: var(--ink);
    stroke-width: var(--stroke-data);
  }
  .course.shade {
    stroke-dasharray: 2 5;
    stroke-linecap: round;
  }
  .read {
    fill: var(--paper);
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .run {
    stroke-width: 1.5;
  }
  .run.right {
    fill: var(--good);
    stroke: var(--good);
  }
  .run.marginal {
    fill: url(#slanted);
    stroke: var(--caution);
  }
  .run.wrong {
    fill: url(#crossed);
    stroke: var(--fault);
  }
  .run.unknown {
    fill: none;
    stroke: var(--muted);
    stroke-dasharray: 3 4;
  }
  .ground {
    fill: var(--paper);
  }
  .stripe.marginal {
    fill: var(--caution);
  }
  .stripe.wrong {
    fill: var(--fault);
  }
  svg.chart text.state {
    font-weight: 600;
  }
  svg.chart text.state.right {
    fill: var(--good);
  }
  svg.chart text.state.marginal {
    fill: var(--caution);
  }
  svg.chart text.state.wrong {
    fill: var(--fault);
  }
  svg.chart text.state.unknown {
    fill: var(--muted);
  }
  .cursor {
    padding-left: calc(var(--chart-left, 3em) - 8px);
  }
  .cursor input {
    display: block;
    width: 100%;
    height: 24px;
    margin: 0;
    accent-color: var(--accent);
  }
  .words {
    min-height: 1.4em;
    margin: 2px 0 6px;
    max-width: none;
    font-size: var(--text-control);
  }
  @media (max-width: 32.5em) {
    .drawing {
      min-height: 19rem;
    }
  }
  @media (forced-colors: active) {
    .cloud {
      fill: CanvasText;
    }
  }
`;
