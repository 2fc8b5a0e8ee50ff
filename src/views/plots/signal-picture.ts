/**
 * `<signal-picture>`: the one picture, always in the same order: light → resistance → node → comparison → gate → tone. Each
 * part is a drawing with its values in words beneath; parts stand side by side, and in rows of their order when narrow.
 */
import { css, html, LitElement, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { ALL_SHOWN, STAGES, type StageId, type StageMode } from '../../lesson/lesson.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { common } from '../theme/shared.ts';
import { voiceStyles } from '../theme/voice-mark.ts';
import { chartStyles, voiceClass } from './chart.ts';
import {
  DRAWING,
  type DrawnVoice,
  drawComparison,
  drawDivider,
  drawGate,
  drawingStyles,
  drawLight,
  drawResistance,
  drawSlowed,
  drawTone,
} from './stage-drawings.ts';

export interface StageLabel {
  readonly voice: VoiceId;
  readonly text: string;
}

const DRAW: Readonly<Record<StageId, (voices: readonly DrawnVoice[]) => SVGTemplateResult>> = {
  lux: drawLight,
  ohms: drawResistance,
  volts: drawDivider,
  compare: drawComparison,
  gate: drawGate,
  tone: drawTone,
};

export class SignalPicture extends LitElement {
  static override properties = {
    voices: { attribute: false },
    held: { attribute: false },
    modes: { attribute: false },
    heads: { attribute: false },
    labels: { attribute: false },
    notes: { attribute: false },
    name: { type: String },
    hiddenWord: { type: String, attribute: 'hidden-word' },
  };
  static override styles = [
    common,
    voiceStyles,
    chartStyles,
    drawingStyles,
    css`
      ol {
        display: grid;
        grid-template-columns: repeat(6, minmax(0, 1fr));
        gap: 10px 26px;
        margin: 0;
        padding: 0;
        list-style: none;
        font-size: var(--text-body);
      }
      li {
        position: relative;
        display: grid;
        grid-template-rows: auto auto 1fr;
        min-width: 0;
      }
      h3 {
        margin-bottom: 4px;
        color: var(--muted);
        font-family: var(--font-text);
        font-size: var(--text-body);
        font-weight: 400;
      }
      .drawing {
        max-width: var(--drawing-width, 230px);
        margin-inline: auto;
        overflow: visible;
      }
      .hidden .drawing {
        display: grid;
        place-items: center;
        border: var(--stroke-control) dashed var(--control-line);
        color: var(--muted);
        font-family: var(--font-head);
        font-size: 2.2em;
      }
      .hidden .drawing svg {
        visibility: hidden;
      }
      .hidden .drawing > * {
        grid-area: 1 / 1;
      }
      .values {
        min-height: 2.9em;
        margin: 6px 0 0;
        line-height: 1.35;
        font-weight: 600;
      }
      .values p {
        margin: 0;
        overflow-wrap: break-word;
      }
      .values .note {
        color: var(--muted);
        font-size: var(--text-small);
        font-style: italic;
        font-weight: 400;
      }
      .to {
        position: absolute;
        top: calc(1.4em + var(--drawing-width, 170px) * 0.4);
        right: -23px;
        width: 20px;
        fill: none;
        stroke: var(--ink);
        stroke-width: var(--stroke-quiet);
      }
      @media (max-width: 56.25em) and (min-width: 31.3125em) {
        ol {
          grid-template-columns: repeat(3, minmax(0, 1fr));
        }
        li:nth-child(3n) .to {
          display: none;
        }
      }
      @media (max-width: 31.25em) {
        ol {
          grid-template-columns: repeat(2, minmax(0, 1fr));
        }
        li:nth-child(2n) .to {
          display: none;
        }
      }
    `,
  ];

  /** The voices shown, each as it is now. */
  declare voices: readonly DrawnVoice[];
  /** The same voices as they were when a part was held still. */
  declare held: Readonly<Partial<Record<StageId, readonly DrawnVoice[]>>>;
  declare modes: Readonly<Record<StageId, StageMode>>;
  declare heads: Readonly<Record<StageId, string>>;
  declare labels: Readonly<Record<StageId, readonly StageLabel[]>>;
  /** A remark beneath a part: that it is held still, or slowed. */
  declare notes: Readonly<Record<StageId, string>>;
  /** The list's name. */
  declare name: string;
  /** Said of a part that is hidden. */
  declare hiddenWord: string;

  constructor() {
    super();
    this.voices = [];
    this.held = {};
    this.modes = ALL_SHOWN;
    this.heads = { lux: '', ohms: '', volts: '', compare: '', gate: '', tone: '' };
    this.labels = { lux: [], ohms: [], volts: [], compare: [], gate: [], tone: [] };
    this.notes = { lux: '', ohms: '', volts: '', compare: '', gate: '', tone: '' };
    this.name = '';
    this.hiddenWord = '';
  }

  protected override render(): TemplateResult {
    return html`<ol aria-label=${this.name}>
      ${STAGES.map((stage, i) => this.#part(stage, i < STAGES.length - 1))}
    </ol>`;
  }

  #part(stage: StageId, leads: boolean): TemplateResult {
    const mode = this.modes[stage];
    const hidden = mode === 'hidden';
    const draw = mode === 'slowed' && stage === 'tone' ? drawSlowed : DRAW[stage];
    return html`<li class=${mode} data-stage=${stage}>
      <h3>${this.heads[stage]}</h3>
      <div class="drawing">
        <svg class="part" viewBox="0 0 ${DRAWING.width} ${DRAWING.height}" aria-hidden="true">
          ${hidden ? '' : draw(this.held[stage] ?? this.voices)}
        </svg>
        ${hidden ? html`<span aria-hidden="true">?</span>` : ''}
      </div>
      <div class="values">
        ${
          hidden
            ? html`<p class="note">${this.hiddenWord}</p>`
            : this.labels[stage].map(
                ({ voice, text }) =>
                  html`<p class="voice-${voiceClass(voice)}">${this.voices.length > 1 ? `${voice}: ` : ''}${text}</p>`,
              )
        }
        ${hidden || this.notes[stage] === '' ? '' : html`<p class="note">${this.notes[stage]}</p>`}
      </div>
      ${leads ? html`<svg class="to" viewBox="0 0 20 16" aria-hidden="true">${ARROW}</svg>` : ''}
    </li>`;
  }
}

const ARROW = svg`<path d="M1 8H18M11 2l7 6l-7 6" />`;

customElements.define('signal-picture', SignalPicture);

declare global {
  interface HTMLElementTagNameMap {
    'signal-picture': SignalPicture;
  }
}
