/**
 * `<pitch-ruler>`: pitches along one line, equal steps for equal ratios, with note names and hertz. Each bar is what
 * some parts reach: pale with nominal values, dark what nearly every kit reaches. Wanted notes stand across all bars, A
 * solid and B dashed, each with its letter; small marks show kits before tuning. A press on a bar fires `choose`.
 */
import { scaleLog } from 'd3-scale';
import { css, html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { Hertz, VoiceId } from '../../quantity/units.ts';
import { type ChooseDetail, fire } from '../controls/events.ts';
import { common } from '../theme/shared.ts';
import { markAt, voiceStyles } from '../theme/voice-mark.ts';
import { chartStyles, voiceClass } from './chart.ts';
import { breakLines } from './column.ts';
import { type FigureText, figureStyles, figureTools } from './figure-tools.ts';
import { noteTicks } from './note-ticks.ts';
import { placeAbove, type Standing } from './placement.ts';
import { Sheet } from './sheet.ts';

interface Span {
  readonly lowHertz: Hertz;
  readonly highHertz: Hertz;
}

export interface RulerBar {
  /** What `choose` answers with; bars of one candidate have the same. */
  readonly key: string;
  readonly label: string;
  readonly voices: VoiceId | 'both';
  readonly nominal: Span;
  /** What nearly every kit reaches; null = unknown, or nothing. */
  readonly sure: Span | null;
  /** The span in words, printed beside the bar. */
  readonly says: string;
  readonly chosen: boolean;
  /** Kits before tuning. */
  readonly untuned: readonly { readonly voice: VoiceId; readonly hertz: Hertz }[];
}

export interface RulerTarget extends Span {
  readonly voice: VoiceId;
  readonly label: string;
}

/** In multiples of the text's size. */
const ROW = { wide: 2.5, narrow: 3.6, untuned: 1.3 } as const;
const MARGIN = 0.06;

export class PitchRuler extends LitElement {
  static override properties = {
    bars: { attribute: false },
    targets: { attribute: false },
    a4: { attribute: false },
    summary: { type: String },
    text: { attribute: false },
    hertzNumber: { attribute: false },
  };
  static override styles = [
    common,
    voiceStyles,
    chartStyles,
    figureStyles,
    css`
      .bar {
        cursor: pointer;
      }
      .pale {
        fill: var(--control-line);
        fill-opacity: 0.25;
        stroke: var(--control-line);
        stroke-width: 1;
      }
      .sure {
        fill: var(--muted);
      }
      .chosen .sure {
        fill: var(--accent);
      }
      .chosen text.name {
        font-weight: 600;
      }
      .press {
        fill: transparent;
      }
      .bar:hover .press {
        fill: var(--sunken);
      }
      .grid {
        stroke: var(--hair);
        stroke-width: 1;
      }
      @media (forced-colors: active) {
        /* Quiet beneath the words that stand across it. */
        .grid {
          stroke: color-mix(in srgb, CanvasText 25%, Canvas);
        }
        .chosen .pale {
          stroke: Highlight;
          stroke-width: 3;
        }
      }
    `,
  ];

  declare bars: readonly RulerBar[];
  declare targets: readonly RulerTarget[];
  declare a4: Hertz;
  declare summary: string;
  declare text: FigureText | null;
  declare hertzNumber: (hertz: Hertz) => string;
  readonly #sheet = new Sheet(this);

  constructor() {
    super();
    this.bars = [];
    this.targets = [];
    this.a4 = 440;
    this.summary = '';
    this.text = null;
    this.hertzNumber = String;
  }

  protected override render(): TemplateResult {
    return html`<figure>
      <div class="drawing">${this.#sheet.width > 0 && this.bars.length > 0 ? this.#draw() : nothing}</div>
      ${this.text ? figureTools(this.text, this.renderRoot as ParentNode & Node) : nothing}
    </figure>`;
  }

  #draw(): TemplateResult {
    const sheet = this.#sheet;
    const { width, fontSize, narrow } = sheet;
    const rowHeight = (narrow ? ROW.narrow : ROW.wide) * fontSize;
    const line = Math.ceil(fontSize * 1.4);
    const labelWidth = narrow
      ? 0
      : Math.min(width * 0.36, Math.max(...this.bars.map((bar) => sheet.measure(bar.label, 'bold'))) + 14);
    const ends = this.#ends();
    const half = sheet.measure(this.hertzNumber(ends[1])) / 2;
    const at = scaleLog()
      .domain(ends)
      .range([labelWidth + half, width - half - 2]);
    const place = (hertz: Hertz) => at(hertz);

    const standing = this.targets.map(({ voice, lowHertz, highHertz, label }): Standing => {
      const x = (place(lowHertz) + place(highHertz)) / 2;
      const reach = (place(highHertz) - place(lowHertz)) / 2 + 2;
      return { key: voice, x, half: reach, width: sheet.measure(label, 'bold'), lines: 1, prefer: 'low' };
    });
    const stood = placeAbove(standing, width, 2);
    const top = this.targets.length > 0 ? 2 * line + 6 : 4;

    let y = top;
    const rows = this.bars.map((bar) => {
      const height = rowHeight + (bar.untuned.length > 0 ? ROW.untuned * fontSize : 0);
      const drawn = this.#bar(bar, place, y, rowHeight, labelWidth);
      y += height;
      return drawn;
    });
    const foot = y + 4;
    const ticks = noteTicks(
      ends[0],
      ends[1],
      this.a4,
      place,
      ({ name, hertz }) => Math.max(sheet.measure(name), sheet.measure(this.hertzNumber(hertz))),
      10,
    );
    const height = foot + 8 + 2 * line;
    return html`<svg
      class="chart"
      role="img"
      aria-label=${this.summary}
      width=${width}
      height=${height}
      viewBox="0 0 ${width} ${height}"
      @click=${this.#press}
    >
      ${ticks.map((tick) => svg`<path class="grid" d="M${place(tick.hertz)} ${top}V${foot}"></path>`)} ${rows.map(({ shapes }) => shapes)}
      ${this.targets.map((target) => this.#target(target, place, line, foot))} ${rows.map(({ words }) => words)}
      ${stood.map(
        (spot, i) =>
          svg`<text class=${voiceClass(this.targets[i]!.voice)} x=${spot.left} y=${(2 - spot.row - 0.5) * line} dy="0.35em">${this.targets[i]!.label}</text>`,
      )}
      <path class="axis" d="M${labelWidth} ${foot}H${width}"></path>
      ${ticks.map(({ name, hertz }) => {
        const x = place(hertz);
        return svg`<path class="axis" d="M${x} ${foot}v5"></path>
          <text x=${x} y=${foot + 8 + line / 2} dy="0.35em" text-anchor="middle">${name}</text>
          <text class="quiet" x=${x} y=${foot + 8 + 1.45 * line} dy="0.35em" text-anchor="middle">${this.hertzNumber(hertz)}</text>`;
      })}
    </svg>`;
  }

  /** The ends of the line: all bars, wanted notes and kits, and a little air. */
  #ends(): [Hertz, Hertz] {
    const all = [
      ...this.bars.flatMap(({ nominal, sure, untuned }) => [
        nominal.lowHertz,
        nominal.highHertz,
        sure?.lowHertz ?? nominal.lowHertz,
        sure?.highHertz ?? nominal.highHertz,
        ...untuned.map(({ hertz }) => hertz),
      ]),
      ...this.targets.flatMap(({ lowHertz, highHertz }) => [lowHertz, highHertz]),
    ];
    const [low, high] = [Math.min(...all), Math.max(...all)];
    const air = Math.max(1.05, (high / low) ** MARGIN);
    return [low / air, high * air];
  }

  #bar(
    bar: RulerBar,
    place: (hertz: Hertz) => number,
    y: number,
    rowHeight: number,
    labelWidth: number,
  ): { readonly shapes: SVGTemplateResult; readonly words: SVGTemplateResult } {
    const { width, fontSize, narrow } = this.#sheet;
    const middle = y + (narrow ? 2.4 * fontSize : rowHeight / 2);
    const thick = 1.5 * fontSize;
    const thin = 0.7 * fontSize;
    const rect = (name: string, { lowHertz, highHertz }: Span, high: number) =>
      svg`<rect class=${name} x=${place(lowHertz)} y=${middle - high / 2} width=${Math.max(1, place(highHertz) - place(lowHertz))} height=${high}></rect>`;
    const says = this.#besides(bar, place, labelWidth);
    const [label = ''] = breakLines(bar.label, (narrow ? width : labelWidth - 8) + 1, (part) =>
      this.#sheet.measure(part, 'bold'),
    );
    const name = bar.chosen ? 'bar chosen' : 'bar';
    return {
      shapes: svg`<g class=${name} data-key=${bar.key}>
        <rect class="press" x="0" y=${y} width=${width} height=${rowHeight}></rect>
        ${rect('pale', bar.nominal, thick)} ${bar.sure ? rect('sure', bar.sure, thin) : nothing}
        ${bar.untuned.map(({ voice, hertz }) => markAt(voice, place(hertz), y + rowHeight + 0.35 * fontSize, 3))}
      </g>`,
      // Above the marks of what is wanted, which may run through them.
      words: svg`<g class=${name} data-key=${bar.key}>
        ${
          narrow
            ? svg`<text class="name" x="0" y=${y + 0.9 * fontSize} dy="0.35em">${label}</text>`
            : svg`<text class="name" x=${labelWidth - 8} y=${middle} dy="0.35em" text-anchor="end">${label}</text>`
        }
        ${says === null ? nothing : svg`<text class="quiet" x=${says.x} y=${middle} dy="0.35em" text-anchor=${says.anchor}>${bar.says}</text>`}
      </g>`,
    };
  }

  /** Beside the bar, where there is room: right of it, or left of it. */
  #besides(
    { nominal, says }: RulerBar,
    place: (hertz: Hertz) => number,
    labelWidth: number,
  ): { readonly x: number; readonly anchor: 'start' | 'end' } | null {
    const wide = this.#sheet.measure(says) + 8;
    const [left, right] = [place(nominal.lowHertz), place(nominal.highHertz)];
    const crossed = (from: number, to: number) =>
      this.targets.some((target) =>
        [target.lowHertz, target.highHertz].some((hertz) => place(hertz) > from && place(hertz) < to),
      );
    if (right + wide <= this.#sheet.width && !crossed(right, right + wide))
      return { x: right + 8, anchor: 'start' };
    if (left - wide >= labelWidth && !crossed(left - wide, left)) return { x: left - 8, anchor: 'end' };
    return null;
  }

  #target(
    { voice, lowHertz, highHertz }: RulerTarget,
    place: (hertz: Hertz) => number,
    line: number,
    foot: number,
  ): SVGTemplateResult {
    const name = voice.toLowerCase();
    const from = 2 * line;
    const ends = lowHertz === highHertz ? [lowHertz] : [lowHertz, highHertz];
    return svg`${
      lowHertz === highHertz
        ? nothing
        : svg`<rect class="band ${name}" x=${place(lowHertz)} y=${from} width=${place(highHertz) - place(lowHertz)} height=${foot - from}></rect>`
    }${ends.map((hertz) => svg`<path class="line ${name}" d="M${place(hertz)} ${from}V${foot}"></path>`)}`;
  }

  readonly #press = (event: Event): void => {
    const key = (event.target as Element).closest<SVGGElement>('.bar')?.dataset['key'];
    if (key !== undefined) fire<ChooseDetail>(this, 'choose', { value: key });
  };
}

customElements.define('pitch-ruler', PitchRuler);

declare global {
  interface HTMLElementTagNameMap {
    'pitch-ruler': PitchRuler;
  }
}
