/** `<first-cycles>`: how a note begins: capacitor and output after a long silence, one step at a time. */
import { scaleLinear } from 'd3-scale';
import { css, html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { firstStretches, type Stretch, voltsWithin } from '../../circuit/first-cycles.ts';
import type { Design } from '../../design/design.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import type { ChooseDetail } from '../controls/events.ts';
import { chartStyles, tableOnDemand } from '../plots/chart.ts';
import { Sheet } from '../plots/sheet.ts';
import { CALMLY, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { voiceStyles } from '../theme/voice-mark.ts';

/** Two to four periods are drawn: more would be stripes. */
const CYCLES = 3;
/** In pixels; the width is the place's own. */
const SIZE = { most: 720, left: 4.6, right: 2.2, top: 10, capacitor: 130, output: [152, 182] } as const;
const POINTS = 24;

export class FirstCycles extends AppElement {
  static override properties = { ...AppElement.properties, voice: { state: true }, step: { state: true } };
  static override styles = [
    common,
    voiceStyles,
    chartStyles,
    css`
      svg {
        display: block;
      }
      .frame,
      .level {
        stroke: var(--control-line);
        stroke-width: 1;
        fill: none;
      }
      .level {
        stroke-dasharray: 2 4;
      }
      .ahead {
        opacity: 0.35;
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 8px 14px;
        margin: 6px 0;
      }
    `,
  ];

  declare voice: VoiceId;
  /** Stretches shown so far. */
  declare step: number;
  readonly #sheet = new Sheet(this);
  #design!: Selected<Design, Design>;

  constructor() {
    super();
    this.voice = 'A';
    this.step = 0;
  }

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, CALMLY);
  }

  protected override render(): TemplateResult {
    const { astables, railVolts } = derivedInstrument(this.#design.value);
    const stretches = firstStretches(astables[this.voice], CYCLES);
    return html`<div class="row">
        <choice-row
          legend=${words.first.voice}
          .choices=${[{ value: 'A', label: 'A' }, { value: 'B', label: 'B' }]}
          value=${this.voice}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) => {
            this.voice = detail.value as VoiceId;
            this.step = 0;
          }}
        ></choice-row>
        <button type="button" ?disabled=${this.step === 0} @click=${() => this.step--}>${words.first.back}</button>
        <button type="button" ?disabled=${this.step >= stretches.length} @click=${() => this.step++}>
          ${words.first.next}
        </button>
        <span class="small">${words.first.step(this.step, stretches.length)}</span>
      </div>
      <figure>
        ${this.#sheet.width === 0 ? '' : stretches.length > 0 ? this.#draw(stretches, railVolts) : html`<p>${words.first.none}</p>`}
        ${tableOnDemand({ toggle: words.first.table, heads: words.first.heads, rows: stretches.map(tableRow) })}
      </figure>
      <p role="status">${this.#says(stretches)}</p>`;
  }

  #says(stretches: readonly Stretch[]): string {
    const last = stretches[this.step - 1];
    if (!last) return stretches.length > 0 ? words.first.released : '';
    const n = Math.ceil(this.step / 2);
    const milliseconds = (last.end - last.start) * 1000;
    const steady = stretches[2]!;
    return last.high
      ? words.first.high(n, milliseconds, (last.end - last.start) / (steady.end - steady.start))
      : words.first.low(n, milliseconds);
  }

  #draw(stretches: readonly Stretch[], rail: number): TemplateResult {
    const { fontSize } = this.#sheet;
    const width = Math.min(SIZE.most, this.#sheet.width);
    const height = SIZE.output[1] + 2 * fontSize;
    const left = SIZE.left * fontSize;
    const end = width - SIZE.right * fontSize;
    const x = scaleLinear([0, stretches.at(-1)!.end], [left, end]);
    const y = scaleLinear([0, rail], [SIZE.capacitor, SIZE.top]);
    const name = this.voice.toLowerCase();
    return html`<svg class="chart" viewBox="0 0 ${width} ${height}" width=${width} height=${height} role="img" aria-label=${words.first.figure}>
      <path class="frame" d="M ${left} ${SIZE.top} V ${SIZE.capacitor} H ${end}" />
      ${[1 / 3, 2 / 3].map(
        (share) =>
          svg`<line class="level" x1=${left} x2=${end} y1=${y(rail * share)} y2=${y(rail * share)} />
            <text x=${left - 6} y=${y(rail * share) + 4} text-anchor="end">${words.volts(rail * share)}</text>`,
      )}
      ${stretches.map((stretch, i) => drawStretch(stretch, i >= this.step, name, x, y))}
      ${x
        .ticks(4)
        .map(
          (t) =>
            svg`<text x=${x(t)} y=${height - 6} text-anchor="middle">${words.first.axis(t * 1000)}</text>`,
        )}
    </svg>`;
  }
}

type Scale = (value: number) => number;

function drawStretch(stretch: Stretch, ahead: boolean, name: string, x: Scale, y: Scale): SVGTemplateResult {
  const points = Array.from({ length: POINTS + 1 }, (_, i) => {
    const t = stretch.start + ((stretch.end - stretch.start) * i) / POINTS;
    return `${x(t).toFixed(1)} ${y(voltsWithin(stretch, t)).toFixed(1)}`;
  });
  const [top, bottom] = SIZE.output;
  const from = stretch.high ? bottom : top;
  const to = stretch.high ? top : bottom;
  return svg`<g class=${ahead ? 'ahead' : ''}>
    <path class="line ${name}" d="M ${points.join(' L ')}" />
    <path class="line ${name}" d="M ${x(stretch.start)} ${from} V ${to} H ${x(stretch.end)}" />
  </g>`;
}

function tableRow(stretch: Stretch, i: number): string[] {
  const n = Math.floor(i / 2) + 1;
  return [
    stretch.high ? words.first.highName(n) : words.first.lowName(n),
    words.first.milliseconds(stretch.end - stretch.start),
    words.volts(stretch.from),
    words.volts(stretch.to),
  ];
}

customElements.define('first-cycles', FirstCycles);

declare global {
  interface HTMLElementTagNameMap {
    'first-cycles': FirstCycles;
  }
}
