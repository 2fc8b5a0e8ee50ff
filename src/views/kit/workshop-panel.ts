/** `<workshop-panel>`: how long a workshop of these boards takes, how many work at once, and what falls to the helpers. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Batch } from '../../design/batch.ts';
import { inBatch, prepareStep, setMinutes, setWorkshop } from '../../design/batch-commands.ts';
import type { Design } from '../../design/design.ts';
import { type MinutesTable, STEP_ORDER, WORKSHOP_LIMITS } from '../../design/workshop.ts';
import { type Card, workshopLoad } from '../../kit/cards.ts';
import { formatShare } from '../../quantity/format.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { AppElement } from '../app-element.ts';
import { reader } from '../edits.ts';
import { Fields, fieldStyles } from '../fields.ts';
import { numberField, wholeField, wholeReader } from '../pitch/readers.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { kitStyles } from './kit-styles.ts';

const words = kitViewWords.cards.plan;
const { titles } = kitViewWords.cards;

const read = {
  helpers: wholeReader(WORKSHOP_LIMITS.helpers),
  badJoint: reader('share', WORKSHOP_LIMITS.badJoint),
  minutes: reader('number', WORKSHOP_LIMITS.minutes),
};
const minutesText = (value: number | null): string => (value === null ? '' : numberField(value, 3));
const shareText = (value: number | null): string => (value === null ? '' : formatShare(value, 1));

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
  #batch!: Selected<Design, Batch>;
  #fields!: Fields;

  constructor() {
    super();
    this.cards = [];
  }

  protected override bind(app: Lampnote): void {
    this.#batch = new Selected(this, app.design, ({ batch }) => batch);
    this.#fields = new Fields(app, words.step);
  }

  protected override render(): TemplateResult {
    const { workshop, kits } = this.#batch.value;
    const load = workshopLoad(this.cards, kits, workshop);
    return html`<section aria-labelledby="workshop">
      <h3 id="workshop">${words.heading}</h3>
      <ul aria-live="polite">
        <li>${words.joints(load.joints)} ${words.right(load.firstTimeRight)}</li>
        <li>${words.each(load.minutes)} ${load.preparedMinutes > 0 ? words.before(load.preparedMinutes) : ''}</li>
        <li>${words.mend(load.repairMinutes, load.minutesPerHelper)}</li>
      </ul>
      <div class="fields">
        ${this.#fields.quantity({
          label: words.helpers,
          value: workshop.helpers,
          read: read.helpers,
          text: wholeField,
          command: (helpers) => inBatch(setWorkshop({ helpers })),
        })}
        ${this.#fields.quantity({
          label: words.badJoint,
          value: workshop.badJoint,
          read: read.badJoint,
          text: shareText,
          command: (badJoint) => inBatch(setWorkshop({ badJoint })),
        })}
        ${this.#fields.quantity({
          label: words.repair,
          value: workshop.repairMinutes,
          read: read.minutes,
          text: minutesText,
          command: (repairMinutes) => inBatch(setWorkshop({ repairMinutes })),
        })}
      </div>
      <fieldset>
        <legend>${words.prepared}</legend>
        ${STEP_ORDER.map((id) =>
          this.#fields.tick(titles[id], workshop.prepared.includes(id), (isIn) =>
            inBatch(prepareStep(id, isIn)),
          ),
        )}
      </fieldset>
      <details>
        <summary>${words.table}</summary>
        <p class="small">${words.tableHint}</p>
        <div class="fields">
          ${(Object.keys(words.rows) as (keyof MinutesTable)[]).map((row) =>
            this.#fields.quantity({
              label: words.rows[row],
              value: workshop.minutes[row],
              read: read.minutes,
              text: minutesText,
              command: (minutes) => inBatch(setMinutes(row, minutes)),
            }),
          )}
        </div>
      </details>
    </section>`;
  }
}

customElements.define('workshop-panel', WorkshopPanel);

declare global {
  interface HTMLElementTagNameMap {
    'workshop-panel': WorkshopPanel;
  }
}
