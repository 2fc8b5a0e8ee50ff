/**
 * `<level-slider>`: a labelled native range on a linear or logarithmic track, its value in words at the right. `value`
 * is exact, the range's 0…1000 only a view of it. Keys as on a trimmer. Fires `slide` (SlideDetail).
 */
import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Fraction, VoiceId } from '../../quantity/units.ts';
import { common } from '../theme/shared.ts';
import { fire, type Phase, type SlideDetail } from './events.ts';
import { StepGesture } from './step-gesture.ts';
import { fractionAt, stepSizes, type Track, valueAt } from './stepping.ts';

const PLACES = 1000;

export class LevelSlider extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override properties = {
    label: { type: String },
    labelHidden: { type: Boolean, attribute: 'label-hidden' },
    value: { attribute: false },
    min: { type: Number },
    max: { type: Number },
    scale: { type: String },
    offAtStart: { type: Boolean, attribute: 'off-at-start' },
    valuetext: { type: String },
    readout: { type: String },
    voice: { type: String, reflect: true },
    disabled: { type: Boolean },
  };
  static override styles = [
    common,
    css`
      .row {
        display: grid;
        grid-template-columns: minmax(0, var(--label-width, 6.4em)) minmax(64px, 1fr) minmax(
            0,
            var(--value-width, 4.8em)
          );
        align-items: center;
        column-gap: var(--unit);
        min-height: 28px;
        font-size: var(--text-control);
      }
      .row.bare {
        grid-template-columns: minmax(64px, 1fr) minmax(0, var(--value-width, 4.8em));
      }
      label {
        overflow-wrap: break-word;
        line-height: 1.2;
      }
      input {
        appearance: none;
        width: 100%;
        height: 28px;
        margin: 0;
        background: none;
        cursor: pointer;
        touch-action: pan-y;
        --thumb-line: var(--accent);
        --thumb-fill: var(--surface);
        --thumb-round: var(--radius);
      }
      :host([voice='A']) input {
        --thumb-line: var(--voice-a);
        --thumb-fill: var(--voice-a);
        --thumb-round: 50%;
      }
      :host([voice='B']) input {
        --thumb-line: var(--voice-b);
      }
      input::-webkit-slider-runnable-track {
        height: var(--stroke-quiet);
        border-radius: 1px;
        background: var(--control-line);
      }
      input::-moz-range-track {
        height: var(--stroke-quiet);
        border-radius: 1px;
        background: var(--control-line);
      }
      input::-webkit-slider-thumb {
        appearance: none;
        width: 16px;
        height: 16px;
        margin-top: calc(var(--stroke-quiet) / 2 - 8px);
        border: 2.5px solid var(--thumb-line);
        border-radius: var(--thumb-round);
        background: var(--thumb-fill);
      }
      input::-moz-range-thumb {
        box-sizing: border-box;
        width: 16px;
        height: 16px;
        border: 2.5px solid var(--thumb-line);
        border-radius: var(--thumb-round);
        background: var(--thumb-fill);
      }
      input:focus-visible {
        outline-offset: 0;
      }
      input:disabled {
        cursor: default;
        opacity: 0.5;
      }
      @media (pointer: coarse) {
        input {
          height: 44px;
        }
        input::-webkit-slider-thumb {
          width: 24px;
          height: 24px;
          margin-top: calc(var(--stroke-quiet) / 2 - 12px);
        }
        input::-moz-range-thumb {
          width: 24px;
          height: 24px;
        }
      }
      @media (forced-colors: active) {
        input {
          appearance: auto;
        }
      }
    `,
  ];

  declare label: string;
  declare labelHidden: boolean;
  /** In the slider's own unit. */
  declare value: number;
  declare min: number;
  declare max: number;
  declare scale: 'log' | 'linear';
  /** The very start of the track means 0. */
  declare offAtStart: boolean;
  /** What a screen reader says; the readout when empty. */
  declare valuetext: string;
  /** The value in words, at the right. */
  declare readout: string;
  declare voice: VoiceId | null;
  declare disabled: boolean;

  readonly #steps = new StepGesture(this, {
    sizes: () => stepSizes(1),
    get: () => fractionAt(this.value, this.#track()),
    set: (fraction, phase) => this.#slide(fraction, phase),
  });

  constructor() {
    super();
    this.label = '';
    this.labelHidden = false;
    this.value = 0;
    this.min = 0;
    this.max = 1;
    this.scale = 'linear';
    this.offAtStart = false;
    this.valuetext = '';
    this.readout = '';
    this.voice = null;
    this.disabled = false;
  }

  #track(): Track {
    return { min: this.min, max: this.max, scale: this.scale, offAtStart: this.offAtStart };
  }

  protected override render(): TemplateResult {
    const place = Math.round(fractionAt(this.value, this.#track()) * PLACES);
    return html`<div class=${this.labelHidden ? 'row bare' : 'row'}>
      <label for="range" class=${this.labelHidden ? 'visually-hidden' : nothing}>${this.label}</label>
      <input
        id="range"
        type="range"
        min="0"
        max=${PLACES}
        .value=${live(String(place))}
        ?disabled=${this.disabled}
        aria-valuetext=${this.valuetext || this.readout || nothing}
        @input=${(event: Event) => this.#fromRange(event, 'move')}
        @change=${(event: Event) => this.#fromRange(event, 'end')}
        @keydown=${this.#steps.onKeyDown}
        @keyup=${this.#steps.onKeyUp}
        @blur=${this.#steps.finish}
      />
      <span aria-hidden="true">${this.readout}</span>
    </div>`;
  }

  protected override firstUpdated(): void {
    const range = this.renderRoot.querySelector('input');
    range?.addEventListener('wheel', (event) => this.#steps.onWheel(event), { passive: false });
  }

  #fromRange(event: Event, phase: Phase): void {
    const place = Number((event.target as HTMLInputElement).value);
    const now = fractionAt(this.value, this.#track());
    const moved = place !== Math.round(now * PLACES);
    if (moved) this.#slide(place / PLACES, phase);
    else if (phase === 'end') fire<SlideDetail>(this, 'slide', { value: this.value, phase });
  }

  #slide(fraction: Fraction, phase: Phase): void {
    // An unchanged place keeps the exact value, which the track's arithmetic could only give back rounded.
    const track = this.#track();
    if (fraction !== fractionAt(this.value, track)) this.value = valueAt(fraction, track);
    fire<SlideDetail>(this, 'slide', { value: this.value, phase });
  }
}

customElements.define('level-slider', LevelSlider);

declare global {
  interface HTMLElementTagNameMap {
    'level-slider': LevelSlider;
  }
}
