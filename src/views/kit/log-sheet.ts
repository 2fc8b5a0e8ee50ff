/** `<log-sheet>`: what happened to each kit, by number; what the next order learns from it. */
import { css, html, type TemplateResult } from 'lit';
import { type KitDesk, type KitView, kitDeskOf } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { railVolts } from '../../circuit/supply.ts';
import { BATCH_LIMITS, type KitEntry, LOSS_KINDS } from '../../design/batch.ts';
import { inBatch, kitEntry, setLosses, takeLog, writeKit } from '../../design/batch-commands.ts';
import type { Design } from '../../design/design.ts';
import { faultsOf, linkOf } from '../../kit/faults.ts';
import { learnedLosses, logCsv, logRefusal, logSummary, readLogCsv } from '../../kit/kit-log.ts';
import { logWords } from '../../words/bench.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { legible } from '../../words/excerpt.ts';
import { faultWords } from '../../words/faults.ts';
import { orderWords } from '../../words/order.ts';
import { AppElement } from '../app-element.ts';
import type { ReadText } from '../controls/events.ts';
import { fieldStyles, freeField, listRow } from '../fields.ts';
import { offerFile, readFile } from '../files.ts';
import { wholeField, wholeReader } from '../pitch/readers.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { kitStyles } from './kit-styles.ts';
import { wordTable } from './word-table.ts';

const words = kitViewWords.log;
const read = {
  kit: wholeReader(BATCH_LIMITS.kitNumber),
  minutes: wholeReader(BATCH_LIMITS.minutes),
  lost: wholeReader({ min: 0, max: 99 }),
};
const NONE = '';
/** An emptied box takes the minutes away (told as below nothing). */
const readMinutes: ReadText = (text) => (text.trim() === '' ? { ok: true, value: -1 } : read.minutes(text));

export class LogSheet extends AppElement {
  static override properties = { ...AppElement.properties, problem: { state: true } };
  static override styles = [
    common,
    fieldStyles,
    kitStyles,
    css`
      .entry {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 15em), 1fr));
        gap: 4px 24px;
        max-width: 62em;
        --label-width: 9.5em;
        --field-width: 5em;
      }
      .entry .wide {
        grid-column: 1 / -1;
        --label-width: 9.5em;
        max-width: 34em;
      }
      .paper {
        display: none;
      }
      @media print {
        .entry {
          display: none;
        }
        .paper {
          display: block;
        }
        .paper table {
          width: 100%;
        }
        .paper td,
        .paper th {
          height: 7mm;
        }
      }
    `,
  ];

  declare problem: string;
  #desk!: KitDesk;
  #design!: Selected<Design, Design>;
  #view!: Selected<KitView, KitView>;

  constructor() {
    super();
    this.problem = '';
  }

  protected override bind(app: Lampnote): void {
    this.#desk = kitDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
  }

  protected override render(): TemplateResult {
    const design = this.#design.value;
    const { log } = design.batch;
    return html`<section aria-labelledby="log">
      <div class="title">
        <h2 id="log">${words.heading}</h2>
        <p class="muted">${logWords.noNames}</p>
      </div>
      ${this.#entry(design)}
      <div class="tools">
        <button type="button" class="primary" ?disabled=${log.length === 0} @click=${this.#save}>${words.csv}</button>
        <button type="button" @click=${this.#open}>${words.open}</button>
        <button type="button" ?disabled=${log.length === 0} @click=${this.#learn}>${words.learn}</button>
        <button type="button" @click=${() => window.print()}>${kitViewWords.print}</button>
      </div>
      <p class="fault" role="alert">${this.problem}</p>
      <h3>${words.table}</h3>
      ${
        log.length === 0
          ? html`<p class="muted screen">${words.empty}</p>`
          : html`<p>${summaryOf(log, design)}</p>
              <div class="screen">${wordTable(
                words.table,
                words.heads,
                log.map((entry) => rowOf(entry, design)),
              )}</div>`
      }
      <div class="paper">${wordTable(words.table, words.heads, rowsOnPaper(design))}</div>
    </section>`;
  }

  #entry(design: Design): TemplateResult {
    const { kit } = this.#view.value;
    const entry = kitEntry(design.batch, kit);
    const faults = faultsOf(design).filter(({ kind }) => kind !== null);
    const rail = railVolts(design.supply);
    const write = (what: string, change: Partial<Omit<KitEntry, 'kit'>>) =>
      this.app.change(words.step(kit, what), inBatch(writeKit(kit, change)));
    const lostOf = (kind: KitEntry['lost'][number]['kind']): number =>
      entry.lost.find((one) => one.kind === kind)?.count ?? 0;
    return html`<div class="entry">
      ${freeField(words.kit, kit, read.kit, wholeField, (value) => this.#desk.show({ kit: value }))}
      ${freeField(
        words.minutes,
        entry.minutes,
        readMinutes,
        (value) => wholeField(value),
        (minutes) => write(words.minutes, { minutes: minutes < 0 ? null : minutes }),
      )}
      <div class="wide">
        ${listRow(
          words.fault,
          [
            [NONE, words.noFault],
            ...faults.map(({ id, kind, voice }) => [id, faultWords(kind, voice, rail).name]),
          ],
          entry.fault ?? NONE,
          (fault) => write(words.fault, { fault: fault === NONE ? null : fault }),
        )}
      </div>
      ${LOSS_KINDS.map((kind) => {
        const label = words.lost(orderWords.partLosses[kind]);
        return freeField(label, lostOf(kind), read.lost, wholeField, (count) => {
          const others = entry.lost.filter((one) => one.kind !== kind);
          write(label, { lost: count === 0 ? others : [...others, { kind, count }] });
        });
      })}
    </div>`;
  }

  readonly #save = (): void => {
    const { name, batch } = this.#design.value;
    offerFile(words.csvName(name), 'csv', 'text/csv', logCsv(batch.log));
  };

  readonly #open = async (): Promise<void> => {
    const file = await readFile(this.app, '.csv,text/csv,text/plain');
    if (file === null) return;
    const log = readLogCsv(file.text);
    this.problem = log.ok ? '' : logRefusal(log);
    if (log.ok) this.app.change(words.opened, inBatch(takeLog(log.log)));
  };

  readonly #learn = (): void => {
    const design = this.#design.value;
    this.app.change(words.learned, inBatch(setLosses(learnedLosses(design, design.batch))));
  };
}

/** A fault by its id, as kept in the log; an unknown one by the id itself. */
function faultName(kept: string, design: Design): string {
  const id = legible(kept);
  const rail = railVolts(design.supply);
  const link = linkOf(id);
  if (link !== null) return faultWords('link missing', null, rail, link).name;
  const fault = faultsOf(design).find((one) => one.id === id);
  return fault ? faultWords(fault.kind, fault.voice, rail).name : id;
}

/** A row for every kit of the batch, to be filled in by hand where nothing is written yet. */
function rowsOnPaper(design: Design): readonly (readonly string[])[] {
  const { kits, log } = design.batch;
  const others = Array.from({ length: kits }, (_, i) => i + 1)
    .filter((kit) => !log.some((entry) => entry.kit === kit))
    .map((kit) => [String(kit), ...words.heads.slice(1).map(() => '')]);
  return [...log.map((entry) => rowOf(entry, design)), ...others].toSorted(
    ([one], [other]) => Number(one) - Number(other),
  );
}

function rowOf({ kit, fault, minutes, readings, lost }: KitEntry, design: Design): readonly string[] {
  return [
    String(kit),
    fault === null ? words.noFault : faultName(fault, design),
    minutes === null ? '' : String(minutes),
    readings.length === 0 ? '' : words.readings(readings.length),
    lost.map(({ kind, count }) => `${count} ${orderWords.partLosses[kind]}`).join(', '),
  ];
}

function summaryOf(log: readonly KitEntry[], design: Design): string {
  const { kits, firstTimeRight, medianMinutes, faults } = logSummary(log);
  const [commonest] = faults;
  return [
    words.summary(kits),
    firstTimeRight === null ? '' : words.right(firstTimeRight),
    medianMinutes === null ? '' : words.median(medianMinutes),
    commonest === undefined ? '' : words.commonest(faultName(commonest.fault, design), commonest.count),
  ]
    .filter(Boolean)
    .join(' ');
}

customElements.define('log-sheet', LogSheet);

declare global {
  interface HTMLElementTagNameMap {
    'log-sheet': LogSheet;
  }
}
