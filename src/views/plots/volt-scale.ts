/**
 * `<volt-scale>`: a standing scale of volts with the reference (its two trip points as a band) and the two sensor nodes.
 * Labels stand in one column at the right and are pushed apart; a thin leader joins each to its mark.
 */
import { scaleLinear } from 'd3-scale';
import { css, html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { VoiceId, Volts } from '../../quantity/units.ts';
import { rows } from '../rows.ts';
import { common } from '../theme/shared.ts';
import { markAt, voiceStyles } from '../theme/voice-mark.ts';
import { chartStyles, tableOnDemand, voiceClass } from './chart.ts';
import { breakLines, spread } from './column.ts';
import { Sheet } from './sheet.ts';

export interface NodeMark {
  readonly voice: VoiceId;
  readonly volts: Volts;
  readonly label: string;
}
/** The reference with its trip points; `low` equals `high` without hysteresis. */
export interface ReferenceBand {
  readonly voices: VoiceId | 'both';
  readonly volts: Volts;
  readonly low: Volts;
  readonly high: Volts;
  readonly label: string;
}

export class VoltScale extends LitElement {
  static override properties = {
    max: { type: Number },
    nodes: rows,
    references: rows,
    upper: { type: String },
    lower: { type: String },
    summary: { type: String },
    format: { attribute: false },
    height: { type: Number },
    tableLabel: { type: String, attribute: 'table-label' },
    heads: rows,
  };
  static override styles = [
    common,
    voiceStyles,
    chartStyles,
    css`
      .leader.a {
        stroke: var(--voice-a);
      }
      .leader.b {
        stroke: var(--voice-b);
      }
      .leader.both {
        stroke: var(--accent);
      }
    `,
  ];

  /** Top of the scale. */
  declare max: Volts;
  declare nodes: readonly NodeMark[];
  declare references: readonly ReferenceBand[];
  /** What it means to be above and below the reference. */
  declare upper: string;
  declare lower: string;
  /** One sentence: the drawing's accessible name. */
  declare summary: string;
  declare format: (volts: Volts) => string;
  /** Height of the scale in px at the ordinary text size; it grows with the text. */
  declare height: number;
  declare tableLabel: string;
  declare heads: readonly string[];

  readonly #sheet = new Sheet(this);

  constructor() {
    super();
    this.max = 5;
    this.nodes = [];
    this.references = [];
    this.upper = '';
    this.lower = '';
    this.summary = '';
    this.format = String;
    this.height = 230;
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
    return [
      ...this.references.map((one) => [
        one.label,
        [...new Set([one.low, one.high])].map((volts) => this.format(volts)).join(' / '),
      ]),
      ...this.nodes.map((one) => [one.label, this.format(one.volts)]),
    ];
  }

  #draw(): TemplateResult {
    const sheet = this.#sheet;
    const size = sheet.fontSize;
    const rowHeight = Math.ceil(size * 1.4);
    const limit = sheet.width - 2;
    const above = breakLines(this.upper, limit, (part) => sheet.measure(part));
    const beneath = breakLines(this.lower, limit, (part) => sheet.measure(part));
    const top = above.length * rowHeight + 8;
    const bottom = top + Math.round((this.height * size) / 13);
    const total = bottom + 8 + beneath.length * rowHeight;

    const y = scaleLinear().domain([0, this.max]).range([bottom, top]).clamp(true);
    const ticks = y.ticks(5);
    const axisX = Math.ceil(Math.max(...ticks.map((tick) => sheet.measure(this.format(tick))))) + 12;
    const columns = { A: axisX + size * 1.2, B: axisX + size * 2.6 };
    const labelX = Math.ceil(axisX + size * 4);
    return html`<svg
      class="chart"
      role="img"
      aria-label=${this.summary}
      width=${sheet.width}
      height=${total}
      viewBox="0 0 ${sheet.width} ${total}"
    >
      ${above.map((line, n) => svg`<text class="quiet" x=${axisX} y=${(n + 0.5) * rowHeight} dy="0.35em">${line}</text>`)}
      ${beneath.map(
        (line, n) =>
          svg`<text class="quiet" x=${axisX} y=${bottom + 8 + (n + 0.5) * rowHeight} dy="0.35em">${line}</text>`,
      )}
      ${this.references.map((one) => drawBand(one, y, axisX, labelX - 8))}
      <path class="axis" d="M${axisX} ${top}V${bottom}"></path>
      ${ticks.map(
        (tick) => svg`<line class="axis" x1=${axisX - 5} x2=${axisX} y1=${y(tick)} y2=${y(tick)}></line>
          <text class="quiet" x=${axisX - 9} y=${y(tick)} dy="0.35em" text-anchor="end">${this.format(tick)}</text>`,
      )}
      ${this.nodes.map(
        (node) =>
          svg`<line class="line ${voiceClass(node.voice)}" x1=${axisX} x2=${columns[node.voice]} y1=${y(node.volts)} y2=${y(node.volts)}></line>`,
      )}
      ${this.nodes.map((node) => markAt(node.voice, columns[node.voice], y(node.volts)))}
      ${this.#labels(y, columns, labelX, rowHeight, top, bottom)}
    </svg>`;
  }

  #labels(
    y: (volts: Volts) => number,
    columns: Readonly<Record<VoiceId, number>>,
    labelX: number,
    rowHeight: number,
    top: number,
    bottom: number,
  ): SVGTemplateResult[] {
    const sheet = this.#sheet;
    const limit = sheet.width - labelX;
    const labels = [
      ...this.references.map((one) => ({ ...one, from: labelX - 8, at: y((one.low + one.high) / 2) })),
      ...this.nodes.map((one) => ({
        label: one.label,
        voices: one.voice,
        from: columns[one.voice] + 8,
        at: y(one.volts),
      })),
    ].map((one) => ({ ...one, lines: breakLines(one.label, limit, (part) => sheet.measure(part, 'bold')) }));
    const middles = spread(
      labels.map((one) => ({ wanted: one.at, height: one.lines.length * rowHeight })),
      top - rowHeight / 2,
      bottom + rowHeight / 2,
    );
    return labels.map((one, index) => {
      const middle = middles[index] ?? one.at;
      const name = voiceClass(one.voices);
      const first = middle - ((one.lines.length - 1) * rowHeight) / 2;
      return svg`<path class="leader ${name}" d="M${one.from} ${one.at}L${labelX - 4} ${middle}"></path>
        ${one.lines.map(
          (line, n) =>
            svg`<text class=${name} x=${labelX} y=${first + n * rowHeight} dy="0.35em">${line}</text>`,
        )}`;
    });
  }
}

function drawBand(
  band: ReferenceBand,
  y: (volts: Volts) => number,
  left: number,
  right: number,
): SVGTemplateResult {
  const name = voiceClass(band.voices);
  const high = y(band.high);
  const low = y(band.low);
  return svg`<rect class="band ${name}" x=${left} y=${high} width=${right - left} height=${low - high}></rect>
    <line class="edge ${name}" x1=${left} x2=${right} y1=${high} y2=${high}></line>
    <line class="edge ${name}" x1=${left} x2=${right} y1=${low} y2=${low}></line>`;
}

customElements.define('volt-scale', VoltScale);

declare global {
  interface HTMLElementTagNameMap {
    'volt-scale': VoltScale;
  }
}
