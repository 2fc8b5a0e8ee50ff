/** `<load-again>`: a part of the page that did not load; on a press it is tried again, in the end with the page anew. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../app/lampnote.ts';
import { words } from '../words/en.ts';
import { AppElement } from './app-element.ts';
import { Selected } from './select.ts';
import { common } from './theme/shared.ts';

export class LoadAgain extends AppElement {
  static override properties = {
    ...AppElement.properties,
    text: { type: String },
    again: { attribute: false },
  };
  static override styles = [
    common,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 6px 16px;
        font-size: var(--text-control);
      }
      p {
        margin: 0;
      }
    `,
  ];

  /** What did not load, and that nothing is lost. */
  declare text: string;
  /** Tries the part alone; true when it is there now. Browsers may refuse what did not come once. */
  declare again: (() => Promise<boolean>) | null;
  #notServed!: Selected<boolean, boolean>;

  constructor() {
    super();
    this.text = '';
    this.again = null;
  }

  protected override bind(app: Lampnote): void {
    this.#notServed = new Selected(this, app.notServed, (notServed) => notServed);
    // Its words are those of the language.
    new Selected(this, app.session, ({ language }) => language);
  }

  protected override render(): TemplateResult {
    return html`<p class="fault" role="alert">${this.text}</p>
      <button type="button" @click=${this.#try}>${words.places.again}</button>
      <p class="fault" role="status">${this.#notServed.value ? words.places.notServed : ''}</p>`;
  }

  readonly #try = async (): Promise<void> => {
    if (!(await this.again?.())) await this.app.anew();
  };
}

customElements.define('load-again', LoadAgain);

declare global {
  interface HTMLElementTagNameMap {
    'load-again': LoadAgain;
  }
}
