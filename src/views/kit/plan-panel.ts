/** `<plan-panel>`: the board plan from both sides, its joints one by one, its lists; or why there is none. */
import { css, html, type TemplateResult } from 'lit';
import { type KitDesk, type KitView, kitDeskOf, type Worked } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Look, Session } from '../../app/session.ts';
import { LIES } from '../../design/batch.ts';
import { inBatch, keepFree, wishBoard } from '../../design/batch-commands.ts';
import type { Design } from '../../design/design.ts';
import { PITCH_MILLIMETRES } from '../../kit/board/bodies.ts';
import { BOARD_SIZES, type BoardPlan, holeName, holeNamed } from '../../kit/board/plan.ts';
import { type Change, type Planned, type Refusal, USUAL_WISHES } from '../../kit/board/plan-board.ts';
import { jointsOf } from '../../kit/joints.ts';
import { kitViewWords, millimetres } from '../../words/en-kit.ts';
import { netOrPart, partName } from '../../words/kit.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import { choicesOf } from '../controls/choices.ts';
import type { ChooseDetail } from '../controls/events.ts';
import { fieldStyles, listRow } from '../fields.ts';
import '../plots/board-picture.ts';
import type { Standing } from '../plots/board-picture.ts';
import { fitFor, keyOf } from '../plots/board-shapes.ts';
import { Sheet } from '../plots/sheet.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { boardLists } from './board-lists.ts';
import { boardPrint, boardPrintStyles } from './board-print.ts';
import { boardText } from './board-text.ts';
import { kitStyles } from './kit-styles.ts';
import { jointWords } from './part-words.ts';
import { sheetHeadStyles } from './sheet-head.ts';
import { workFailed } from './work-failed.ts';

const words = kitViewWords.board;
const FIT = 'fit';
/** Searches of who has the time. */
const LONGER = 4 * USUAL_WISHES.effort;

export class PlanPanel extends AppElement {
  static override properties = { ...AppElement.properties, link: { type: String }, problem: { state: true } };
  static override styles = [
    common,
    fieldStyles,
    kitStyles,
    sheetHeadStyles,
    boardPrintStyles,
    css`
      :host {
        min-width: 0;
      }
      .picture {
        overflow-x: auto;
        margin: 6px 0;
      }
      .steps {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 14px;
        font-size: var(--text-control);
      }
      .steps input {
        flex: 1 1 14em;
        max-width: 30em;
        min-height: 24px;
        accent-color: var(--accent);
      }
      .steps output {
        flex: 1 1 20em;
      }
      .free input {
        margin-inline-start: 6px;
        width: 6em;
      }
      .free label {
        font-size: var(--text-control);
      }
      .refusal {
        padding-left: 12px;
        border-left: var(--stroke-data) solid var(--fault);
      }
      @media print {
        .title,
        .figure-words,
        .steps,
        .picture {
          display: none;
        }
      }
    `,
  ];

  /** The whole address that opens this design. */
  declare link: string;
  declare problem: string;
  #desk!: KitDesk;
  #design!: Selected<Design, Design>;
  #view!: Selected<KitView, KitView>;
  #board!: Selected<Worked<Planned>, Worked<Planned>>;
  #look!: Selected<Session, Look>;
  readonly #sheet = new Sheet(this);

  constructor() {
    super();
    this.link = '';
    this.problem = '';
  }

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
    const { side } = this.#view.value;
    const { last: planned, isWorking, hasFailed } = this.#board.value;
    return html`<section aria-labelledby="board">
      <div class="title">
        <h2 id="board">${words.heading[side]}</h2>
        <choice-row
          class="screen"
          legend=${words.side}
          legend-hidden
          .choices=${choicesOf(words.sides)}
          value=${side}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) =>
            this.#desk.show({ side: detail.value as KitView['side'] })}
        ></choice-row>
        <choice-row
          class="screen"
          legend=${words.only}
          legend-hidden
          .choices=${choicesOf(words.onlys)}
          value=${this.#view.value.only}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) =>
            this.#desk.show({ only: detail.value as KitView['only'] })}
        ></choice-row>
      </div>
      ${this.#options()}
      <p class="muted screen" role="status">
        ${isWorking ? (planned === null ? words.planning : words.replanning) : ''}
      </p>
      ${hasFailed ? workFailed(() => this.#desk.again('board')) : ''}
      ${planned === null ? '' : planned.ok ? this.#plan(planned.plan) : this.#refusal(planned.refusal)}
    </section>`;
  }

  #options(): TemplateResult {
    const { board } = this.#design.value.batch;
    const sizes = BOARD_SIZES.map(({ strips, holes }) => [
      `${strips}x${holes}`,
      words.sizeName(strips, holes),
    ]);
    const chosen = board.size === null ? FIT : `${board.size.strips}x${board.size.holes}`;
    const own =
      sizes.some(([id]) => id === chosen) || chosen === FIT
        ? []
        : [[chosen, words.sizeName(board.size!.strips, board.size!.holes)]];
    return html`<div class="tools">
        ${listRow(words.options, [[FIT, words.fit], ...sizes, ...own], chosen, (value) => {
          const size = BOARD_SIZES.find(({ strips, holes }) => `${strips}x${holes}` === value) ?? null;
          this.#change(words.size, inBatch(wishBoard({ size })));
        })}
        ${listRow(
          words.resistors,
          choicesOf(words.lies).map(({ value, label }) => [value, label]),
          board.resistors,
          (value) =>
            this.#change(
              words.resistors,
              inBatch(wishBoard({ resistors: LIES.find((lie) => lie === value) ?? 'as they fit' })),
            ),
        )}
        <form class="free" @submit=${this.#keep}>
          <label
            >${words.free}
            <input
              id="free"
              type="text"
              autocomplete="off"
              spellcheck="false"
              aria-invalid=${this.problem ? 'true' : 'false'}
              aria-describedby="free-hint free-bad"
          /></label>
        </form>
        <button type="button" @click=${() => window.print()}>${kitViewWords.print}</button>
      </div>
      <p id="free-hint" class="small screen">${words.freeHint}</p>
      <p id="free-bad" class="fault small screen" aria-live="polite">${this.problem}</p>
      ${
        board.free.length === 0
          ? ''
          : html`<p class="screen">
              ${words.kept}
              ${board.free.map(
                (hole) =>
                  html`<button type="button" @click=${() => this.#change(holeName(hole), inBatch(keepFree(hole, false)))}>
                    ${words.giveBack(holeName(hole))}
                  </button> `,
              )}
            </p>`
      }`;
  }

  #plan(plan: BoardPlan): TemplateResult {
    const { side, only, joint } = this.#view.value;
    const joints = jointsOf(plan);
    const here = joints[Math.min(joint, joints.length - 1)]!;
    const text = words.jointText(joints.indexOf(here) + 1, joints.length, jointWords(here));
    const size = boardText(this.#look.value, this.#sheet.fontSize);
    const fit = fitFor(plan, this.#sheet.width, size);
    const { strips, holes } = plan.board;
    return html`<div class="steps screen">
        <label for="joint">${words.joint}</label>
        <input
          id="joint"
          type="range"
          min="1"
          max=${joints.length}
          .value=${String(joints.indexOf(here) + 1)}
          aria-valuetext=${text}
          aria-describedby="joint-hint"
          @input=${(event: Event) => this.#desk.show({ joint: Number((event.currentTarget as HTMLInputElement).value) - 1 })}
        />
        <output for="joint">${text}</output>
      </div>
      <p id="joint-hint" class="visually-hidden">${words.jointHint}</p>
      <div class="picture" tabindex="0" role="group" aria-label=${words.pictureLabel[side]}>
        <board-picture
          .plan=${plan}
          side=${side}
          .pitch=${fit.pitch}
          .textSize=${fit.textSize}
          label=${words.pictureLabel[side]}
          .standing=${standingOf(plan, only)}
          .at=${here.at}
          .numbers=${numbersOf(plan)}
        ></board-picture>
      </div>
      <p class="small figure-words">
        ${words.figure(
          strips,
          holes,
          plan.cuts.length,
          plan.links.length,
          millimetres(Math.round(strips * PITCH_MILLIMETRES)),
          millimetres(Math.round(holes * PITCH_MILLIMETRES)),
        )}
      </p>
      ${
        this.#desk.effort >= LONGER
          ? ''
          : html`<p class="screen">
              <button type="button" class="quiet" @click=${() => this.#desk.tryHarder(this.#design.value, LONGER)}>
                ${words.longer}
              </button>
            </p>`
      }
      ${boardPrint(plan, numbersOf(plan), this.#design.value.name, this.link)} ${boardLists(plan)}`;
  }

  #refusal(refusal: Refusal): TemplateResult {
    const change = 'change' in refusal ? refusal.change : null;
    return html`<div class="refusal" role="alert">
      <h3>${kitViewWords.refusal.heading}</h3>
      <p>${refusalWords(refusal)}</p>
      ${change === null ? '' : this.#remedy(change)}
    </div>`;
  }

  #remedy(change: Change): TemplateResult {
    const { change: says, take } = kitViewWords.refusal;
    switch (change.kind) {
      case 'board':
        return html`<p>${says.board(words.sizeName(change.size.strips, change.size.holes))}</p>
          <p>
            <button type="button" class="primary" @click=${() => this.#change(words.size, inBatch(wishBoard({ size: change.size })))}>
              ${take.board}
            </button>
          </p>`;
      case 'capacitor':
        return html`<p>${says.capacitor(partName(change.ref), change.to)}</p>`;
      case 'free hole':
        return html`<p>${says['free hole'](holeName(change.hole))}</p>
          <p>
            <button type="button" class="primary" @click=${() => this.#change(holeName(change.hole), inBatch(keepFree(change.hole, false)))}>
              ${take['free hole']}
            </button>
          </p>`;
      case 'effort':
        return html`<p>${says.effort}</p>
          <p>
            <button type="button" class="primary" @click=${() => this.#desk.tryHarder(this.#design.value, change.effort)}>
              ${take.effort}
            </button>
          </p>`;
    }
  }

  #change(what: string, command: ReturnType<typeof inBatch>): void {
    this.app.change(words.step(what), command);
  }

  readonly #keep = (event: Event): void => {
    event.preventDefault();
    const box = this.renderRoot.querySelector<HTMLInputElement>('#free')!;
    const hole = holeNamed(box.value);
    const { last: planned } = this.#board.value;
    const board = this.#design.value.batch.board.size ?? (planned?.ok ? planned.plan.board : null);
    if (hole === null || (board !== null && (hole.strip > board.strips || hole.hole > board.holes))) {
      this.problem = words.freeBad(box.value.trim());
      return;
    }
    this.problem = '';
    box.value = '';
    this.#change(holeName(hole), inBatch(keepFree(hole, true)));
  };
}

const NONE: ReadonlySet<string> = new Set();

function standingOf(plan: BoardPlan, only: KitView['only']): Standing | null {
  if (only === 'all') return null;
  return {
    cuts: only === 'cuts',
    links: only === 'links' ? new Set(plan.links.map(({ id }) => id)) : NONE,
    parts: only === 'parts' ? new Set(plan.parts.map(({ part }) => part.ref)) : NONE,
    hidden: null,
  };
}

const numbered = new WeakMap<BoardPlan, ReadonlyMap<string, number>>();

/** The number of each joint in the order it is soldered, by its hole. */
function numbersOf(plan: BoardPlan): ReadonlyMap<string, number> {
  const known = numbered.get(plan) ?? new Map(jointsOf(plan).map(({ at, number }) => [keyOf(at), number]));
  numbered.set(plan, known);
  return known;
}

function refusalWords(refusal: Refusal): string {
  const { refusal: says } = kitViewWords;
  switch (refusal.kind) {
    case 'part missing':
      return says['part missing'](partName(refusal.ref));
    case 'board too small':
      return says['board too small'](
        words.sizeName(refusal.needs.strips, refusal.needs.holes),
        words.sizeName(refusal.has.strips, refusal.has.holes),
      );
    case 'in the way':
      return says['in the way'](partName(refusal.ref));
    case 'net impossible':
      return says['net impossible'](refusal.names.map(netOrPart).join(', '));
    case 'not proved':
      return says['not proved'];
  }
}

customElements.define('plan-panel', PlanPanel);

declare global {
  interface HTMLElementTagNameMap {
    'plan-panel': PlanPanel;
  }
}
