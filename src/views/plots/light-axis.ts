/**
 * `<light-axis>`: one horizontal line of light, 0.1 lx at the left to a bright sun at the right, equal steps for equal
 * ratios. On it the room's levels, where each voice stops and starts, and the light now at each sensor as a needle.
 */
import { scaleLog } from 'd3-scale';
import { html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { Lux } from '../../quantity/units.ts';
import { rows } from '../rows.ts';
import { common } from '../theme/shared.ts';
import { voiceStyles } from '../theme/voice-mark.ts';
import { chartStyles, tableOnDemand, voiceClass } from './chart.ts';
import { breakLines } from './column.ts';
import {
  BAR,
  BRIGHTEST,
  DARKEST,
  drawNeedle,
  drawTrip,
  EDGE,
  ends,
  type LightMark,
  lightStyles,
  type Needle,
  type Trip,
} from './light-marks.ts';
import { keepApart, placeAbove, placeBelow, type Standing, type Stood, touches } from './placement.ts';
import { Sheet } from './sheet.ts';

const DECADES: readonly Lux[] = [0.1, 1, 10, 100, 1000, 10_000, 100_000];
const STEM = 8;

export class LightAxis extends LitElement {
  static override properties = {
    needles: rows,
    trips: rows,
    marks: rows,
    summary: { type: String },
    darkLabel: { type: String, attribute: 'dark-label' },
    brightLabel: { type: String, attribute: 'bright-label' },
    unit: { type: String },
    format: { attribute: false },
    tableLabel: { type: String, attribute: 'table-label' },
    heads: rows,
  };
  static override styles = [common, voiceStyles, chartStyles, lightStyles];

  declare needles: readonly Needle[];
  declare trips: readonly Trip[];
  declare marks: readonly LightMark[];
  /** One sentence: the drawing's accessible name. */
  declare summary: string;
  declare darkLabel: string;
  declare brightLabel: string;
  declare unit: string;
  declare format: (lux: Lux) => string;
  declare tableLabel: string;
  /** Headings of the table's two columns. */
  declare heads: readonly string[];

  readonly #sheet = new Sheet(this);
  #previous: ReadonlyMap<string, Stood> = new Map();

  constructor() {
    super();
    this.needles = [];
    this.trips = [];
    this.marks = [];
    this.summary = '';
    this.darkLabel = '';
    this.brightLabel = '';
    this.unit = '';
    this.format = (lux) => new Intl.NumberFormat(document.documentElement.lang || 'en').format(lux);
    this.tableLabel = '';
    this.heads = [];
  }

  protected override render(): TemplateResult {
    return html`<figure>
      <div class="drawing">${this.#sheet.width > 0 ? this.#draw() : nothing}</div>
      ${tableOnDemand({ toggle: this.tableLabel, heads: this.heads, rows: this.#rows() })}
    </figure>`;
  }

  #rows(): string[][] {
    const trip = ({ off, on }: Trip) =>
      [off, on].map((lux) => (lux === null ? '–' : this.format(lux))).join(' / ');
    return [
      ...this.needles.map((one) => [one.label, this.format(one.lux)]),
      ...this.trips.map((one) => [one.label, trip(one)]),
      ...this.marks.map((one) => [one.label, this.format(one.lux)]),
    ];
  }

  #draw(): TemplateResult {
    const sheet = this.#sheet;
    const width = sheet.width;
    const at = scaleLog()
      .domain([DARKEST, BRIGHTEST])
      .range([EDGE, width - EDGE])
      .clamp(true);
    const place = (lux: Lux) => at(Math.max(lux, DARKEST));
    const rowHeight = Math.ceil(sheet.fontSize * 1.4);
    const limit = width - 4;

    const trips = this.trips.filter((trip) => trip.off !== null || trip.on !== null);
    const texts = new Map<string, readonly string[]>();
    const standing: Standing[] = [];
    const stand = (
      key: string,
      x: number,
      half: number,
      text: string,
      face: 'bold',
      prefer: 'low' | 'high',
    ) => {
      const lines = breakLines(text, limit, (part) => sheet.measure(part, face));
      const wide = Math.max(...lines.map((line) => sheet.measure(line, face)));
      texts.set(key, lines);
      standing.push({ key, x, half, width: wide, lines: lines.length, prefer });
    };
    for (const needle of this.needles) {
      stand(`needle ${needle.voice}`, place(needle.lux), 8, needle.label, 'bold', 'low');
    }
    trips.forEach((trip, index) => {
      const [from, to] = ends(trip).map(place) as [number, number];
      stand(
        `trip ${index}`,
        (from + to) / 2,
        (to - from) / 2 + 2,
        (sheet.narrow && trip.short) || trip.label,
        'bold',
        'high',
      );
    });
    // As many rows as there are lines of text, whatever the values: the drawing never grows while a needle moves.
    const rows = Math.max(3, standing.reduce((sum, item) => sum + item.lines, 0) + (sheet.narrow ? 1 : 0));
    const endWords = [
      { left: 0, right: sheet.measure(this.darkLabel), row: rows - 1 },
      { left: width - sheet.measure(this.brightLabel), right: width, row: rows - 1 },
    ];
    const stood = placeAbove(standing, width, rows, endWords, this.#previous);
    // Crowded out at its end, the word gives way: the labels there say as much.
    const [darkFree, brightFree] = endWords.map(
      (word) => !stood.some((spot, index) => touches(standing[index]!, spot, word)),
    );
    this.#previous = new Map(stood.map((one) => [one.key, one]));

    const bar = rows * rowHeight + STEM;
    const middle = (row: number) => (rows - row - 0.5) * rowHeight;
    const below = this.#below(place, bar + BAR, rowHeight, width);
    return html`<svg
      class="chart"
      role="img"
      aria-label=${this.summary}
      width=${width}
      height=${below.bottom}
      viewBox="0 0 ${width} ${below.bottom}"
    >
      <defs>
        <linearGradient id="light"><stop class="from" offset="0"></stop><stop class="to" offset="1"></stop></linearGradient>
      </defs>
      <text class="quiet" x="0" y=${middle(rows - 1)} dy="0.35em">${darkFree ? this.darkLabel : ''}</text>
      <text class="quiet" x=${width} y=${middle(rows - 1)} dy="0.35em" text-anchor="end">${brightFree ? this.brightLabel : ''}</text>
      <rect class="bar" x=${EDGE} y=${bar} width=${width - 2 * EDGE} height=${BAR} fill="url(#light)"></rect>
      ${below.drawing}
      ${trips.map((trip, index) => {
        const spot = stood[this.needles.length + index];
        return spot ? drawTrip(trip, place, middle(spot.stemRow) - rowHeight / 2 + 2, bar + BAR) : nothing;
      })}
      ${this.needles.map((needle, index) => {
        const spot = stood[index];
        return spot ? drawNeedle(needle, place(needle.lux), middle(spot.stemRow), bar, width) : nothing;
      })}
      ${stood.map((spot, index) => {
        const needle = this.needles[index];
        const trip = trips[index - this.needles.length];
        const voices = needle?.voice ?? trip?.voices ?? 'both';
        const lines = texts.get(spot.key) ?? [];
        return lines.map(
          (line, n) =>
            svg`<text class=${voiceClass(voices)} x=${spot.left} y=${middle(spot.row + lines.length - 1 - n)} dy="0.35em">${line}</text>`,
        );
      })}
    </svg>`;
  }

  /** Ticks with their numbers, and the levels to compare with, in as many rows as they need. */
  #below(
    place: (lux: Lux) => number,
    top: number,
    rowHeight: number,
    width: number,
  ): { readonly drawing: SVGTemplateResult; readonly bottom: number } {
    const sheet = this.#sheet;
    const numbers = DECADES.map((lux, index) => {
      const text = index === DECADES.length - 1 ? `${this.format(lux)} ${this.unit}` : this.format(lux);
      const wide = sheet.measure(text);
      const x = place(lux);
      return { x, text, middle: Math.max(wide / 2, Math.min(x, width - wide / 2)), width: wide };
    });
    const kept = keepApart(numbers.map((one) => ({ x: one.middle, width: one.width })));
    const spots = placeBelow(
      this.marks.map((mark) => ({ x: place(mark.lux), width: sheet.measure(mark.label, 'note') })),
      width,
    );
    const used = spots.reduce((most, spot) => Math.max(most, spot.row + 1), 0);
    const first = top + 6 + rowHeight;
    const drawing = svg`
      ${numbers.map(
        (one, index) => svg`<line class="axis" x1=${one.x} x2=${one.x} y1=${top} y2=${top + 5}></line>
          ${
            kept[index]
              ? svg`<text class="quiet" x=${one.middle} y=${top + 6 + rowHeight / 2} dy="0.35em" text-anchor="middle">${one.text}</text>`
              : nothing
          }`,
      )}
      ${this.marks.map((mark, index) => {
        const spot = spots[index];
        const x = place(mark.lux);
        return spot
          ? svg`<path class="level around" d="M${x} ${top - BAR}v${BAR}"></path>
            <path class="level" d="M${x} ${top - BAR}v${BAR}"></path>
            <text class="note" x=${spot.left} y=${first + (spot.row + 0.5) * rowHeight} dy="0.35em">${mark.label}</text>`
          : nothing;
      })}`;
    return { drawing, bottom: Math.ceil(first + used * rowHeight + 2) };
  }
}

customElements.define('light-axis', LightAxis);

declare global {
  interface HTMLElementTagNameMap {
    'light-axis': LightAxis;
  }
}
