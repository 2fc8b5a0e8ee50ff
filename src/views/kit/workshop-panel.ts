/** `<workshop-panel>`: how long a workshop of these boards takes, how many work at once, and what falls to the helpers. */
import { css, html, type TemplateResult } from 'lit';
import { type KitDesk, type KitView, kitDeskOf } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Design } from '../../design/design.ts';
import { STEP_ORDER, type StepId } from '../../kit/build-steps.ts';
import { type Card, type MinutesTable, workshopLoad } from '../../kit/cards.ts';
import { formatShare } from '../../quantity/format.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { AppElement } from '../app-element.ts';
import { reader } from '../edits.ts';
import { fieldStyles, freeField } from '../fields.ts';
import { numberField, wholeField, wholeReader } from '../pitch/readers.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { kitStyles } from './kit-styles.ts';

const words = kitViewWords.cards.plan;
const { titles } = kitViewWords.cards;

const read = {
  helpers: wholeReader({ min: 0, max: 100 }),
  badJoint: reader('share', { min: 0, max: 0.5 }),
  minutes: reader('number', { min: 0, max: 600 }),
};
const minutesText = (value: number): string => numberField(value, 3);

export class WorkshopPanel extends AppElement {
  static override properties = { ...AppElement.properties, cards: { attribute: false } };
  static override styles = [
    common,
    fieldStyles,
    kitStyles,
    css`
      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 15em), 1fr));
        gap: 4px 24px;
        margin: 6px 0;
        --label-width: 9.5em;
        --field-width: 5em;
      }
      ul {
        margin: 4px 0;
        padding-left: 18px;
      }
      legend {
        padding: 0;
        font-size: var(--text-control);
      }
      fieldset {
        display: flex;
        flex-wrap: wrap;
        gap: 0 16px;
      }
    `,
  ];

  declare cards: readonly Card[];
  #desk!: KitDesk;
  #design!: Selected<Design, Design>;
  #view!: Selected<KitView, KitView>;

  constructor() {
    super();
    this.cards = [];
  }

  protected override bind(app: Lampnote): void {
    this.#desk = kitDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
  }

  protected override render(): TemplateResult {
    const { workshop, minutes } = this.#view.value;
    const load = workshopLoad(this.cards, { ...workshop, kits: this.#design.value.batch.kits });
    const change = (part: Partial<KitView['workshop']>) =>
      this.#desk.show({ workshop: { ...workshop, ...part } });
    return html`<section aria-labelledby="workshop">
      <h3 id="workshop">${words.heading}</h3>
      <ul aria-live="polite">
        <li>${words.joints(load.joints)} ${words.right(load.firstTimeRight)}</li>
        <li>${words.each(load.minutes)} ${load.preparedMinutes > 0 ? words.before(load.preparedMinutes) : ''}</li>
        <li>${words.mend(load.repairMinutes, load.minutesPerHelper)}</li>
      </ul>
      <div class="fields">
        ${freeField(words.helpers, workshop.helpers, read.helpers, wholeField, (helpers) => change({ helpers }))}
        ${freeField(
          words.badJoint,
          workshop.badJoint,
          read.badJoint,
          (share) => formatShare(share, 1),
          (badJoint) => change({ badJoint }),
        )}
        ${freeField(words.repair, workshop.repairMinutes, read.minutes, minutesText, (repairMinutes) =>
          change({ repairMinutes }),
        )}
      </div>
      <fieldset>
        <legend>${words.prepared}</legend>
        ${STEP_ORDER.map(
          (id) => html`<label class="tick"
            ><input
              type="checkbox"
              .checked=${workshop.prepared.includes(id)}
              @change=${(event: Event) =>
                change({
                  prepared: withStep(
                    workshop.prepared,
                    id,
                    (event.currentTarget as HTMLInputElement).checked,
                  ),
                })}
            />
            ${titles[id]}</label
          >`,
        )}
      </fieldset>
      <details>
        <summary>${words.table}</summary>
        <p class="small">${words.tableHint}</p>
        <div class="fields">
          ${(Object.keys(words.rows) as (keyof MinutesTable)[]).map((row) =>
            freeField(words.rows[row], minutes[row], read.minutes, minutesText, (value) =>
              this.#desk.show({ minutes: { ...minutes, [row]: value } }),
            ),
          )}
        </div>
      </details>
    </section>`;
  }
}

const withStep = (steps: readonly StepId[], id: StepId, isIn: boolean): readonly StepId[] => {
  const others = steps.filter((one) => one !== id);
  return isIn ? [...others, id] : others;
};

customElements.define('workshop-panel', WorkshopPanel);

declare global {
  interface HTMLElementTagNameMap {
    'workshop-panel': WorkshopPanel;
  }
}
