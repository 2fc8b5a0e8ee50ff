/**
 * `<quantity-field>`: a labelled text box for one quantity. Enter or leaving the box reads the text; text that is not
 * understood stays in the box with the reason beneath, and the value is left alone; Escape brings the value back.
 * Fires `commit` (CommitDetail, SI unit) only when the value is another one.
 */
import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { unseen } from '../rows.ts';
import { common } from '../theme/shared.ts';
import { type CommitDetail, fire, type ReadText } from './events.ts';

export class QuantityField extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override properties = {
    label: { type: String },
    labelHidden: { type: Boolean, attribute: 'label-hidden' },
    stacked: { type: Boolean, reflect: true },
    unit: { type: String },
    hint: { type: String },
    value: { attribute: false },
    format: { attribute: false },
    parse: unseen,
    disabled: { type: Boolean },
    draft: { state: true },
    problem: { state: true },
  };
  static override styles = [
    common,
    css`
      .row {
        display: grid;
        grid-template-columns: minmax(0, var(--label-width, 6.5em)) minmax(0, var(--field-width, 6.5em)) auto;
        align-items: center;
        column-gap: var(--unit);
        padding-block: 2px;
        font-size: var(--text-control);
      }
      :host([stacked]) .row {
        grid-template-columns: minmax(0, var(--field-width, 6.5em)) auto;
      }
      :host([stacked]) label {
        grid-column: 1 / -1;
      }
      .row.bare {
        grid-template-columns: minmax(0, var(--field-width, 6.5em)) auto;
      }
      label {
        overflow-wrap: anywhere;
      }
      input {
        width: 100%;
      }
      .unit {
        color: var(--muted);
      }
      .hint,
      .problem {
        margin: 2px 0 0;
        font-size: var(--text-small);
        line-height: 1.35;
      }
      .problem {
        color: var(--fault);
      }
    `,
  ];

  declare label: string;
  /** The label is for screen readers only (a heading or a column says it already). */
  declare labelHidden: boolean;
  /** The label stands above the box. */
  declare stacked: boolean;
  /** Shown after the box; leave empty where `format` prints the unit. */
  declare unit: string;
  declare hint: string;
  /** SI unit; null = nothing entered. */
  declare value: number | null;
  declare format: (value: number) => string;
  declare parse: ReadText;
  declare disabled: boolean;
  /** What stands in the box while it differs from the value. */
  declare draft: string | null;
  declare problem: string;

  constructor() {
    super();
    this.label = '';
    this.labelHidden = false;
    this.stacked = false;
    this.unit = '';
    this.hint = '';
    this.value = null;
    this.format = String;
    this.parse = (text) => ({ ok: true, value: Number(text) });
    this.disabled = false;
    this.draft = null;
    this.problem = '';
  }

  /**
   * A value arriving from elsewhere (undo, another file) sweeps away a refused text left standing over the old one; but
   * nobody's typing is interrupted, even by a value that changes many times a second.
   */
  protected override willUpdate(changed: PropertyValues<this>): void {
    const typing = this.shadowRoot?.activeElement !== null && this.draft !== null;
    if (changed.has('value') && changed.get('value') !== undefined && !typing) this.#restore();
  }

  protected override render(): TemplateResult {
    const bad = this.problem !== '';
    const shown = this.draft ?? (this.value === null ? '' : this.format(this.value));
    const described = [this.hint ? 'hint' : '', bad ? 'problem' : ''].filter(Boolean).join(' ');
    return html`<div class=${this.labelHidden ? 'row bare' : 'row'}>
        <label for="box" class=${this.labelHidden ? 'visually-hidden' : nothing}>${this.label}</label>
        <input
          id="box"
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          .value=${live(shown)}
          ?disabled=${this.disabled}
          aria-invalid=${bad ? 'true' : 'false'}
          aria-describedby=${described || nothing}
          @input=${this.#onInput}
          @keydown=${this.#onKeyDown}
          @blur=${this.#commit}
        />
        ${this.unit ? html`<span class="unit">${this.unit}</span>` : nothing}
      </div>
      ${this.hint ? html`<p id="hint" class="hint muted">${this.hint}</p>` : nothing}
      <div aria-live="polite">${bad ? html`<p id="problem" class="problem">${this.problem}</p>` : nothing}</div>`;
  }

  #onInput(event: Event): void {
    this.draft = (event.target as HTMLInputElement).value;
  }

  #onKeyDown(event: KeyboardEvent): void {
    if (event.key === 'Enter') this.#commit();
    if (event.key === 'Escape' && this.draft !== null) {
      // One Escape, one act: the page's own uses of the key wait for the next press.
      event.stopPropagation();
      this.#restore();
    }
  }

  #commit(): void {
    // Untouched text is not read back: what is printed may be rounder than the value it stands for.
    if (this.draft === null) return;
    const reading = this.parse(this.draft);
    if (!reading.ok) {
      this.problem = reading.message;
      return;
    }
    const same = reading.value === this.value;
    this.#restore();
    if (same) return;
    this.value = reading.value;
    fire<CommitDetail>(this, 'commit', { value: reading.value });
  }

  #restore(): void {
    this.draft = null;
    this.problem = '';
  }
}

customElements.define('quantity-field', QuantityField);

declare global {
  interface HTMLElementTagNameMap {
    'quantity-field': QuantityField;
  }
}
