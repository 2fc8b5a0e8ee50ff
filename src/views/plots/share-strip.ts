/** `<share-strip>`: a line from 0 to 100 % of a trimmer's turn, on it the span of most kits and the common mark. */
import { scaleLinear } from 'd3-scale';
import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import type { Fraction } from '../../quantity/units.ts';
import { common } from '../theme/shared.ts';
import { chartStyles } from './chart.ts';
import { Sheet } from './sheet.ts';

const TICKS: readonly Fraction[] = [0, 0.25, 0.5, 0.75, 1];

export class ShareStrip extends LitElement {
  static override properties = {
    label: { type: String },
    low: { attribute: false },
    high: { attribute: false },
    mark: { attribute: false },
    summary: { type: String },
  };
  static override styles = [
    common,
    chartStyles,
    css`
      .drawing {
        min-height: 3.6em;
      }
      .span {
        fill: var(--accent);
        opacity: 0.22;
      }
      .mark {
        stroke: var(--accent);
        stroke-width: 3;
      }
    `,
  ];

  declare label: string;
  declare low: Fraction;
  declare high: Fraction;
  declare mark: Fraction;
  declare summary: string;
  readonly #sheet = new Sheet(this);

  constructor() {
    super();
    this.label = '';
    this.low = 0;
    this.high = 1;
    this.mark = 0.5;
    this.summary = '';
  }

  protected override render(): TemplateResult {
    return html`<figure>
      <div class="drawing">${this.#sheet.width > 0 ? this.#draw() : nothing}</div>
      <figcaption>${this.label}. ${this.summary}</figcaption>
    </figure>`;
  }

  #draw(): TemplateResult {
    const { width, fontSize } = this.#sheet;
    const x = scaleLinear().range([10, width - 24]);
    const line = 26;
    const bottom = Math.ceil(line + 8 + fontSize * 1.4);
    return html`<svg
      class="chart"
      role="img"
      aria-label=${this.summary}
      width=${width}
      height=${bottom}
      viewBox="0 0 ${width} ${bottom}"
    >
      <rect class="span" x=${x(this.low)} width=${x(this.high) - x(this.low)} y=${line - 18} height="18"></rect>
      <line class="mark" x1=${x(this.mark)} x2=${x(this.mark)} y1=${line - 22} y2=${line}></line>
      <path class="axis" d=${`M${x(0)} ${line}H${x(1)}`}></path>
      ${TICKS.map(
        (tick) => svg`<line class="axis" x1=${x(tick)} x2=${x(tick)} y1=${line} y2=${line + 5}></line>
          <text class="quiet" x=${x(tick)} y=${line + 8 + fontSize * 0.7} dy="0.35em" text-anchor="middle">${`${tick * 100} %`}</text>`,
      )}
    </svg>`;
  }
}

customElements.define('share-strip', ShareStrip);

declare global {
  interface HTMLElementTagNameMap {
    'share-strip': ShareStrip;
  }
}
