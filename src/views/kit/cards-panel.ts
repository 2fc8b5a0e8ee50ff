/** `<cards-panel>`: the build step by step on the screen, all cards on paper, and what a workshop of them takes. */
import { css, html, type TemplateResult } from 'lit';
import { type KitDesk, type KitView, kitDeskOf, type Worked } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Look, Session } from '../../app/session.ts';
import type { Design } from '../../design/design.ts';
import type { BoardPlan } from '../../kit/board/plan.ts';
import type { Planned } from '../../kit/board/plan-board.ts';
import { type Card, cardsOf } from '../../kit/cards.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import { choicesOf } from '../controls/choices.ts';
import type { ChooseDetail } from '../controls/events.ts';
import { fieldStyles, listRow } from '../fields.ts';
import '../plots/board-picture.ts';
import { fitFor, pitchOnPaper } from '../plots/board-shapes.ts';
import { Sheet } from '../plots/sheet.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { boardText } from './board-text.ts';
import { cardNeeds, cardStyles, cardText, isNewCaution, standingAt } from './card-view.ts';
import { kitStyles } from './kit-styles.ts';
import { resistorStyles } from './resistor-picture.ts';
import { workFailed } from './work-failed.ts';
import './workshop-panel.ts';

const words = kitViewWords.cards;
/** Each of the two pictures of a printed card, and its texts, mm. */
const PAPER = { width: 90, text: 2.2 } as const;

export class CardsPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    kitStyles,
    cardStyles,
    resistorStyles,
    css`
      .card {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 17em);
        gap: 14px 26px;
        align-items: start;
      }
      .picture {
        overflow-x: auto;
      }
      .card .text {
        grid-column: 2;
        grid-row: 1 / span 2;
      }
      .needs {
        min-width: 0;
      }
      .buttons {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin: 8px 0;
      }
      .text h3 {
        margin-top: 0;
        font-size: var(--text-head);
      }
      @media (max-width: 62.5em) {
        .card {
          grid-template-columns: minmax(0, 1fr);
        }
        .card .text {
          grid-column: 1;
          grid-row: 1;
        }
      }
      .projector .card {
        grid-template-columns: minmax(0, 1fr);
      }
      .projector .card .text {
        grid-column: 1;
        grid-row: 1;
      }
      .paper-cards {
        display: none;
      }
      @media print {
        .card,
        workshop-panel {
          display: none;
        }
        .paper-cards {
          display: block;
          font-size: 9.5pt;
        }
        .paper-card {
          break-inside: avoid;
          padding: 3mm 0;
          border-bottom: 0.3mm solid var(--hair);
        }
        .paper-card h3 {
          margin: 0 0 1mm;
        }
        .paper-card p {
          margin: 0 0 1mm;
          max-width: none;
        }
        .pair {
          display: flex;
          justify-content: space-between;
        }
      }
    `,
  ];

  #desk!: KitDesk;
  #design!: Selected<Design, Design>;
  #view!: Selected<KitView, KitView>;
  #board!: Selected<Worked<Planned>, Worked<Planned>>;
  #look!: Selected<Session, Look>;
  readonly #sheet = new Sheet(this);

  protected override bind(app: Lampnote): void {
    this.#desk = kitDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
    this.#board = new Selected(this, this.#desk.board, (board) => board);
    this.#look = new Selected(this, app.session, (session) => session.look);
  }

  protected override updated(): void {
    this.#desk.follow(this.#design.value);
  }

  protected override render(): TemplateResult {
    const { last: planned, isWorking, hasFailed } = this.#board.value;
    return html`<section class=${this.#look.value} aria-labelledby="cards">
      <div class="title"><h2 id="cards">${words.heading}</h2></div>
      ${hasFailed ? workFailed(() => this.#desk.again('board')) : ''}
      ${
        planned?.ok
          ? this.#cards(planned.plan)
          : html`<p class="muted" role="status">${isWorking ? words.waiting : planned === null ? '' : words.none}</p>`
      }
    </section>`;
  }

  #cards(plan: BoardPlan): TemplateResult {
    const { step, side } = this.#view.value;
    const cards = cardsOf(this.#design.value, plan);
    const place = Math.min(step, cards.length - 1);
    const card = cards[place]!;
    return html`<div class="tools">
        ${listRow(
          words.choose,
          cards.map(({ id }, i) => [String(i), words.step(i + 1, words.titles[id])]),
          String(place),
          (value) => this.#desk.show({ step: Number(value) }),
        )}
        <choice-row
          legend=${kitViewWords.board.side}
          legend-hidden
          .choices=${choicesOf(kitViewWords.board.sides)}
          value=${side}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) =>
            this.#desk.show({ side: detail.value as KitView['side'] })}
        ></choice-row>
        <button type="button" @click=${() => window.print()}>${kitViewWords.print}</button>
      </div>
      <div class="card">
        ${this.#picture(plan, cards, place, side)}
        <div class="text">
          <p class="why">${words.of(place + 1, cards.length)}</p>
          <h3 aria-live="polite">${words.titles[card.id]}</h3>
          <div class="buttons">
            <button type="button" ?disabled=${place === 0} @click=${() => this.#desk.show({ step: place - 1 })}>
              ${words.back}
            </button>
            <button
              type="button"
              class="primary"
              @click=${() => this.#desk.show({ step: (place + 1) % cards.length })}
            >
              ${place === cards.length - 1 ? words.again : words.next}
            </button>
          </div>
          ${cardText(card)}
        </div>
        <div class="needs">${cardNeeds(card, plan)}</div>
      </div>
      <workshop-panel .app=${this.app} .cards=${cards}></workshop-panel>
      ${this.#paper(plan, cards)}`;
  }

  #picture(plan: BoardPlan, cards: readonly Card[], place: number, side: KitView['side']): TemplateResult {
    const isProjected = this.#look.value === 'projector';
    const size = boardText(this.#look.value, this.#sheet.fontSize);
    // Beside the picture stands the text, where there is room for both.
    const width =
      isProjected || this.#sheet.width < 800 ? this.#sheet.width : this.#sheet.width - 17 * 16 - 26;
    const fit = fitFor(plan, width, size);
    return html`<div class="picture" tabindex="0" role="group" aria-label=${kitViewWords.board.pictureLabel[side]}>
      <board-picture
        .plan=${plan}
        side=${side}
        .pitch=${fit.pitch}
        .textSize=${fit.textSize}
        .standing=${standingAt(cards, place)}
        label=${kitViewWords.board.pictureLabel[side]}
      ></board-picture>
    </div>`;
  }

  #paper(plan: BoardPlan, cards: readonly Card[]): TemplateResult {
    const pitch = pitchOnPaper(plan, PAPER.width, PAPER.text);
    return html`<div class="paper-cards">
      ${cards.map((card, place) => {
        const hasPicture = card.id !== 'sort' && card.id !== 'tune';
        return html`<div class="paper-card">
          <h3>${words.step(place + 1, words.titles[card.id])}</h3>
          ${cardText(card, isNewCaution(cards, place))} ${cardNeeds(card, plan)}
          ${
            hasPicture
              ? html`<div class="pair">
                  ${(['component', 'copper'] as const).map(
                    (side) =>
                      html`<board-picture
                        .plan=${plan}
                        side=${side}
                        unit="mm"
                        .pitch=${pitch}
                        .textSize=${PAPER.text}
                        .standing=${standingAt(cards, place)}
                        label=${kitViewWords.board.pictureLabel[side]}
                      ></board-picture>`,
                  )}
                </div>`
              : ''
          }
        </div>`;
      })}
    </div>`;
  }
}

customElements.define('cards-panel', CardsPanel);

declare global {
  interface HTMLElementTagNameMap {
    'cards-panel': CardsPanel;
  }
}
