/** `<keeping-note>`: what becomes of the work in this browser, where that is not as it should be, and what can be done. */
import { css, html, type TemplateResult } from 'lit';
import type { Aside, KeepingState } from '../app/keeping.ts';
import type { Lampnote } from '../app/lampnote.ts';
import { words } from '../words/en.ts';
import { keepingWords } from '../words/en-keeping.ts';
import { AppElement } from './app-element.ts';
import { noticeStyles } from './bar-styles.ts';
import { complaintList } from './complaints.ts';
import { offerFile } from './files.ts';
import { Selected } from './select.ts';
import { common } from './theme/shared.ts';

export class KeepingNote extends AppElement {
  static override styles = [
    common,
    noticeStyles,
    css`
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  #state!: Selected<KeepingState, KeepingState>;

  protected override bind(app: Lampnote): void {
    this.#state = new Selected(this, app.keeping.state, (state) => state);
    // Its words are those of the language.
    new Selected(this, app.session, ({ language }) => language);
  }

  protected override render(): TemplateResult {
    const { refused, elsewhere, aside } = this.#state.value;
    return html`${refused ? this.#refused() : ''}${elsewhere ? this.#elsewhere() : ''}${aside ? this.#aside(aside) : ''}`;
  }

  #refused(): TemplateResult {
    return html`<div class="notice" role="alert">
      <p class="fault">${keepingWords.refused}</p>
      <button type="button" @click=${this.#save}>${keepingWords.save}</button>
      <button type="button" @click=${() => this.app.keeping.closeRefused()}>${keepingWords.close}</button>
    </div>`;
  }

  #elsewhere(): TemplateResult {
    return html`<div class="notice" role="alert">
      <p>${keepingWords.elsewhere}</p>
      <button type="button" @click=${() => this.app.takeTheirs(keepingWords.theirsStep)}>${keepingWords.theirs}</button>
      <button type="button" @click=${() => this.app.keeping.keepMine()}>${keepingWords.mine}</button>
    </div>`;
  }

  #aside({ text, holds }: Aside): TemplateResult {
    const name = holds.ok ? holds.design.name : keepingWords.asideFile;
    return html`<div class="notice" role="status">
      ${holds.ok ? html`<p>${keepingWords.aside(name)}</p>` : html`<p class="fault">${keepingWords.unread}</p>${complaintList(holds.complaints)}`}
      ${
        holds.ok
          ? html`<button type="button" @click=${() => this.app.openAside(words.labels.opened(name))}>${keepingWords.open}</button>`
          : ''
      }
      <button type="button" @click=${() => offerFile(name, 'json', 'application/json', text)}>${keepingWords.saveAside}</button>
      <button type="button" @click=${() => this.app.keeping.letGo()}>${keepingWords.letGo}</button>
    </div>`;
  }

  /** In a lesson the maker's own, which is not the one on the bench. */
  readonly #save = (): void => {
    const { own } = this.app.design;
    offerFile(own.name, 'json', 'application/json', this.app.fileText(own));
  };
}

customElements.define('keeping-note', KeepingNote);

declare global {
  interface HTMLElementTagNameMap {
    'keeping-note': KeepingNote;
  }
}
