/**
 * `<hours-chart>`: light through the hours of a day, lit and under the event's shadow, each a line in its band, on a
 * logarithmic scale; the threshold across it; and beneath, when the voices gate rightly. A cursor walks the hours.
 */
import { scaleLinear, scaleLog } from 'd3-scale';
import { html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Lux } from '../../quantity/units.ts';
import { common } from '../theme/shared.ts';
import { type Box, type Course, calmPlace, isFree } from './calm-place.ts';
import { chartStyles, tableOnDemand } from './chart.ts';
import {
  areaBetween,
  courseOf,
  hoursStyles,
  hourTicks,
  lineThrough,
  luxSpan,
  luxTicks,
  type Point,
  statePatterns,
} from './hours-marks.ts';
import { keepApart, placeBelow } from './placement.ts';
import { Sheet } from './sheet.ts';

export interface Band {
  readonly low: Lux;
  readonly middle: Lux;
  readonly high: Lux;
}

/** The light at one hour; null = not known. */
export interface HourLight {
  readonly hour: number;
  readonly lit: Band;
  readonly shade: Band;
  readonly known: boolean;
}

/** A setting that stands from one hour to another: above `upper` is light, below `lower` shade. */
export interface HourThreshold {
  readonly from: number;
  readonly to: number;
  readonly upper: Lux;
  readonly lower: Lux;
  readonly label: string;
  /** Its figures alone, where there is little room. */
  readonly shortLabel: string;
}

export interface HourRun {
  readonly from: number;
  readonly to: number;
  readonly state: 'right' | 'marginal' | 'wrong' | 'unknown';
  readonly label: string;
}

const BAR = 22;
const STEP = 1 / 12;

export class HoursChart extends LitElement {
  static override properties = {
    light: { attribute: false },
    thresholds: { attribute: false },
    runs: { attribute: false },
    marks: { attribute: false },
    cursor: { state: true },
    axisLabel: { type: String, attribute: 'axis-label' },
    litLabel: { type: String, attribute: 'lit-label' },
    shadeLabel: { type: String, attribute: 'shade-label' },
    summary: { type: String },
    describe: { attribute: false },
    formatHour: { attribute: false },
    formatLux: { attribute: false },
    cursorLabel: { type: String, attribute: 'cursor-label' },
    cursorHint: { type: String, attribute: 'cursor-hint' },
    tableLabel: { type: String, attribute: 'table-label' },
    heads: { attribute: false },
    rows: { attribute: false },
  };
  static override styles = [common, chartStyles, hoursStyles];

  declare light: readonly HourLight[];
  declare thresholds: readonly HourThreshold[];
  declare runs: readonly HourRun[];
  /** What was read, as points. */
  declare marks: readonly { readonly hour: number; readonly lux: Lux }[];
  /** The hour looked at. */
  declare cursor: number | null;
  declare axisLabel: string;
  declare litLabel: string;
  declare shadeLabel: string;
  declare summary: string;
  /** One hour in words. */
  declare describe: (hour: number) => string;
  declare formatHour: (hour: number) => string;
  declare formatLux: (lux: Lux) => string;
  declare cursorLabel: string;
  declare cursorHint: string;
  declare tableLabel: string;
  declare heads: readonly string[];
  declare rows: readonly (readonly string[])[];

  readonly #sheet = new Sheet(this);

  constructor() {
    super();
    this.light = [];
    this.thresholds = [];
    this.runs = [];
    this.marks = [];
    this.cursor = null;
    this.axisLabel = '';
    this.litLabel = '';
    this.shadeLabel = '';
    this.summary = '';
    this.describe = () => '';
    this.formatHour = String;
    this.formatLux = String;
    this.cursorLabel = '';
    this.cursorHint = '';
    this.tableLabel = '';
    this.heads = [];
    this.rows = [];
  }

  protected override render(): TemplateResult {
    const [from, to] = this.#span();
    const words = this.cursor === null ? '' : this.describe(this.cursor);
    return html`<figure>
      <div class="drawing">${this.#sheet.width > 0 && this.light.length > 1 ? this.#draw() : nothing}</div>
      <div class="cursor">
        <input
          type="range"
          min=${from}
          max=${to}
          step=${STEP}
          .value=${live(String(this.cursor ?? from))}
          aria-label=${this.cursorLabel}
          aria-valuetext=${words || this.formatHour(from)}
          aria-describedby="hint"
          @input=${this.#move}
        />
      </div>
      <p class="words">${words || html`<span class="muted">${this.cursorHint}</span>`}</p>
      <span id="hint" class="visually-hidden">${this.cursorHint}</span>
      ${tableOnDemand({ toggle: this.tableLabel, heads: this.heads, rows: this.rows })}
    </figure>`;
  }

  readonly #move = (event: Event): void => {
    this.cursor = Number((event.currentTarget as HTMLInputElement).value);
  };

  #span(): readonly [number, number] {
    return [this.light[0]?.hour ?? 0, this.light.at(-1)?.hour ?? 24];
  }

  #draw(): TemplateResult {
    const sheet = this.#sheet;
    const { width, fontSize } = sheet;
    const row = Math.ceil(fontSize * 1.4);
    const known = this.light.filter((one) => one.known);
    const span = luxSpan(
      known.flatMap(({ lit, shade }) => [lit.high, lit.low, shade.high, shade.low]),
      this.thresholds.flatMap(({ upper, lower }) => [upper, lower]),
    );
    const ticks = luxTicks(span, sheet.narrow);
    const left = Math.ceil(Math.max(...ticks.map((lux) => sheet.measure(this.formatLux(lux)))) + 12);
    const right = width - 8;
    const top = row + 4;
    const bottom = top + Math.round(fontSize * (sheet.narrow ? 15 : 20));
    const x = scaleLinear().domain(this.#span()).range([left, right]);
    const y = scaleLog().domain(span).range([bottom, top]).clamp(true);
    const points = (of: (one: HourLight) => Lux): readonly Point[] =>
      this.light.map((one) => ({ x: x(one.hour), y: one.known && of(one) > 0 ? y(of(one)) : null }));
    const lit = {
      low: points((p) => p.lit.low),
      middle: points((p) => p.lit.middle),
      high: points((p) => p.lit.high),
    };
    const shade = {
      low: points((p) => p.shade.low),
      middle: points((p) => p.shade.middle),
      high: points((p) => p.shade.high),
    };
    const names = this.#names(
      { left: left + 6, right, top, bottom: bottom - 2 },
      [lit.low, lit.middle, lit.high].map(courseOf),
      [shade.low, shade.middle, shade.high].map(courseOf),
      x,
      y,
    );
    const bar = bottom + row + 14;
    const below = this.#below(x, bar + BAR, row, width);
    const cursor = this.cursor === null ? null : x(this.cursor);
    this.style.setProperty('--chart-left', `${left}px`);
    return html`<svg
      class="chart"
      role="img"
      aria-label=${this.summary}
      width=${width}
      height=${below.bottom}
      viewBox="0 0 ${width} ${below.bottom}"
    >
      <defs>${statePatterns}</defs>
      <text class="quiet" x="0" y=${row * 0.5} dy="0.35em">${this.axisLabel}</text>
      <path class="cloud lit" d=${areaBetween(lit.low, lit.high)}></path>
      <path class="cloud shade" d=${areaBetween(shade.low, shade.high)}></path>
      <path class="course lit" d=${lineThrough(lit.middle)}></path>
      <path class="course shade" d=${lineThrough(shade.middle)}></path>
      ${this.thresholds.map(
        ({
          from,
          to,
          upper,
          lower,
        }) => svg`<rect class="band both" x=${x(from)} width=${Math.max(0, x(to) - x(from))}
            y=${y(upper)} height=${Math.max(0, y(lower) - y(upper))}></rect>
          <path class="edge both" d=${`M${x(from)} ${y(upper)}H${x(to)}M${x(from)} ${y(lower)}H${x(to)}`}></path>`,
      )}
      ${this.marks.map(({ hour, lux }) => svg`<circle class="read" cx=${x(hour)} cy=${y(lux)} r="4"></circle>`)}
      ${cursor === null ? nothing : svg`<line class="leader" x1=${cursor} x2=${cursor} y1=${top} y2=${bar + BAR}></line>`}
      <path class="axis" d=${`M${left} ${top}V${bottom}H${right}`}></path>
      ${ticks.map(
        (lux) => svg`<line class="axis" x1=${left - 5} x2=${left} y1=${y(lux)} y2=${y(lux)}></line>
          <text class="quiet" x=${left - 9} y=${y(lux)} dy="0.35em" text-anchor="end">${this.formatLux(lux)}</text>`,
      )}
      ${this.#hours(x, bottom, row, width)}
      ${this.runs.map(({ from, to, state }) => {
        const wide = Math.max(1, x(to) - x(from));
        return svg`<rect class="run ${state}" x=${x(from)} width=${wide} y=${bar} height=${BAR}></rect>`;
      })}
      ${below.drawing} ${names}
    </svg>`;
  }

  /** Names at the freest places of their lines. */
  #names(
    frame: Box,
    lit: readonly Course[],
    shade: readonly Course[],
    x: (hour: number) => number,
    y: (lux: Lux) => number,
  ): readonly (SVGTemplateResult | typeof nothing)[] {
    const sheet = this.#sheet;
    const height = Math.ceil(sheet.fontSize * 1.2);
    const lines = this.thresholds.map(({ from, to, upper, lower }) => {
      const within = (at: number) => at >= x(from) && at <= x(to);
      const edge =
        (lux: Lux): Course =>
        (at) =>
          within(at) ? y(lux) : null;
      return { from: x(from), to: x(to), upper: edge(upper), lower: edge(lower) };
    });
    const all: readonly Course[] = [...lit, ...shade, ...lines.flatMap(({ upper, lower }) => [upper, lower])];
    // A tint's edge may run beneath letters; a line may not.
    const drawn = [lit[1]!, shade[1]!, ...lines.flatMap(({ upper, lower }) => [upper, lower])];
    const taken: Box[] = [];
    const name = (
      [text, ...shorter]: readonly [string, ...string[]],
      face: 'plain' | 'bold',
      kind: string,
      at: { course: Course; from: number; to: number },
    ): SVGTemplateResult | typeof nothing => {
      const width = sheet.measure(text, face);
      const box = calmPlace({ ...at, width, height }, all, taken, frame);
      const [next, ...rest] = shorter;
      if (next !== undefined && (box === null || !isFree(box, drawn, taken)))
        return name([next, ...rest], face, kind, at);
      if (box === null) return nothing;
      taken.push(box);
      return svg`<text class=${kind} x=${box.left} y=${(box.top + box.bottom) / 2} dy="0.35em">${text}</text>`;
    };
    const whole = { from: frame.left, to: frame.right };
    return [
      ...this.thresholds.map(({ label, shortLabel }, i) =>
        name([label, shortLabel], 'bold', 'both', { ...lines[i]!, course: lines[i]!.upper }),
      ),
      name([this.litLabel], 'plain', '', { ...whole, course: lit[2]! }),
      name([this.shadeLabel], 'plain', '', { ...whole, course: shade[0]! }),
    ];
  }

  #hours(
    x: (hour: number) => number,
    bottom: number,
    row: number,
    width: number,
  ): readonly SVGTemplateResult[] {
    const sheet = this.#sheet;
    const ticks = hourTicks(this.#span(), width / (sheet.fontSize * 4.2));
    const texts = ticks.map((hour) => {
      const text = this.formatHour(hour);
      const wide = sheet.measure(text);
      return { hour, text, x: Math.min(x(hour), width - wide / 2), width: wide };
    });
    const kept = keepApart(texts);
    return texts.map(
      (
        one,
        i,
      ) => svg`<line class="axis" x1=${x(one.hour)} x2=${x(one.hour)} y1=${bottom} y2=${bottom + 5}></line>
        ${kept[i] ? svg`<text class="quiet" x=${one.x} y=${bottom + 6 + row / 2} dy="0.35em" text-anchor="middle">${one.text}</text>` : nothing}`,
    );
  }

  /** What each stretch is, in words, in as many rows as they need. */
  #below(
    x: (hour: number) => number,
    top: number,
    row: number,
    width: number,
  ): { readonly drawing: readonly SVGTemplateResult[]; readonly bottom: number } {
    const sheet = this.#sheet;
    const spots = placeBelow(
      this.runs.map(({ from, to, label }) => ({
        x: (x(from) + x(to)) / 2,
        width: sheet.measure(label, 'bold'),
      })),
      width,
    );
    const rows = spots.reduce((most, spot) => Math.max(most, spot.row + 1), 1);
    return {
      drawing: this.runs.map(({ label, state }, i) => {
        const { left, row: at } = spots[i]!;
        return svg`<text class="state ${state}" x=${left} y=${top + 6 + (at + 0.5) * row} dy="0.35em">${label}</text>`;
      }),
      bottom: Math.ceil(top + 6 + rows * row + 2),
    };
  }
}

customElements.define('hours-chart', HoursChart);

declare global {
  interface HTMLElementTagNameMap {
    'hours-chart': HoursChart;
  }
}
