/**
 * `<node-curve>`: the node's volts over the light, equal steps for equal ratios: a sketch with its points, the model's curve
 * once it is shown, and the node as it is now. A press or a drag moves the nearest point: fires `sketch` (SketchDetail).
 */
import { scaleLinear, scaleLog } from 'd3-scale';
import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import type { Lux, Volts } from '../../quantity/units.ts';
import { fire } from '../controls/events.ts';
import { common } from '../theme/shared.ts';
import { markAt, voiceStyles } from '../theme/voice-mark.ts';
import { chartStyles } from './chart.ts';
import { Sheet } from './sheet.ts';

interface Point {
  readonly lux: Lux;
  readonly volts: Volts;
}

export interface SketchDetail {
  /** Which of the lights. */
  readonly index: number;
  readonly volts: Volts;
}

/** Half a decade of room beyond the first and the last light. */
const BEYOND = Math.sqrt(10);
/** In multiples of the text's size; the height also in px, and by the width. */
const SIZE = { least: 9, most: 200, share: 0.5, left: 3, foot: 1.6, top: 0.6 } as const;

export class NodeCurve extends LitElement {
  static override properties = {
    at: { attribute: false },
    railVolts: { attribute: false },
    sketch: { attribute: false },
    model: { attribute: false },
    now: { attribute: false },
    drawn: { type: Boolean },
    formatLux: { attribute: false },
    formatVolts: { attribute: false },
    summary: { type: String },
    sketchWord: { type: String, attribute: 'sketch-word' },
    modelWord: { type: String, attribute: 'model-word' },
  };
  static override styles = [
    common,
    voiceStyles,
    chartStyles,
    css`
      svg.open {
        cursor: crosshair;
        touch-action: none;
        user-select: none;
      }
      .sketched {
        fill: none;
        stroke: var(--ink);
        stroke-width: var(--stroke-data);
        stroke-dasharray: 2 5;
        stroke-linecap: round;
      }
      .point {
        fill: var(--surface);
        stroke: var(--ink);
        stroke-width: var(--stroke-data);
      }
      .grid {
        stroke: var(--hair);
        stroke-width: 1;
      }
    `,
  ];

  declare at: readonly Lux[];
  declare railVolts: Volts;
  /** Volts in each of the lights; null = nothing sketched yet. */
  declare sketch: readonly Volts[] | null;
  /** The model's curve; empty while it is not to be seen. */
  declare model: readonly Point[];
  /** The node as it is; null = not shown. */
  declare now: Point | null;
  /** It may be drawn on. */
  declare drawn: boolean;
  declare formatLux: (lux: Lux) => string;
  declare formatVolts: (volts: Volts) => string;
  declare summary: string;
  declare sketchWord: string;
  declare modelWord: string;
  readonly #sheet = new Sheet(this);

  constructor() {
    super();
    this.at = [];
    this.railVolts = 0;
    this.sketch = null;
    this.model = [];
    this.now = null;
    this.drawn = false;
    this.formatLux = String;
    this.formatVolts = String;
    this.summary = '';
    this.sketchWord = '';
    this.modelWord = '';
  }

  protected override render(): TemplateResult {
    return html`<div class="drawing">${this.#sheet.width > 0 && this.at.length > 0 ? this.#draw() : nothing}</div>`;
  }

  get #height(): number {
    const { width, fontSize } = this.#sheet;
    return Math.max(SIZE.least * fontSize, Math.min(SIZE.most, SIZE.share * width));
  }

  get #scales() {
    const { width, fontSize } = this.#sheet;
    const x = scaleLog()
      .domain([this.at[0]! / BEYOND, this.at.at(-1)! * BEYOND])
      .range([SIZE.left * fontSize, width - 4])
      .clamp(true);
    const y = scaleLinear([0, this.railVolts], [this.#height - SIZE.foot * fontSize, SIZE.top * fontSize]);
    return { x, y: y.clamp(true) };
  }

  #draw(): TemplateResult {
    const { width, fontSize } = this.#sheet;
    const { x, y } = this.#scales;
    const height = this.#height;
    const foot = y(0);
    const [left, right] = x.range() as [number, number];
    const path = (points: readonly Point[]) =>
      `M${points.map(({ lux, volts }) => `${x(lux).toFixed(1)} ${y(volts).toFixed(1)}`).join('L')}`;
    const sketched = (this.sketch ?? []).map((volts, i) => ({ lux: this.at[i]!, volts }));
    return html`<svg
      class="chart ${this.drawn ? 'open' : ''}"
      role="img"
      aria-label=${this.summary}
      width=${width}
      height=${height}
      viewBox="0 0 ${width} ${height}"
      @pointerdown=${this.#press}
      @pointermove=${this.#move}
    >
      ${[0, this.railVolts / 2, this.railVolts].map(
        (volts) => svg`<path class="grid" d="M${left} ${y(volts)}H${right}"></path>
          <text class="quiet" x=${left - 8} y=${y(volts)} dy="0.35em" text-anchor="end">${this.formatVolts(volts)}</text>`,
      )}
      <path class="axis" d="M${left} ${y(this.railVolts)}V${foot}H${right}"></path>
      ${this.at.map(
        (lux) => svg`<path class="axis" d="M${x(lux)} ${foot}v5"></path>
          <text class="quiet" x=${x(lux)} y=${foot + 1.3 * fontSize} text-anchor="middle">${this.formatLux(lux)}</text>`,
      )}
      ${this.model.length === 0 ? nothing : svg`<path class="line a" d=${path(this.model)}></path>`}
      ${
        sketched.length === 0
          ? nothing
          : svg`<path class="sketched" d=${path(sketched)}></path>
            ${sketched.map(({ lux, volts }) => svg`<rect class="point" x=${x(lux) - 6} y=${y(volts) - 6} width="12" height="12"></rect>`)}`
      }
      ${this.now === null ? nothing : markAt('A', x(this.now.lux), y(this.now.volts), 7)}
      ${this.#legend(right)}
    </svg>`;
  }

  #legend(right: number): TemplateResult {
    const { fontSize } = this.#sheet;
    const rows = [
      ...(this.sketch === null ? [] : [{ word: this.sketchWord, name: 'sketched' }]),
      ...(this.model.length === 0 ? [] : [{ word: this.modelWord, name: 'line a' }]),
    ];
    return html`${rows.map(({ word, name }, i) => {
      const y = (SIZE.top + 0.9 + 1.3 * i) * fontSize;
      return svg`<path class=${name} d="M${right - 40} ${y}h36"></path>
        <text x=${right - 48} y=${y} dy="0.35em" text-anchor="end">${word}</text>`;
    })}`;
  }

  readonly #press = (event: PointerEvent): void => {
    if (!this.drawn) return;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    this.#take(event);
  };

  readonly #move = (event: PointerEvent): void => {
    if (this.drawn && event.buttons === 1) this.#take(event);
  };

  #take(event: PointerEvent): void {
    const { left, top } = (event.currentTarget as Element).getBoundingClientRect();
    const { x, y } = this.#scales;
    const away = this.at.map((lux) => Math.abs(x(lux) - (event.clientX - left)));
    fire<SketchDetail>(this, 'sketch', {
      index: away.indexOf(Math.min(...away)),
      volts: y.invert(event.clientY - top),
    });
  }
}

customElements.define('node-curve', NodeCurve);

declare global {
  interface HTMLElementTagNameMap {
    'node-curve': NodeCurve;
  }
}
