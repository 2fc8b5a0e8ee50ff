/** `<forget-device>`: says what this browser keeps, and takes all of it away when asked twice. */
import { css, html, type TemplateResult } from 'lit';
import type { KeepingState } from '../app/keeping.ts';
import type { Lampnote } from '../app/lampnote.ts';
import { keepingWords } from '../words/en-keeping.ts';
import { AppElement } from './app-element.ts';
import { Selected } from './select.ts';
import { common } from './theme/shared.ts';

const words = keepingWords.forget;

export class ForgetDevice extends AppElement {
  static override properties = { ...AppElement.properties, step: { state: true } };
  static override styles = [
    common,
    css`
      :host {
        margin-block: 6px;
      }
      p {
        margin: 0;
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 6px 14px;
        font-size: var(--text-control);
      }
    `,
  ];

  declare step: 'told' | 'asks' | 'failed';
  #forgotten!: Selected<KeepingState, boolean>;

  constructor() {
    super();
    this.step = 'told';
  }

  protected override bind(app: Lampnote): void {
    this.#forgotten = new Selected(this, app.keeping.state, ({ forgotten }) => forgotten);
    // Its words are those of the language.
    new Selected(this, app.session, ({ language }) => language);
  }

  protected override render(): TemplateResult {
    if (this.step === 'asks')
      return html`<div class="row" role="group" aria-labelledby="asks" @keydown=${this.#key}>
        <p id="asks">${words.asks}</p>
        <button type="button" id="no" @click=${() => this.#back()}>${words.no}</button>
        <button type="button" @click=${this.#forget}>${words.yes}</button>
      </div>`;
    return html`<div class="row">
      <p role="status" class=${this.step === 'failed' ? 'fault' : 'muted'}>${this.#forgotten.value ? words.done : words[this.step]}</p>
      <button type="button" id="press" @click=${() => this.#go('asks', '#no')}>${words.press}</button>
    </div>`;
  }

  #back(): void {
    void this.#go('told', '#press');
  }

  readonly #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    this.#back();
  };

  readonly #forget = async (): Promise<void> => {
    const isForgotten = await this.app.keeping.forget();
    await this.#go(isForgotten ? 'told' : 'failed', '#press');
  };

  /** The focus goes along. */
  async #go(step: ForgetDevice['step'], focused: string): Promise<void> {
    this.step = step;
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(focused)?.focus();
  }
}

customElements.define('forget-device', ForgetDevice);

declare global {
  interface HTMLElementTagNameMap {
    'forget-device': ForgetDevice;
  }
}
