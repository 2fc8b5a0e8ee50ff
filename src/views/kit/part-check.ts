/** `<part-check>`: is the part in the hand the one on the line? Colours, codes and polarity of one line of the order. */
import { css, html, LitElement, type TemplateResult } from 'lit';
import {
  bandsOf,
  capacitorCode,
  checkResistor,
  checkValue,
  readBands,
  readCapacitorCode,
} from '../../kit/codes.ts';
import { bandTroubleWords, valueVerdictWords } from '../../words/bench.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import type { OrderSpec } from '../../words/order.ts';
import { common } from '../theme/shared.ts';
import { resistorStyles, resistorWithWords } from './resistor-picture.ts';

const words = kitViewWords.check;
/** The commonest sixth band of precise resistors. */
const USUAL_PER_KELVIN = 50e-6;

export class PartCheck extends LitElement {
  static override properties = { spec: { attribute: false }, typed: { state: true } };
  static override styles = [
    common,
    resistorStyles,
    css`
      :host {
        font-size: var(--text-small);
      }
      p {
        margin: 2px 0;
      }
      dl {
        margin: 4px 0;
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: 4px 12px;
        align-items: center;
      }
      dt {
        color: var(--muted);
      }
      dd {
        margin: 0;
      }
      input {
        width: min(100%, 24em);
        margin: 2px 0;
      }
      label {
        display: block;
      }
    `,
  ];

  declare spec: OrderSpec;
  declare typed: string;

  constructor() {
    super();
    this.typed = '';
  }

  protected override render(): TemplateResult {
    const { spec } = this;
    switch (spec.kind) {
      case 'resistor':
        return html`${this.#bands(spec.ohms)}
          ${this.#box(words.typedBands, words.typedBandsHint, (text) => verdictOnBands(spec.ohms, text))}
          <p>${words.polarity.none}</p>`;
      case 'timing capacitor':
      case 'capacitor': {
        const tolerance = spec.kind === 'timing capacitor' ? spec.tolerance : null;
        const code = capacitorCode(spec.farads, tolerance);
        const polarised =
          spec.kind === 'timing capacitor'
            ? spec.dielectric === 'electrolytic'
            : spec.type === 'electrolytic';
        return html`${code === null || polarised ? '' : html`<p>${words.code(code)}</p>`}
          ${this.#box(words.typedCode, words.codeHint, (text) => verdictOnCode(spec.farads, text))}
          <p>${polarised ? words.polarity.electrolytic : words.polarity.none}</p>`;
      }
      case 'diode':
        return html`<p>${words.polarity.diode}</p>`;
      case 'timer':
      case 'comparator':
      case 'socket':
        return html`<p>${words.polarity.chip}</p>`;
      case 'supply':
      case 'supply lead':
        return html`<p>${words.polarity.lead}</p>`;
      case 'cell':
        return html`<p>${words.polarity.none}</p>`;
      case 'trimmer':
      case 'volume':
      case 'jack':
      case 'test pin':
      case 'board':
      case 'wire':
        return html``;
    }
  }

  #bands(ohms: number): TemplateResult {
    const sets = [
      [words.bandsFive, bandsOf(ohms, 5, 0.01)],
      [words.bandsFour, bandsOf(ohms, 4, 0.05)],
      [words.bandsSix, bandsOf(ohms, 6, 0.01, USUAL_PER_KELVIN)],
    ] as const;
    return html`<dl>
      ${sets.map(
        ([name, set]) => html`<dt>${name}</dt>
          <dd>${set.ok ? resistorWithWords(set.bands) : words.notOnFour}</dd>`,
      )}
    </dl>`;
  }

  #box(label: string, hint: string, verdict: (text: string) => string): TemplateResult {
    return html`<label
        >${label}
        <input
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          aria-describedby="hint said"
          @change=${(event: Event) => {
            this.typed = (event.currentTarget as HTMLInputElement).value;
          }}
      /></label>
      <p id="hint" class="muted">${hint}</p>
      <p id="said" aria-live="polite"><strong>${this.typed.trim() === '' ? '' : verdict(this.typed)}</strong></p>`;
  }
}

function verdictOnBands(wanted: number, text: string): string {
  const reading = readBands(text);
  if (!reading.ok) return bandTroubleWords(reading.problem);
  return valueVerdictWords(checkResistor(wanted, reading));
}

function verdictOnCode(wanted: number, text: string): string {
  const farads = readCapacitorCode(text);
  return farads === null ? words.noCode(text.trim()) : valueVerdictWords(checkValue(wanted, farads));
}

customElements.define('part-check', PartCheck);

declare global {
  interface HTMLElementTagNameMap {
    'part-check': PartCheck;
  }
}
