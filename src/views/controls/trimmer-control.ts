/**
 * `<trimmer-control>`: a trimmer to turn. A native range carries name, keys and value; the dial over it is decoration
 * that can also be dragged; − and + buttons; a text box for exact values. `rotation` 0…1 is exact, the range's whole
 * number only a view of it. Fires `turn` (TurnDetail): any number of `move`, then one `end` or `cancel`.
 */
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Fraction, VoiceId } from '../../quantity/units.ts';
import { unseen } from '../rows.ts';
import { common } from '../theme/shared.ts';
import { voiceStyles } from '../theme/voice-mark.ts';
import { dialStyles, drawDial } from './dial.ts';
import { DragGesture } from './drag-gesture.ts';
import { fire, type Phase, type ReadText, type TurnDetail } from './events.ts';
import { StepGesture } from './step-gesture.ts';
import { stepped, stepSizes } from './stepping.ts';
import { trimmerStyles } from './trimmer-styles.ts';

export class TrimmerControl extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override properties = {
    label: { type: String },
    voice: { type: String },
    rotation: { attribute: false },
    turns: { type: Number },
    text: { type: String },
    parse: unseen,
    valuetext: { type: String },
    readout: { type: String },
    fieldLabel: { type: String, attribute: 'field-label' },
    lessLabel: { type: String, attribute: 'less-label' },
    moreLabel: { type: String, attribute: 'more-label' },
    scaleStart: { type: String, attribute: 'scale-start' },
    scaleEnd: { type: String, attribute: 'scale-end' },
    hint: { type: String },
    disabled: { type: Boolean },
    draft: { state: true },
    problem: { state: true },
  };
  static override styles = [common, voiceStyles, dialStyles, trimmerStyles];

  /** The range's name, and the visible label. */
  declare label: string;
  declare voice: VoiceId | null;
  declare rotation: Fraction;
  /** 1 for an ordinary trimmer; 10, 25 … for one of several turns. */
  declare turns: number;
  /** The value as the text box shows it at rest, e.g. "18.0 kΩ". */
  declare text: string;
  /** Reads typed text into a rotation 0…1. */
  declare parse: ReadText;
  /** What a screen reader says for the present value. */
  declare valuetext: string;
  /** A line or two beneath the box. */
  declare readout: string;
  declare fieldLabel: string;
  declare lessLabel: string;
  declare moreLabel: string;
  /** Words at the two ends of the printed scale. */
  declare scaleStart: string;
  declare scaleEnd: string;
  declare hint: string;
  declare disabled: boolean;
  declare draft: string | null;
  declare problem: string;

  readonly #steps = new StepGesture(this, {
    sizes: () => stepSizes(this.turns),
    get: () => this.rotation,
    set: (rotation, phase) => this.#turn(rotation, phase),
    other: (event) => this.#startTyping(event),
  });
  readonly #drag = new DragGesture(this, {
    get: () => this.rotation,
    set: (rotation, phase) => this.#turn(rotation, phase),
    allowed: () => !this.disabled,
  });

  constructor() {
    super();
    this.label = '';
    this.voice = null;
    this.rotation = 0;
    this.turns = 1;
    this.text = '';
    this.parse = () => ({ ok: false, message: '' });
    this.valuetext = '';
    this.readout = '';
    this.fieldLabel = '';
    this.lessLabel = '';
    this.moreLabel = '';
    this.scaleStart = '';
    this.scaleEnd = '';
    this.hint = '';
    this.disabled = false;
    this.draft = null;
    this.problem = '';
  }

  /** A place arriving from elsewhere (undo, another file) sweeps away a refused text; nobody's typing is interrupted. */
  protected override willUpdate(changed: PropertyValues<this>): void {
    const isTyping = this.shadowRoot?.activeElement?.id === 'box' && this.draft !== null;
    if (!changed.has('rotation') || changed.get('rotation') === undefined || isTyping) return;
    this.draft = null;
    this.problem = '';
  }

  protected override render(): TemplateResult {
    const whole = this.turns > 1 ? 10_000 : 1000;
    const bad = this.problem !== '';
    const described = [this.hint ? 'hint' : '', bad ? 'problem' : ''].filter(Boolean).join(' ');
    return html`<div class="dial">
        <input
          id="range"
          class="range"
          type="range"
          min="0"
          max=${whole}
          .value=${live(String(Math.round(this.rotation * whole)))}
          ?disabled=${this.disabled}
          aria-label=${this.label}
          aria-valuetext=${this.valuetext || nothing}
          @input=${(event: Event) => this.#fromRange(event, whole, 'move')}
          @change=${(event: Event) => this.#fromRange(event, whole, 'end')}
          @keydown=${this.#steps.onKeyDown}
          @keyup=${this.#steps.onKeyUp}
          @blur=${this.#steps.finish}
        />
        <svg
          class="face"
          viewBox="0 0 120 120"
          aria-hidden="true"
          @pointerdown=${this.#press}
          @pointermove=${this.#drag.onPointerMove}
          @pointerup=${this.#drag.onPointerUp}
          @pointercancel=${this.#drag.onPointerCancel}
        >
          ${drawDial({ rotation: this.rotation, turns: this.turns, voice: this.voice })}
        </svg>
        <div class="ends" aria-hidden="true"><span>${this.scaleStart}</span><span>${this.scaleEnd}</span></div>
      </div>
      <div class="side">
        <div class="name" aria-hidden="true">${this.label}</div>
        <div class="row">
          <button type="button" aria-label=${this.lessLabel} ?disabled=${this.disabled} @click=${() => this.#nudge(-1)}>
            −
          </button>
          <input
            id="box"
            type="text"
            autocomplete="off"
            autocapitalize="off"
            spellcheck="false"
            aria-label=${this.fieldLabel}
            .value=${live(this.draft ?? this.text)}
            ?disabled=${this.disabled}
            aria-invalid=${bad ? 'true' : 'false'}
            aria-describedby=${described || nothing}
            @input=${this.#onInput}
            @keydown=${this.#onBoxKey}
            @blur=${this.#commit}
          />
          <button type="button" aria-label=${this.moreLabel} ?disabled=${this.disabled} @click=${() => this.#nudge(1)}>
            +
          </button>
        </div>
        <div aria-live="polite">${bad ? html`<p id="problem" class="problem">${this.problem}</p>` : nothing}</div>
        ${this.readout ? html`<p class="readout">${this.readout}</p>` : nothing}
        ${this.hint ? html`<p id="hint" class="hint">${this.hint}</p>` : nothing}
      </div>`;
  }

  /** The wheel must be able to stop the page from scrolling, which a listener set by the template may not. */
  protected override firstUpdated(): void {
    this.renderRoot.querySelector('.dial')?.addEventListener('wheel', this.#onWheel, { passive: false });
  }

  readonly #onWheel = (event: Event): void => {
    if (!this.disabled) this.#steps.onWheel(event as WheelEvent);
  };

  #turn(rotation: Fraction, phase: Phase): void {
    this.rotation = rotation;
    this.draft = null;
    this.problem = '';
    fire<TurnDetail>(this, 'turn', { rotation, phase });
  }

  #press(event: PointerEvent): void {
    this.#drag.onPointerDown(event);
    // A press on the picture is a press on the control: the keys continue where the hand left off.
    event.preventDefault();
    this.renderRoot.querySelector<HTMLInputElement>('#range')?.focus({ preventScroll: true });
  }

  /** Moves made by the browser itself, e.g. a screen reader's swipe. */
  #fromRange(event: Event, whole: number, phase: Phase): void {
    const shown = Number((event.target as HTMLInputElement).value);
    // The range only rounds; a report of the place it already showed must not overwrite the exact value.
    const moved = shown !== Math.round(this.rotation * whole);
    if (moved || phase === 'end') this.#turn(moved ? shown / whole : this.rotation, phase);
  }

  #nudge(direction: 1 | -1): void {
    const next = stepped(this.rotation, stepSizes(this.turns).normal, direction);
    if (next !== this.rotation) this.#turn(next, 'end');
  }

  #startTyping(event: KeyboardEvent): boolean {
    if (!/^[0-9]$/.test(event.key) || this.disabled) return false;
    // Before the focus moves: ending the gesture afterwards would sweep the digit away.
    this.#steps.finish();
    this.draft = event.key;
    this.renderRoot.querySelector<HTMLInputElement>('#box')?.focus();
    return true;
  }

  #onInput(event: Event): void {
    this.draft = (event.target as HTMLInputElement).value;
  }

  #onBoxKey(event: KeyboardEvent): void {
    if (event.key === 'Enter') this.#commit();
    if (event.key === 'Escape' && this.draft !== null) {
      event.stopPropagation();
      this.draft = null;
      this.problem = '';
    }
  }

  #commit(): void {
    // Untouched text is not read back: what is printed may be rounder than the exact rotation.
    if (this.draft === null) return;
    const reading = this.parse(this.draft);
    if (!reading.ok) {
      this.problem = reading.message;
      return;
    }
    if (reading.value !== this.rotation) this.#turn(reading.value, 'end');
    this.draft = null;
    this.problem = '';
  }
}

customElements.define('trimmer-control', TrimmerControl);

declare global {
  interface HTMLElementTagNameMap {
    'trimmer-control': TrimmerControl;
  }
}
