/** `<place-kit>`: from values to working boards in other people's hands. Margin, and one sheet at a time. */
import { css, html, type PropertyValues, type TemplateResult } from 'lit';
import { handOver } from '../../app/hand-over.ts';
import { type KitDesk, type KitView, kitDeskOf, SHEETS, type Sheet } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Look, Session } from '../../app/session.ts';
import type { Design } from '../../design/design.ts';
import { forOthers } from '../../design/for-others.ts';
import { orderCautions } from '../../kit/order.ts';
import type { CautionPlace } from '../../words/cautions.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import '../controls/choice-row.ts';
import type { ChooseDetail } from '../controls/events.ts';
import { Selected } from '../select.ts';
import { marginStyles } from '../theme/margin.ts';
import { common } from '../theme/shared.ts';
import './cards-panel.ts';
import './connections-panel.ts';
import './faults-panel.ts';
import './log-sheet.ts';
import './order-panel.ts';
import './plan-panel.ts';
import './slip-panel.ts';
import './sound-sheet.ts';
import './whatif-panel.ts';
import { footPages, sheetHead, sheetHeadStyles } from './sheet-head.ts';

const words = kitViewWords;

export class PlaceKit extends AppElement {
  static override properties = { ...AppElement.properties, link: { state: true } };
  static override styles = [
    common,
    marginStyles,
    sheetHeadStyles,
    css`
      .sheets {
        padding: 8px var(--side, 28px);
        border-bottom: 1px solid var(--hair);
      }
      .page {
        display: grid;
        grid-template-columns: minmax(0, 11em) minmax(0, 1fr);
        gap: 26px 30px;
        padding: 18px var(--side, 28px) 40px;
      }
      .body {
        min-width: 0;
      }
      @media (max-width: 47.5em) {
        .page {
          grid-template-columns: minmax(0, 1fr);
          gap: 22px;
        }
        .margin {
          grid-row: 2;
        }
      }
      .page.projector {
        grid-template-columns: minmax(0, 1fr);
      }
      .page.projector .margin {
        grid-row: 2;
      }
      @media print {
        .sheets {
          display: none;
        }
        .page {
          display: flex;
          flex-direction: column;
          gap: 4mm;
          padding: 0;
        }
        /* Before the act, but behind the two sides of the board, which fill a page each. */
        .margin {
          font-size: 8.5pt;
        }
        .body:has(plan-panel) {
          order: -1;
        }
        .margin .said {
          display: none;
        }
      }
    `,
  ];

  /** The whole address that opens this design; empty until it is made. */
  declare link: string;
  #desk!: KitDesk;
  #design!: Selected<Design, Design>;
  #view!: Selected<KitView, KitView>;
  #look!: Selected<Session, Look>;
  #linked: Design | null = null;
  #unfoot: (() => void) | null = null;

  constructor() {
    super();
    this.link = '';
  }

  protected override bind(app: Lampnote): void {
    this.#desk = kitDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
    this.#look = new Selected(this, app.session, (session) => session.look);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#unfoot?.();
    this.#unfoot = null;
    this.#linked = null;
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const design = this.#design.value;
    if (design === this.#linked) return;
    this.#linked = design;
    this.#unfoot?.();
    this.#unfoot = footPages(design.name);
    void this.#follow(design);
  }

  protected override render(): TemplateResult {
    const { sheet } = this.#view.value;
    const design = this.#design.value;
    const places = cautionsFor(sheet, design);
    return html`<main>
      <choice-row
        class="sheets"
        legend=${words.sheets}
        legend-hidden
        .choices=${SHEETS.map((value) => ({ value, label: words.sheetNames[value] }))}
        value=${sheet}
        @choose=${({ detail }: CustomEvent<ChooseDetail>) => this.#desk.show({ sheet: detail.value as Sheet })}
      ></choice-row>
      <div class="page ${this.#look.value}">
        ${sheet === 'board' ? '' : sheetHead(design.name, this.link)}
        <section class="margin" aria-label=${words.why}>
          <div class="said">${this.#why(sheet).map((text, i) => html`<p class=${i ? '' : 'why'}>${text}</p>`)}</div>
          ${places.length > 0 ? html`<caution-note .places=${places}></caution-note>` : ''}
        </section>
        <div class="body">${this.#sheet(sheet)}</div>
      </div>
    </main>`;
  }

  #why(sheet: Sheet): readonly string[] {
    return words[sheet].why;
  }

  #sheet(sheet: Sheet): TemplateResult {
    const { app } = this;
    switch (sheet) {
      case 'order':
        return html`<order-panel .app=${app}></order-panel>`;
      case 'connections':
        return html`<connections-panel .app=${app}></connections-panel>`;
      case 'board':
        return html`<plan-panel .app=${app} .link=${this.link}></plan-panel>`;
      case 'cards':
        return html`<cards-panel .app=${app}></cards-panel>`;
      case 'whatif':
        return html`<whatif-panel .app=${app}></whatif-panel>`;
      case 'sound':
        return html`<sound-sheet .app=${app} .link=${this.link}></sound-sheet>`;
      case 'log':
        return html`<log-sheet .app=${app}></log-sheet>`;
      case 'faults':
        return html`<faults-panel .app=${app}></faults-panel>`;
      case 'slip':
        return html`<slip-panel .app=${app}></slip-panel>`;
    }
  }

  async #follow(design: Design): Promise<void> {
    const link = await this.app.link(forOthers(design)).catch(() => '');
    // On paper an address only this computer knows leads nowhere.
    const over = handOver(location.href, this.app.session.current.hosted);
    if (design === this.#design.value)
      this.link = link === '' || over.kind === 'none' ? '' : new URL(link, over.address).href;
  }
}

function cautionsFor(sheet: Sheet, design: Design): readonly CautionPlace[] {
  switch (sheet) {
    case 'order':
      return orderCautions(design, design.batch);
    case 'connections':
    case 'board':
      return ['building'];
    case 'cards':
    case 'log':
      return [];
    case 'sound':
    case 'whatif':
      return ['headphones', 'sound'];
    case 'faults':
    case 'slip':
      return ['first power-up', 'supply'];
  }
}

customElements.define('place-kit', PlaceKit);

declare global {
  interface HTMLElementTagNameMap {
    'place-kit': PlaceKit;
  }
}
