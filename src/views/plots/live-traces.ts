/**
 * `<live-traces>`: node volts and gates of the last seconds. Frames come by `push`, never by a property; the canvas is
 * painted once per animation frame and only when something new came (under reduced motion at most twice a second).
 * "Hold" stops the picture; the time cursor is a native range, which holds it too, so that what is read stays put.
 */
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type uPlot from 'uplot';
import type { Seconds, Volts } from '../../quantity/units.ts';
import { rows } from '../rows.ts';
import { common } from '../theme/shared.ts';
import { chartStyles, tableOnDemand } from './chart.ts';
import { Sheet } from './sheet.ts';
import { paintOf, type TraceScene } from './trace-marks.ts';
import { columnsOf, tracePlot } from './trace-plot.ts';
import {
  emptyWindow,
  sampleAt,
  sampled,
  type TraceFrame,
  TraceRing,
  type TraceSample,
} from './trace-ring.ts';
import { traceStyles } from './trace-styles.ts';
import type { ReferenceBand } from './volt-scale.ts';

/** Room for four seconds at 120 frames a second, and some to spare. */
const CAPACITY = 512;
const TABLE_ROWS = 12;
const STILL_MILLISECONDS = 500;
const CURSOR_STEP: Seconds = 0.05;

export class LiveTraces extends LitElement {
  static override properties = {
    label: { type: String },
    summary: { type: String },
    max: { type: Number },
    span: { type: Number },
    references: rows,
    formatVolts: { attribute: false },
    formatAgo: { attribute: false },
    describe: { attribute: false },
    row: { attribute: false },
    chatter: { type: String },
    holdLabel: { type: String, attribute: 'hold-label' },
    cursorLabel: { type: String, attribute: 'cursor-label' },
    cursorHint: { type: String, attribute: 'cursor-hint' },
    tableLabel: { type: String, attribute: 'table-label' },
    heads: rows,
    held: { state: true },
    cursor: { state: true },
    rows: { state: true },
  };
  static override styles = [common, chartStyles, traceStyles];

  declare label: string;
  /** One sentence: what the traces show, as the drawing's description. */
  declare summary: string;
  declare max: Volts;
  declare span: Seconds;
  declare references: readonly ReferenceBand[];
  declare formatVolts: (volts: Volts) => string;
  /** Words for seconds ago (negative or 0) along the axis. */
  declare formatAgo: (ago: Seconds) => string;
  /** One moment in words, for the cursor. */
  declare describe: (sample: TraceSample) => string;
  /** One moment as the table's cells, matching `heads`. */
  declare row: (sample: TraceSample) => readonly string[];
  /** Words for a chattering gate; empty when none does. */
  declare chatter: string;
  declare holdLabel: string;
  declare cursorLabel: string;
  declare cursorHint: string;
  declare tableLabel: string;
  declare heads: readonly string[];
  declare held: boolean;
  declare cursor: Seconds | null;
  declare rows: readonly (readonly string[])[];

  readonly #ring = new TraceRing(CAPACITY);
  readonly #window = emptyWindow(CAPACITY);
  readonly #sheet = new Sheet(this, () => this.#discard());
  #plot: uPlot | null = null;
  #asked: number | null = null;
  #waiting: ReturnType<typeof setTimeout> | null = null;
  #painted = Number.NEGATIVE_INFINITY;

  constructor() {
    super();
    this.label = '';
    this.summary = '';
    this.max = 5;
    this.span = 4;
    this.references = [];
    this.formatVolts = String;
    this.formatAgo = String;
    this.describe = () => '';
    this.row = () => [];
    this.chatter = '';
    this.holdLabel = '';
    this.cursorLabel = '';
    this.cursorHint = '';
    this.tableLabel = '';
    this.heads = [];
    this.held = false;
    this.cursor = null;
    this.rows = [];
  }

  /** Takes one frame; cheap, call it as often as frames come. */
  push(frame: TraceFrame): void {
    this.#ring.push(frame);
    if (!this.held) this.#ask();
  }

  /** Forgets the traces, e.g. when another design is opened. */
  clear(): void {
    this.#ring.clear();
    this.#release();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#discard();
  }

  protected override render(): TemplateResult {
    const sample = this.cursor === null ? null : sampleAt(this.#window, this.cursor);
    const words = sample === null ? '' : this.describe(sample);
    return html`<figure>
      <div class="top">
        <p class=${words ? 'words' : 'words caution'}>${words || this.chatter}</p>
        ${
          this.holdLabel
            ? html`<button type="button" aria-pressed=${this.held ? 'true' : 'false'} @click=${this.#toggleHold}>
                ${this.holdLabel}
              </button>`
            : nothing
        }
      </div>
      <div class="drawing" role="img" aria-label=${this.label} aria-describedby="summary"></div>
      <p id="summary" class="visually-hidden">${this.summary}</p>
      <div class="cursor">
        <input
          type="range"
          min=${-this.span}
          max="0"
          step=${CURSOR_STEP}
          .value=${live(String(this.cursor ?? 0))}
          aria-label=${this.cursorLabel}
          aria-valuetext=${words || this.formatAgo(0)}
          aria-describedby=${this.cursorHint ? 'hint' : nothing}
          @input=${this.#moveCursor}
          @keydown=${this.#onKeyDown}
        />
        ${this.cursorHint ? html`<span id="hint" class="muted">${this.cursorHint}</span>` : nothing}
      </div>
      ${tableOnDemand({ toggle: this.tableLabel, heads: this.heads, rows: this.rows }, this.#onTable)}
    </figure>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('max') || changed.has('formatVolts') || changed.has('span')) this.#discard();
    this.#ask();
  }

  /** One painting per animation frame, however much came in between. */
  #ask(): void {
    if (this.#asked === null && this.#waiting === null && this.isConnected)
      this.#asked = requestAnimationFrame(this.#frame);
  }

  readonly #frame = (now: number): void => {
    this.#asked = null;
    if (this.#sheet.width === 0) return;
    const early = this.#painted + STILL_MILLISECONDS - now;
    if (this.#plot !== null && this.#sheet.reducedMotion && early > 0) {
      // A timer, not frame after frame: waiting must not keep the browser drawing.
      this.#waiting ??= setTimeout(() => {
        this.#waiting = null;
        this.#ask();
      }, early);
      return;
    }
    this.#painted = now;
    if (!this.held) this.#ring.copyWindow(this.span, this.#window);
    const size = this.#size();
    if (this.#plot === null) this.#make(size);
    if (this.#plot?.width !== size.width || this.#plot.height !== size.height) this.#plot?.setSize(size);
    this.#plot?.setData(columnsOf(this.#window));
  };

  #size(): { readonly width: number; readonly height: number } {
    const fontSize = this.#sheet.fontSize;
    return { width: this.#sheet.width, height: Math.round(fontSize * (this.#sheet.narrow ? 15 : 17)) };
  }

  #make(size: { readonly width: number; readonly height: number }): void {
    const target = this.renderRoot.querySelector<HTMLElement>('.drawing');
    if (target === null) return;
    const sheet = this.#sheet;
    this.#plot = tracePlot(target, size, paintOf(sheet), this.#scene, (text) => sheet.measure(text));
    // The range under the drawing starts and ends where the drawing's own axis does.
    const { left, width } = this.#plot.bbox;
    const ratio = window.devicePixelRatio;
    this.style.setProperty('--trace-left', `${left / ratio}px`);
    this.style.setProperty('--trace-right', `${size.width - (left + width) / ratio}px`);
  }

  readonly #scene = (): TraceScene => ({
    window: this.#window,
    span: this.span,
    max: this.max,
    references: this.references,
    cursor: this.cursor,
    formatVolts: this.formatVolts,
    formatAgo: this.formatAgo,
  });

  #discard(): void {
    if (this.#asked !== null) cancelAnimationFrame(this.#asked);
    if (this.#waiting !== null) clearTimeout(this.#waiting);
    this.#asked = this.#waiting = null;
    this.#plot?.destroy();
    this.#plot = null;
    if (this.isConnected) this.#ask();
  }

  #toggleHold(): void {
    if (this.held) this.#release();
    else this.#hold();
  }

  #hold(): void {
    if (!this.held) this.#ring.copyWindow(this.span, this.#window);
    this.held = true;
  }

  #release(): void {
    this.held = false;
    this.cursor = null;
    this.#ask();
  }

  #moveCursor(event: Event): void {
    this.#hold();
    this.cursor = Number((event.target as HTMLInputElement).value);
  }

  #onKeyDown(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || !this.held) return;
    event.stopPropagation();
    this.#release();
  }

  /** The table is filled when it is opened and then left alone, or nobody could read it. */
  readonly #onTable = (event: Event): void => {
    if (!(event.target as HTMLDetailsElement).open) return;
    const window = this.held ? this.#window : emptyWindow(CAPACITY);
    if (!this.held) this.#ring.copyWindow(this.span, window);
    this.rows = sampled(window, TABLE_ROWS).map((sample) => this.row(sample));
  };
}

customElements.define('live-traces', LiveTraces);

declare global {
  interface HTMLElementTagNameMap {
    'live-traces': LiveTraces;
  }
}
