/** `<class-link>`: the lesson for the pupils' devices: link and code, or why there is none and what to do instead. */
import { css, html, type TemplateResult } from 'lit';
import { lessonLink, SOUNDS_BY_LINK, type SoundByLink } from '../../app/address.ts';
import { type HandOver, handOver, hostedAddress } from '../../app/hand-over.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Session } from '../../app/session.ts';
import { LESSONS } from '../../lesson/lessons.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import { choicesOf } from '../controls/choices.ts';
import type { ChooseDetail } from '../controls/events.ts';
import { fieldStyles, listRow } from '../fields.ts';
import '../plots/qr-code.ts';
import { oneFileLink } from '../one-file.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { classStyles } from './class-styles.ts';
import { PAGE, wordsOf } from './lesson-words.ts';

export class ClassLink extends AppElement {
  static override properties = {
    ...AppElement.properties,
    lesson: { state: true },
    sound: { state: true },
    said: { state: true },
    refused: { state: true },
  };
  static override styles = [
    common,
    fieldStyles,
    classStyles,
    css`
      .fields {
        display: grid;
        gap: 6px;
        margin-bottom: 10px;
        --label-width: 7em;
      }
      .hosted {
        display: grid;
        gap: 2px;
        margin-top: 10px;
        font-size: var(--text-control);
      }
      .hosted input {
        width: 100%;
      }
      code {
        display: block;
        margin: 4px 0 8px;
        padding: 6px 10px;
        background: var(--sunken);
        font-size: var(--text-control);
        overflow-wrap: anywhere;
      }
      qr-code {
        max-width: 17rem;
        margin: 8px 0;
      }
    `,
  ];

  /** '' = the list of lessons. */
  declare lesson: string;
  declare sound: SoundByLink;
  declare said: string;
  /** What was typed and is no address. */
  declare refused: string | null;
  #session!: Selected<Session, Session>;

  constructor() {
    super();
    this.lesson = LESSONS[0]?.id ?? '';
    this.sound = 'muted';
    this.said = '';
    this.refused = null;
  }

  protected override bind(app: Lampnote): void {
    this.#session = new Selected(this, app.session, (session) => session);
  }

  protected override render(): TemplateResult {
    const { language, hosted } = this.#session.value;
    const { handOver: says } = PAGE[language];
    const over = handOver(location.href, hosted);
    const lessons = LESSONS.map((lesson) => [lesson.id, wordsOf(lesson, language).title]);
    return html`<div class="fields">
        ${listRow(says.lesson, [...lessons, ['', says.anyLesson]], this.lesson, (id) => {
          this.lesson = id;
          this.said = '';
        })}
        <choice-row
          legend=${says.sound}
          .choices=${choicesOf(Object.fromEntries(SOUNDS_BY_LINK.map((sound) => [sound, says.sounds[sound]])))}
          value=${this.sound}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) => {
            this.sound = detail.value as SoundByLink;
            this.said = '';
          }}
        ></choice-row>
        <p class="small">${says.soundHint}</p>
      </div>
      ${over.kind === 'address' ? this.#link(over.address) : this.#none(over)}
      <label class="hosted">
        ${says.hosted}
        <input
          type="text"
          inputmode="url"
          autocomplete="off"
          spellcheck="false"
          .value=${this.refused ?? hosted}
          aria-describedby="hosted-hint"
          aria-invalid=${this.refused === null ? 'false' : 'true'}
          @change=${this.#host}
        />
      </label>
      <p id="hosted-hint" class="small">${says.hostedHint}</p>
      <div aria-live="polite">${this.refused === null ? '' : html`<p class="fault">${says.hostedWrong(this.refused)}</p>`}</div>`;
  }

  #link(address: string): TemplateResult {
    const { language } = this.#session.value;
    const { handOver: says } = PAGE[language];
    const link = `${address}${lessonLink(this.lesson === '' ? null : this.lesson, this.sound, language)}`;
    const file = oneFileLink();
    return html`<p>${says.text}</p>
      <qr-code .text=${link} label=${says.code}></qr-code>
      <span class="small">${says.link}</span><code>${link}</code>
      <button type="button" @click=${() => this.#copy(link)}>${says.copy}</button>
      <p class="small" role="status">${this.said}</p>
      ${file === '' ? '' : html`<p>${says.alsoOneFile} ${file}</p>`}`;
  }

  #none({ why }: Extract<HandOver, { kind: 'none' }>): TemplateResult {
    const { handOver: says } = PAGE[this.#session.value.language];
    return html`<p><strong>${says.why[why]}</strong></p>
      ${window.isSecureContext ? '' : html`<p>${says.insecure}</p>`}
      <p>${says.oneFile} ${oneFileLink()}</p>`;
  }

  async #copy(link: string): Promise<void> {
    const { handOver: says } = PAGE[this.#session.value.language];
    const copied = await navigator.clipboard?.writeText(link).then(
      () => true,
      () => false,
    );
    this.said = copied ? says.copied : says.cannotCopy;
  }

  readonly #host = (event: Event): void => {
    const text = (event.currentTarget as HTMLInputElement).value.trim();
    const address = hostedAddress(text);
    this.refused = address === null && text !== '' ? text : null;
    if (this.refused === null) this.app.setSession({ hosted: address ?? '' });
  };
}

customElements.define('class-link', ClassLink);

declare global {
  interface HTMLElementTagNameMap {
    'class-link': ClassLink;
  }
}
