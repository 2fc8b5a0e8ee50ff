/** `<choice-row>`: a small native radio group set as a line of words. Fires `choose` (ChooseDetail). */
import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { rows } from '../rows.ts';
import { common } from '../theme/shared.ts';
import { type ChooseDetail, fire } from './events.ts';

export interface Choice {
  readonly value: string;
  readonly label: string;
  readonly disabled?: boolean;
}

export class ChoiceRow extends LitElement {
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override properties = {
    legend: { type: String },
    legendHidden: { type: Boolean, attribute: 'legend-hidden' },
    choices: rows,
    value: { type: String },
    disabled: { type: Boolean },
  };
  static override styles = [
    common,
    css`
      fieldset {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 calc(var(--unit) * 1.75);
        font-size: var(--text-control);
      }
      legend {
        float: left;
        min-width: var(--label-width, 0);
        padding: 0;
      }
      label {
        position: relative;
        display: flex;
        align-items: center;
        min-height: 28px;
        color: var(--muted);
        cursor: pointer;
      }
      input[type='radio'] {
        position: absolute;
        inset: 0;
        width: 100%;
        height: 100%;
        margin: 0;
        opacity: 0;
        cursor: pointer;
      }
      span {
        padding: 2px 1px 1px;
        border-bottom: 2.5px solid transparent;
      }
      label:hover {
        color: var(--ink);
      }
      input:checked + span {
        border-color: var(--accent);
        color: var(--ink);
        font-weight: 600;
      }
      input:focus-visible + span {
        outline: var(--stroke-focus) solid var(--focus);
        outline-offset: 2px;
      }
      input:disabled,
      input:disabled + span {
        cursor: default;
        font-style: italic;
      }
      @media (pointer: coarse) {
        label {
          min-height: 44px;
          min-width: 44px;
        }
      }
      @media (forced-colors: active) {
        /* A transparent border would show on every choice here: let the native dots tell. */
        input[type='radio'] {
          position: static;
          width: 18px;
          height: 18px;
          margin-inline-end: 4px;
          opacity: 1;
        }
        span {
          border: 0;
        }
      }
    `,
  ];

  declare legend: string;
  declare legendHidden: boolean;
  declare choices: readonly Choice[];
  declare value: string;
  declare disabled: boolean;

  constructor() {
    super();
    this.legend = '';
    this.legendHidden = false;
    this.choices = [];
    this.value = '';
    this.disabled = false;
  }

  protected override render(): TemplateResult {
    return html`<fieldset ?disabled=${this.disabled}>
      <legend class=${this.legendHidden ? 'visually-hidden' : nothing}>${this.legend}</legend>
      ${this.choices.map(
        (choice) => html`<label>
          <input
            type="radio"
            name="choice"
            value=${choice.value}
            .checked=${live(choice.value === this.value)}
            ?disabled=${choice.disabled === true}
            @change=${() => this.#choose(choice.value)}
          />
          <span>${choice.label}</span>
        </label>`,
      )}
    </fieldset>`;
  }

  #choose(value: string): void {
    this.value = value;
    fire<ChooseDetail>(this, 'choose', { value });
  }
}

customElements.define('choice-row', ChoiceRow);

declare global {
  interface HTMLElementTagNameMap {
    'choice-row': ChoiceRow;
  }
}
