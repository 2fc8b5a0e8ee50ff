/** `<card-panel>`: the numbered card for the day. Printed, it stands alone on the page, with the design's name. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { type RoomDesk, type RoomView, roomDeskOf } from '../../app/room-desk.ts';
import type { Design } from '../../design/design.ts';
import type { RoomAnswer } from '../../plan/room-answer.ts';
import { isAlikeAllDay } from '../../plan/window.ts';
import { formatDay } from '../../quantity/format.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { roomWords } from '../../words/room.ts';
import { AppElement } from '../app-element.ts';
import type { CommitDetail } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { hourReader, hourText } from './readers.ts';
import { innerStyles } from './room-styles.ts';

const words = answerWords.card;

export class CardPanel extends AppElement {
  static override styles = [
    common,
    panelStyles,
    innerStyles,
    css`
      .for {
        margin: 0 0 2px;
        font-family: var(--font-head);
        font-style: italic;
      }
      ol {
        margin: 8px 0;
        padding-left: 26px;
      }
      li {
        margin-bottom: 7px;
        padding-left: 4px;
      }
      li::marker {
        font-weight: 650;
      }
      .printed {
        display: none;
      }
      quantity-field {
        --label-width: 5em;
        --field-width: 5.4em;
      }
      @media print {
        quantity-field {
          display: none;
        }
        .printed {
          display: block;
        }
        h2 {
          font-size: 20pt;
        }
        .for {
          font-size: 14pt;
        }
        ol {
          padding-left: 9mm;
          font-size: 12pt;
        }
        li {
          margin-bottom: 4mm;
          break-inside: avoid;
        }
      }
    `,
  ];

  #desk!: RoomDesk;
  #design!: Selected<Design, Design>;
  #answer!: Selected<RoomAnswer | null, RoomAnswer | null>;
  #settingUp!: Selected<RoomView, RoomView['settingUp']>;

  protected override bind(app: Lampnote): void {
    this.#desk = roomDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#answer = new Selected(this, this.#desk.answer, (answer) => answer);
    this.#settingUp = new Selected(this, this.#desk.view, (view) => view.settingUp);
  }

  protected override render(): TemplateResult {
    const { name, room } = this.#design.value;
    const answer = this.#answer.value;
    const date = room.daylight === null ? null : answerWords.date(room.daylight.date);
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      <p class="for">${words.for(name)}</p>
      <p class="small">
        ${words.on(date, room.opens, room.closes)}
        <span class="printed">${words.printed(today())}</span>
      </p>
      ${answer === null ? html`<p class="muted">${words.empty}</p>` : this.#steps(answer, room.opens)}
    </section>`;
  }

  #steps(answer: RoomAnswer, opens: number): TemplateResult {
    return html`<div class="row">
        ${
          // Where no hour differs, none is asked for.
          isAlikeAllDay(answer.extremes)
            ? ''
            : html`<quantity-field
                label=${words.at}
                .value=${this.#settingUp.value ?? opens}
                .format=${hourText}
                .parse=${hourReader}
                @commit=${({ detail }: CustomEvent<CommitDetail>) => this.#desk.show({ settingUp: detail.value })}
              ></quantity-field>`
        }
        <button type="button" @click=${() => globalThis.print()}>${words.print}</button>
      </div>
      <p class="small">${words.tools}</p>
      <ol>
        ${answer.card.map((step) => html`<li>${roomWords.step(step)}</li>`)}
      </ol>
      ${answer.complaints.length > 0 ? html`<p class="small printed">${answer.complaints.map((one) => roomWords.complaint(one)).join(' ')}</p>` : ''}`;
  }
}

const today = (): string => formatDay(new Date());

customElements.define('card-panel', CardPanel);

declare global {
  interface HTMLElementTagNameMap {
    'card-panel': CardPanel;
  }
}
