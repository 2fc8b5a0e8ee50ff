/**
 * `<trimmer-curve>`: pitch against the turn of both trimmers, equal steps for equal ratios, and below it how many cents
 * one degree moves it. A solid, B dashed, marks at the targets; a cursor reads any turn in words.
 */
import { scaleLinear, scaleLog } from 'd3-scale';
import { css, html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { CurvePoint } from '../../plan/timing.ts';
import { type Hertz, type Pair, VOICES, type VoiceId } from '../../quantity/units.ts';
import { common } from '../theme/shared.ts';
import { markAt, voiceStyles } from '../theme/voice-mark.ts';
import { chartStyles } from './chart.ts';
import { type FigureText, figureStyles, figureTools } from './figure-tools.ts';
import { noteTicks } from './note-ticks.ts';
import { Sheet } from './sheet.ts';

/** In px and multiples of the text's size. */
const SIZE = { most: 760, pitch: 15, gap: 2.2, steep: 6 } as const;

type Scale = (value: number) => number;

export class TrimmerCurve extends LitElement {
  static override properties = {
    curves: { attribute: false },
    marks: { attribute: false },
    a4: { attribute: false },
    summary: { type: String },
    cursorLabel: { type: String, attribute: 'cursor-label' },
    cursorHint: { type: String, attribute: 'cursor-hint' },
    steepLabel: { type: String, attribute: 'steep-label' },
    describe: { attribute: false },
    formatHertz: { attribute: false },
    formatShare: { attribute: false },
    text: { attribute: false },
    cursor: { state: true },
  };
  static override styles = [
    common,
    voiceStyles,
    chartStyles,
    figureStyles,
    css`
      .grid {
        stroke: var(--hair);
        stroke-width: 1;
      }
      .cursor {
        stroke: var(--ink);
        stroke-width: 1;
      }
      .words {
        min-height: 2.7em;
        margin: 0 0 4px;
        max-width: none;
      }
      input[type='range'] {
        display: block;
        width: 100%;
        height: 28px;
        margin: 0;
        accent-color: var(--accent);
      }
    `,
  ];

  declare curves: Pair<readonly CurvePoint[]>;
  /** Where the targets stand. */
  declare marks: Pair<CurvePoint>;
  declare a4: Hertz;
  declare summary: string;
  declare cursorLabel: string;
  declare cursorHint: string;
  declare steepLabel: string;
  /** Both voices at one turn, in words. */
  declare describe: (points: Pair<CurvePoint>) => string;
  declare formatHertz: (hertz: Hertz) => string;
  declare formatShare: (share: number) => string;
  declare text: FigureText | null;
  /** Place in the curves; null = none chosen yet. */
  declare cursor: number | null;
  readonly #sheet = new Sheet(this);

  constructor() {
    super();
    this.curves = { A: [], B: [] };
    this.marks = Object.create(null) as Pair<CurvePoint>;
    this.a4 = 440;
    this.summary = '';
    this.cursorLabel = '';
    this.cursorHint = '';
    this.steepLabel = '';
    this.describe = () => '';
    this.formatHertz = String;
    this.formatShare = String;
    this.text = null;
    this.cursor = null;
  }

  protected override render(): TemplateResult {
    const { A, B } = this.curves;
    if (A.length < 2 || A.length !== B.length) return html``;
    const last = A.length - 1;
    const cursor = this.cursor === null ? null : Math.min(last, this.cursor);
    const words = cursor === null ? '' : this.describe({ A: A[cursor]!, B: B[cursor]! });
    return html`<figure>
      <div class="drawing">${this.#sheet.width > 0 ? this.#draw(cursor) : nothing}</div>
      <input
        type="range"
        min="0"
        max=${last}
        step="1"
        .value=${live(String(cursor ?? Math.round(last / 2)))}
        aria-label=${this.cursorLabel}
        aria-valuetext=${words || this.cursorHint}
        @input=${(event: Event) => {
          this.cursor = Number((event.currentTarget as HTMLInputElement).value);
        }}
      />
      <p class="words">${words || html`<span class="muted">${this.cursorHint}</span>`}</p>
      ${this.text ? figureTools(this.text, this.renderRoot as ParentNode & Node) : nothing}
    </figure>`;
  }

  #draw(cursor: number | null): TemplateResult {
    const { fontSize } = this.#sheet;
    const width = Math.min(SIZE.most, this.#sheet.width);
    const all = VOICES.flatMap((voice) => this.curves[voice]);
    const low = Math.min(...all.map(({ hertz }) => hertz));
    const high = Math.max(...all.map(({ hertz }) => hertz));
    const top = fontSize * 0.8;
    const foot = top + SIZE.pitch * fontSize;
    const steepTop = foot + SIZE.gap * fontSize;
    const steepFoot = steepTop + SIZE.steep * fontSize;
    const up = scaleLog().domain([low, high]).range([foot, top]);
    const y: Scale = (hertz) => up(hertz);
    const noteText = ({ name, hertz }: { name: string; hertz: Hertz }) =>
      `${name} ${this.formatHertz(hertz)}`;
    // Down the side, labels need room by their height.
    const ticks = noteTicks(
      low,
      high,
      this.a4,
      (hertz) => -y(hertz),
      () => fontSize * 1.5,
      0,
    );
    const left = Math.max(...ticks.map((tick) => this.#sheet.measure(noteText(tick))), 30) + 10;
    const x = scaleLinear([0, 1], [left, width - 2.4 * fontSize]);
    const steepest = Math.max(...all.map(({ centsPerDegree }) => centsPerDegree));
    const steep = scaleLinear([0, steepest], [steepFoot, steepTop]).nice(3);
    const height = steepFoot + 2 * fontSize;
    const at = cursor === null ? null : x(this.curves.A[cursor]!.rotation);
    return html`<svg
      class="chart"
      role="img"
      aria-label=${this.summary}
      width=${width}
      height=${height}
      viewBox="0 0 ${width} ${height}"
    >
      ${ticks.map(
        (tick) => svg`<path class="grid" d="M${left} ${y(tick.hertz)}H${x(1)}"></path>
          <text class="quiet" x=${left - 8} y=${y(tick.hertz)} dy="0.35em" text-anchor="end">${noteText(tick)}</text>`,
      )}
      ${steep.ticks(3).map(
        (value) => svg`<path class="grid" d="M${left} ${steep(value)}H${x(1)}"></path>
          <text class="quiet" x=${left - 8} y=${steep(value)} dy="0.35em" text-anchor="end">${value}</text>`,
      )}
      <text class="note" x=${left} y=${steepTop - 0.7 * fontSize}>${this.steepLabel}</text>
      <path class="axis" d="M${left} ${foot}H${x(1)}M${left} ${steepFoot}H${x(1)}"></path>
      ${x.ticks(width < 400 ? 3 : 5).map(
        (share) =>
          svg`<path class="axis" d="M${x(share)} ${steepFoot}v4"></path>
          <text class="quiet" x=${x(share)} y=${steepFoot + 1.3 * fontSize} text-anchor="middle">${this.formatShare(share)}</text>`,
      )}
      ${at === null ? nothing : svg`<path class="cursor" d="M${at} ${top}V${steepFoot}"></path>`}
      ${VOICES.map((voice) => this.#curve(voice, x, y, steep))}
    </svg>`;
  }

  #curve(voice: VoiceId, x: Scale, y: Scale, steep: Scale): SVGTemplateResult {
    const points = this.curves[voice];
    const name = voice.toLowerCase();
    const path = (height: (point: CurvePoint) => number) =>
      `M${points.map((point) => `${x(point.rotation).toFixed(1)} ${height(point).toFixed(1)}`).join('L')}`;
    const mark = this.marks[voice];
    const last = points.at(-1)!;
    // The upper of the two letters stands a little higher, the lower a little lower.
    const nudge = last.hertz >= (this.curves[voice === 'A' ? 'B' : 'A'].at(-1)?.hertz ?? 0) ? -0.1 : 0.8;
    return svg`<path class="line ${name}" d=${path(({ hertz }) => y(hertz))}></path>
      <path class="line ${name}" d=${path(({ centsPerDegree }) => steep(centsPerDegree))}></path>
      <text class=${name} x=${x(1) + 6} y=${y(last.hertz)} dy="${nudge}em">${voice}</text>
      ${mark ? markAt(voice, x(mark.rotation), y(mark.hertz), 5) : nothing}`;
  }
}

customElements.define('trimmer-curve', TrimmerCurve);

declare global {
  interface HTMLElementTagNameMap {
    'trimmer-curve': TrimmerCurve;
  }
}
