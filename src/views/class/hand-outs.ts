/** `<hand-outs>`: work sheets by pupil number and their answers, shown here and printed by themselves. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Session } from '../../app/session.ts';
import { wordSeed } from '../../lesson/class-word.ts';
import { LESSON_DESIGN } from '../../lesson/lessons.ts';
import { type Worksheet, worksheetOf } from '../../lesson/worksheet.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import { choicesOf } from '../controls/choices.ts';
import type { ChooseDetail, CommitDetail } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { reader } from '../edits.ts';
import { printOnly } from '../print-only.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { classStyles } from './class-styles.ts';
import { PAGE } from './lesson-words.ts';
import { answerSheet, pupilSheet, type SheetOf, sheetLink } from './sheets.ts';

/** A class has at most so many pupils. */
const MOST = { first: 999, sheets: 40 } as const;
const read = {
  first: reader('number', { min: 1, max: MOST.first }),
  sheets: reader('number', { min: 1, max: MOST.sheets }),
};

/** A word, not a sentence. */
const LONGEST_WORD = 40;
const sheetOf = (number: number, word: string): Worksheet =>
  worksheetOf(number, wordSeed(word), LESSON_DESIGN);

type Kind = 'sheets' | 'answers' | 'both';

export class HandOuts extends AppElement {
  static override properties = {
    ...AppElement.properties,
    first: { state: true },
    sheets: { state: true },
    kind: { state: true },
    size: { state: true },
  };
  static override styles = [
    common,
    classStyles,
    css`
      .fields {
        display: grid;
        gap: 6px;
        margin-bottom: 10px;
        --label-width: 10em;
        --field-width: 5em;
      }
      choice-row {
        --label-width: 4em;
      }
      .word {
        display: grid;
        grid-template-columns: var(--label-width) minmax(0, 12em);
        align-items: center;
        column-gap: var(--unit);
        font-size: var(--text-control);
      }
      .fields .small {
        margin: 0;
      }
      qr-code {
        width: 5em;
      }
      .sheet {
        margin-top: 10px;
        padding: 14px 20px;
        border: 1px solid var(--hair);
        background: var(--surface);
      }
      .sheet h1 {
        font-size: var(--text-head);
      }
      .sheet li {
        margin-bottom: 6px;
      }
      .large {
        font-size: 1.5em;
      }
      .line {
        display: block;
        height: 1.6em;
        border-bottom: 1px solid var(--hair);
      }
    `,
  ];

  declare first: number;
  declare sheets: number;
  declare kind: Kind;
  declare size: 'plain' | 'large';
  #session!: Selected<Session, Session>;

  constructor() {
    super();
    this.first = 1;
    this.sheets = 10;
    this.kind = 'both';
    this.size = 'plain';
  }

  protected override bind(app: Lampnote): void {
    this.#session = new Selected(this, app.session, (session) => session);
  }

  protected override render(): TemplateResult {
    const { language, classWord } = this.#session.value;
    const { sheets: says } = PAGE[language];
    return html`<p>${says.text}</p>
      <div class="fields">
        <label class="word">
          <span>${says.word}</span>
          <input
            type="text"
            autocomplete="off"
            maxlength=${LONGEST_WORD}
            aria-describedby="word-hint"
            .value=${classWord}
            @change=${(event: Event) =>
              this.app.setSession({ classWord: (event.currentTarget as HTMLInputElement).value.trim() })}
          />
        </label>
        <p id="word-hint" class="small">${says.wordHint}</p>
        ${this.#number(says.from, this.first, read.first, (value) => {
          this.first = value;
        })}
        ${this.#number(says.count, this.sheets, read.sheets, (value) => {
          this.sheets = value;
        })}
        <choice-row
          legend=${says.kind}
          .choices=${choicesOf(says.kinds)}
          value=${this.kind}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) => {
            this.kind = detail.value as Kind;
          }}
        ></choice-row>
        <choice-row
          legend=${says.size}
          .choices=${choicesOf(says.sizes)}
          value=${this.size}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) => {
            this.size = detail.value as 'plain' | 'large';
          }}
        ></choice-row>
      </div>
      <button type="button" class="primary" @click=${this.#print}>${says.print}</button>
      <details>
        <summary>${says.preview(this.first)}</summary>
        <div class=${this.size}>${this.#sheetsOf(sheetOf(this.first, classWord), this.#of)}</div>
      </details>`;
  }

  #number(
    label: string,
    value: number,
    parse: ReturnType<typeof reader>,
    commit: (value: number) => void,
  ): TemplateResult {
    return html`<quantity-field
      label=${label}
      .value=${value}
      .parse=${parse}
      @commit=${({ detail }: CustomEvent<CommitDetail>) => commit(Math.round(detail.value))}
    ></quantity-field>`;
  }

  get #of(): SheetOf {
    const { language, classWord: word, hosted } = this.#session.value;
    return { language, word, link: sheetLink(hosted, language) };
  }

  #sheetsOf(sheet: Worksheet, of: SheetOf): TemplateResult {
    return html`${this.kind === 'answers' ? '' : pupilSheet(sheet, of)}
      ${this.kind === 'sheets' ? '' : answerSheet(sheet, of)}`;
  }

  readonly #print = (): void => {
    const of = this.#of;
    const all = Array.from({ length: this.sheets }, (_, i) => sheetOf(this.first + i, of.word));
    const pupils = this.kind === 'answers' ? [] : all.map((sheet) => pupilSheet(sheet, of));
    const answers = this.kind === 'sheets' ? [] : all.map((sheet) => answerSheet(sheet, of));
    void printOnly(html`${pupils}${answers}`, this.size);
  };
}

customElements.define('hand-outs', HandOuts);

declare global {
  interface HTMLElementTagNameMap {
    'hand-outs': HandOuts;
  }
}
