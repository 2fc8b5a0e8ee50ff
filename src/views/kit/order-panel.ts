/** `<order-panel>`: what to buy for a number of kits, with the organiser's own rates, stock, packs and prices. */
import { css, html, type TemplateResult } from 'lit';
import { memoized } from '../../app/derived.ts';
import { type KitDesk, kitDeskOf, planNow, type Worked } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { BATCH_LIMITS, LOSS_KINDS } from '../../design/batch.ts';
import { inBatch, noteLine, setBatch, setLoss, wishBoard } from '../../design/batch-commands.ts';
import type { Design } from '../../design/design.ts';
import type { BoardPlan } from '../../kit/board/plan.ts';
import type { Planned } from '../../kit/board/plan-board.ts';
import { bandsOf, capacitorCode } from '../../kit/codes.ts';
import { type OrderLine, orderOf } from '../../kit/order.ts';
import { orderCsv } from '../../kit/order-table.ts';
import { WIRE_RULE } from '../../kit/wire.ts';
import { formatFixed, formatNumber, formatShare } from '../../quantity/format.ts';
import { useWords } from '../../words/bench.ts';
import { kitViewWords, millimetres } from '../../words/en-kit.ts';
import { effectWords, lineWords, type OrderSpec, orderWords, type Region } from '../../words/order.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import type { CommitDetail, ReadText } from '../controls/events.ts';
import { reader } from '../edits.ts';
import { Fields, fieldStyles } from '../fields.ts';
import { offerFile } from '../files.ts';
import { wholeField, wholeReader } from '../pitch/readers.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { kitStyles } from './kit-styles.ts';
import './part-check.ts';
import { resistorStyles, resistorWithWords } from './resistor-picture.ts';

const words = kitViewWords.order;
const orders = memoized((design: Design) =>
  memoized((plan: BoardPlan | null) => orderOf(design, design.batch, plan)),
);

const read = {
  kits: wholeReader(BATCH_LIMITS.kits),
  loss: reader('share', BATCH_LIMITS.loss),
  stock: wholeReader(BATCH_LIMITS.pieces),
  pack: wholeReader(BATCH_LIMITS.packSize),
  price: reader('number', BATCH_LIMITS.price),
};
/** An emptied box takes the price away. */
const readPrice: ReadText = (text) => (text.trim() === '' ? { ok: true, value: -1 } : read.price(text));
const shareText = (value: number | null): string =>
  value === null ? '' : formatShare(value, 1).replace(/[.,]0/, '');
const priceText = (value: number | null): string => (value === null ? '' : formatFixed(value, 2));
const dash = '–';

export class OrderPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    kitStyles,
    resistorStyles,
    css`
      .losses {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 13em), 1fr));
        gap: 4px 24px;
        margin: 6px 0;
        --label-width: 7.5em;
        --field-width: 5em;
      }
      table.order th[scope='row'] {
        min-width: 17em;
        font-weight: 400;
      }
      table.order td,
      table.order thead th {
        padding-right: 12px;
        vertical-align: top;
      }
      table.order thead th {
        min-width: 0;
        font-size: var(--text-small);
        font-weight: 600;
        vertical-align: bottom;
      }
      table.order td.box {
        padding-top: 0;
      }
      table.order td.box {
        --field-width: 4.6em;
      }
      .name {
        margin: 0;
        font-size: var(--text-control);
        font-weight: 600;
      }
      .notes {
        margin: 1px 0 0;
        max-width: 60ch;
        color: var(--muted);
        font-size: var(--text-small);
      }
      .bands {
        display: block;
        font-size: var(--text-small);
      }
      .sum {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 24px;
        margin: 12px 0;
        font-weight: 600;
      }
      .figure {
        font-size: var(--text-control);
      }
      .buy {
        font-weight: 600;
      }
      ul {
        margin: 2px 0 6px;
        padding-left: 18px;
      }
      .paper {
        display: none;
      }
      @media print {
        .box quantity-field,
        details {
          display: none;
        }
        .paper {
          display: inline;
        }
        table.order td.box {
          padding-top: 3px;
        }
        table.order {
          font-size: 9pt;
        }
        table.order thead th {
          font-size: 8pt;
        }
        table.order td,
        table.order thead th {
          padding-right: 5px;
        }
        table.order th[scope='row'] {
          width: 54%;
        }
        .name,
        .figure {
          font-size: 9.5pt;
        }
        .notes,
        .bands {
          font-size: 8pt;
        }
        .notes {
          max-width: none;
        }
      }
    `,
  ];

  #desk!: KitDesk;
  #design!: Selected<Design, Design>;
  #board!: Selected<Worked<Planned>, Worked<Planned>>;
  #fields!: Fields;

  protected override bind(app: Lampnote): void {
    this.#desk = kitDeskOf(app);
    this.#board = new Selected(this, this.#desk.board, (board) => board);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#fields = new Fields(app, words.step);
  }

  protected override updated(): void {
    this.#desk.follow(this.#design.value);
  }

  protected override render(): TemplateResult {
    const design = this.#design.value;
    const { batch } = design;
    const plan = planNow(this.#board.value);
    const order = orders(design)(plan);
    return html`<section aria-labelledby="order">
      <div class="title"><h2 id="order">${words.heading(batch.kits)}</h2></div>
      <div class="tools">
        ${this.#fields.quantity({
          label: words.kits,
          value: batch.kits,
          read: read.kits,
          text: wholeField,
          command: (kits) => inBatch(setBatch({ kits })),
        })}
        ${this.#fields.list(words.region, words.regions, batch.region, (region) =>
          inBatch(setBatch({ region: region as Region })),
        )}
        ${this.#fields.tick(words.sockets, batch.board.sockets, (sockets) => inBatch(wishBoard({ sockets })))}
        <button type="button" class="primary" @click=${this.#save}>${words.csv}</button>
        <button type="button" @click=${() => window.print()}>${kitViewWords.print}</button>
      </div>
      <details class="screen">
        <summary>${words.losses}</summary>
        <p class="small">${words.lossHint}</p>
        <div class="losses">
          ${LOSS_KINDS.map((kind) =>
            this.#fields.quantity({
              label: orderWords.partLosses[kind],
              value: batch.losses[kind],
              read: read.loss,
              text: shareText,
              command: (share) => inBatch(setLoss(kind, share)),
            }),
          )}
        </div>
      </details>
      <p class="sum" role="status">
        <span>${words.basket(order.chance)}</span>
        <span>${order.cost === null ? words.noPrices : words.total(order.cost)}</span>
        ${order.cost !== null && order.unpriced > 0 ? html`<span>${words.unpriced(order.unpriced)}</span>` : ''}
      </p>
      <div class="scroll" tabindex="0" role="group" aria-label=${words.heading(batch.kits)}>
        <table class="order">
          <thead>
            <tr>
              ${words.heads.map((head, i) => html`<th scope="col" class=${i > 0 ? 'figure' : ''}>${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${order.lines.map((line) => this.#line(line))}
          </tbody>
        </table>
      </div>
      <p class="small">
        ${words.wire(millimetres(WIRE_RULE.linkEnds * 1000), millimetres(WIRE_RULE.lead * 1000), millimetres(WIRE_RULE.sleeve * 1000), WIRE_RULE.waste)}
      </p>
      ${plan === null ? html`<p class="small">${this.#board.value.isWorking ? words.plan.working : words.plan.none}</p>` : ''}
      <p class="small">${words.caption}</p>
    </section>`;
  }

  #line(line: OrderLine): TemplateResult {
    const { name, mustMatch, mayVary } = lineWords(line.spec);
    const amount = (count: number): string =>
      line.unit === 'metre' ? words.metres(count) : formatNumber(count, 6);
    const note = (change: Parameters<typeof noteLine>[1]) => inBatch(noteLine(line.key, change));
    return html`<tr>
      <th scope="row">
        <p class="name">${capitalised(name)}</p>
        ${markings(line.spec)}
        <p class="notes">
          ${words.used(useWords(line.uses))} ${words.match(mustMatch)} ${words.vary(mayVary)}
          ${line.withSpares === null ? html`<strong class="fault">${words.hopeless}</strong>` : ''}
        </p>
        <details>
          <summary aria-label=${words.more(name)}>${words.moreShort}</summary>
          <part-check .spec=${line.spec}></part-check>
          ${line.unit === 'piece' ? html`<p class="notes">${words.enough(line.chance)}</p>` : ''}
          ${this.#alternates(line)}
        </details>
      </th>
      <td class="figure">${amount(line.perKit)}</td>
      <td class="figure">${amount(line.needed)}</td>
      <td class="figure">${line.withSpares === null ? dash : amount(line.withSpares)}</td>
      <td class="figure box">${this.#box(words.stock(name), line.stock, read.stock, wholeField, (stock) => note({ stock }))}</td>
      <td class="figure box">${this.#box(words.pack(name), line.packSize, read.pack, wholeField, (packSize) => note({ packSize }))}</td>
      <td class="figure buy">${formatNumber(line.packs, 6)}</td>
      <td class="figure box">
        ${this.#box(words.price(name), line.packPrice, readPrice, priceText, (price) =>
          note({ packPrice: price < 0 ? null : price }),
        )}
      </td>
      <td class="figure">${line.cost === null ? dash : priceText(line.cost)}</td>
    </tr>`;
  }

  #box(
    label: string,
    value: number | null,
    readText: ReadText,
    text: (value: number | null) => string,
    command: (value: number) => ReturnType<typeof inBatch>,
  ): TemplateResult {
    return html`<quantity-field
        label=${label}
        label-hidden
        .value=${value}
        .format=${text}
        .parse=${readText}
        @commit=${({ detail }: CustomEvent<CommitDetail>) => this.app.change(words.step(label), command(detail.value))}
      ></quantity-field
      ><span class="paper">${text(value)}</span>`;
  }

  #alternates({ alternates }: OrderLine): TemplateResult {
    if (alternates.length === 0) return html`<p class="notes">${words.noAlternates}</p>`;
    return html`<p class="name">${words.alternates}</p>
      <ul class="notes">
        ${alternates.map(
          ({ spec, effects }) =>
            html`<li><strong>${capitalised(lineWords(spec).name)}.</strong> ${effects.map(effectWords).join(' ')}</li>`,
        )}
      </ul>`;
  }

  readonly #save = (): void => {
    const design = this.#design.value;
    offerFile(
      words.csvName(design.name),
      'csv',
      'text/csv',
      orderCsv(orders(design)(planNow(this.#board.value))),
    );
  };
}

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What is painted or printed on the part. */
function markings(spec: OrderSpec): TemplateResult | string {
  if (spec.kind === 'resistor') {
    const set = bandsOf(spec.ohms, 5, 0.01);
    return set.ok ? html`<span class="bands">${resistorWithWords(set.bands)}</span>` : '';
  }
  const code =
    spec.kind === 'timing capacitor' && spec.dielectric !== 'electrolytic'
      ? capacitorCode(spec.farads, spec.tolerance)
      : spec.kind === 'capacitor' && spec.type !== 'electrolytic'
        ? capacitorCode(spec.farads)
        : null;
  return code === null ? '' : html`<span class="bands">${kitViewWords.check.code(code)}</span>`;
}

customElements.define('order-panel', OrderPanel);

declare global {
  interface HTMLElementTagNameMap {
    'order-panel': OrderPanel;
  }
}
