/** `<drawer-panel>`: what is at hand, typed, pasted or from a CSV file, and what may be ordered beside it. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { deskOf, type PitchDesk, type PitchView } from '../../app/pitch-desk.ts';
import { csvText } from '../../app/table-csv.ts';
import type { Design } from '../../design/design.ts';
import { equalValues } from '../../design/entries.ts';
import { LIMITS } from '../../design/limits.ts';
import type { Drawer } from '../../design/pitch.ts';
import { changeDrawer } from '../../design/pitch-commands.ts';
import { DIELECTRICS, type DielectricId } from '../../parts/capacitors.ts';
import { SERIES, type SeriesId } from '../../parts/preferred.ts';
import { TRIMMERS, type TrimmerId } from '../../parts/trimmers.ts';
import { type DrawerRow, readDrawer } from '../../plan/drawer-file.ts';
import { drawerLines, drawerText } from '../../plan/drawer-text.ts';
import { words as pageWords } from '../../words/en.ts';
import { DIELECTRIC_NAMES, pitchWords, TRIMMER_NAMES, toleranceText } from '../../words/en-pitch.ts';
import { AppElement } from '../app-element.ts';
import { reader } from '../edits.ts';
import { Fields, fieldStyles } from '../fields.ts';
import { droppedFile, offerFile, readFile } from '../files.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { panelStyles } from './panel-styles.ts';

const words = pitchWords.drawer;
/** Far more than the fullest drawer holds. */
const MOST_LETTERS = 60_000;
/** Bad lines named at once. */
const SHOWN = 8;
const NOTHING = '';
const readTolerance = reader('share', LIMITS.tolerance);
const toleranceField = (value: number | null): string =>
  value === null ? '' : toleranceText(value).slice(1);

const seriesNames = (): Readonly<Record<string, string>> => ({
  [NOTHING]: words.nothing,
  ...Object.fromEntries(Object.keys(SERIES).map((name) => [name, words.series(name)])),
});

export class DrawerPanel extends AppElement {
  static override properties = { ...AppElement.properties, tooLong: { state: true } };
  static override styles = [
    common,
    fieldStyles,
    panelStyles,
    css`
      textarea {
        min-height: 7.5em;
        font-variant-numeric: tabular-nums;
        resize: vertical;
      }
      textarea[aria-invalid='true'] {
        border-color: var(--fault);
        box-shadow: inset 0 -2px 0 var(--fault);
      }
      .bad {
        color: var(--fault);
        font-size: var(--text-small);
      }
      label.lines {
        font-size: var(--text-control);
      }
    `,
  ];

  /** What was last given was not read, because there was too much of it. */
  declare tooLong: boolean;
  #drawer!: Selected<Design, Drawer>;
  #draft!: Selected<PitchView, string | null>;
  #fields!: Fields;
  #desk!: PitchDesk;

  constructor() {
    super();
    this.tooLong = false;
  }

  protected override bind(app: Lampnote): void {
    this.#desk = deskOf(app);
    this.#drawer = new Selected(this, app.design, (design) => design.pitch.drawer);
    this.#draft = new Selected(this, this.#desk.view, (view) => view.drawerDraft);
    this.#fields = new Fields(app, words.step);
  }

  protected override render(): TemplateResult {
    const drawer = this.#drawer.value;
    return html`<section aria-labelledby="drawer" @drop=${this.#drop}>
      <h2 id="drawer">${words.heading}</h2>
      ${this.#fields.choice(words.use, words.uses, drawer.use, (use) =>
        changeDrawer({ use: use as Drawer['use'] }),
      )}
      ${this.#lines(drawer)} ${drawer.use === 'order' ? this.#order(drawer) : ''}
    </section>`;
  }

  #lines(drawer: Drawer): TemplateResult {
    const draft = this.#draft.value;
    const text = draft ?? drawerText(drawer);
    const bad = draft === null ? [] : readDrawer(draft).bad;
    const pending = draft !== null && !equalValues(listsIn(draft), listsOf(drawer));
    const { resistors, trimmers, capacitors } = drawer;
    const count = resistors.length + trimmers.length + capacitors.length;
    return html`<div>
        <label class="lines" for="lines">${words.lines}</label>
        <textarea
          id="lines"
          spellcheck="false"
          autocomplete="off"
          aria-invalid=${bad.length > 0 ? 'true' : 'false'}
          aria-describedby="hint bad"
          .value=${text}
          @change=${(event: Event) => this.#take((event.currentTarget as HTMLTextAreaElement).value)}
        ></textarea>
        <p id="hint" class="small">${words.linesHint}</p>
        <div id="bad" class="bad" aria-live="polite">${this.tooLong ? words.tooLarge(MOST_LETTERS) : bad.length > 0 ? badLines(bad) : ''}</div>
      </div>
      <div class="row">
        <button type="button" @click=${this.#apply}>${words.apply}</button>
        <button type="button" @click=${this.#open}>${words.file}</button>
        <button type="button" ?disabled=${count === 0} @click=${this.#save}>${words.save}</button>
      </div>
      <p class="small" role="status">
        ${pending ? words.pending : ''}
        ${count === 0 ? words.empty : words.holds(resistors.length, trimmers.length, capacitors.length)}
        ${drawer.use === 'order' && count > 0 ? words.unlimited : ''}
      </p>`;
  }

  #order({ order }: Drawer): TemplateResult {
    const change = (part: Partial<Drawer['order']>) => changeDrawer({ order: { ...order, ...part } });
    const { resistors, trimmers, capacitors } = order;
    const kinds: Readonly<Record<string, string>> = {
      [NOTHING]: words.nothing,
      ...Object.fromEntries((Object.keys(TRIMMERS) as TrimmerId[]).map((id) => [id, TRIMMER_NAMES[id]])),
    };
    const dielectrics = Object.fromEntries(
      (Object.keys(DIELECTRICS) as DielectricId[]).map((id) => [id, DIELECTRIC_NAMES[id]]),
    );
    const tolerance = (value: number, command: (share: number) => ReturnType<typeof change>) =>
      this.#fields.quantity({
        label: words.tolerance,
        value,
        read: readTolerance,
        text: toleranceField,
        command,
      });
    return html`<h3>${words.order}</h3>
      <div class="fields">
        ${this.#fields.list(words.resistors, seriesNames(), resistors?.series ?? NOTHING, (series) =>
          change({
            resistors:
              series === NOTHING
                ? null
                : { tolerance: resistors?.tolerance ?? 0.01, series: series as SeriesId },
          }),
        )}
        ${resistors ? tolerance(resistors.tolerance, (share) => change({ resistors: { ...resistors, tolerance: share } })) : ''}
        ${this.#fields.list(words.trimmers, kinds, trimmers?.part ?? NOTHING, (part) =>
          change({ trimmers: part === NOTHING ? null : { part: part as TrimmerId } }),
        )}
        ${this.#fields.list(words.capacitors, seriesNames(), capacitors?.series ?? NOTHING, (series) =>
          change({
            capacitors:
              series === NOTHING
                ? null
                : { dielectric: 'polyester', tolerance: 0.05, ...capacitors, series: series as SeriesId },
          }),
        )}
        ${
          capacitors
            ? html`${this.#fields.list(words.dielectric, dielectrics, capacitors.dielectric, (id) => {
                const dielectric = id as DielectricId;
                return change({
                  capacitors: { ...capacitors, dielectric, tolerance: DIELECTRICS[dielectric].tolerance },
                });
              })}
              ${tolerance(capacitors.tolerance, (share) => change({ capacitors: { ...capacitors, tolerance: share } }))}`
            : ''
        }
      </div>`;
  }

  /** What reads goes into the drawer; a text with lines that do not stays as typed. */
  #take(text: string): void {
    this.tooLong = text.length > MOST_LETTERS;
    if (this.tooLong) return;
    const { bad } = readDrawer(text);
    this.#desk.show({ drawerDraft: bad.length > 0 ? text : null });
    this.app.change(words.stepLines, changeDrawer(listsIn(text)));
    this.requestUpdate();
  }

  readonly #apply = (): void => {
    const box = this.renderRoot.querySelector<HTMLTextAreaElement>('#lines');
    if (box) this.#take(box.value);
  };

  readonly #open = async (): Promise<void> => {
    const file = await readFile(this.app, '.csv,.tsv,.txt,text/csv,text/plain');
    if (file) this.#take(file.text);
  };

  /** A list dropped here is a drawer, not a light log. */
  readonly #drop = async (event: DragEvent): Promise<void> => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.stopPropagation();
    const file = await droppedFile(this.app, event);
    if (file) this.#take(file.text);
  };

  readonly #save = (): void => {
    const rows = drawerLines(this.#drawer.value).map(({ value, tolerance, kind, quantity, price }) => [
      value,
      tolerance,
      kind,
      quantity,
      price,
    ]);
    offerFile(words.fileName, 'csv', 'text/csv', csvText(words.csvHeads, rows));
  };
}

type Lists = Pick<Drawer, 'resistors' | 'trimmers' | 'capacitors'>;

const listsOf = ({ resistors, trimmers, capacitors }: Lists): Lists => ({ resistors, trimmers, capacitors });
const listsIn = (text: string): Lists => listsOf(readDrawer(text));

function badLines(bad: readonly DrawerRow[]): TemplateResult {
  return html`<p>${words.bad(bad.length)}</p>
    <ul class="problems">
      ${bad.slice(0, SHOWN).map((row) => html`<li>${words.badLine(row.line, row.read, rowReason(row))}</li>`)}
      ${bad.length > SHOWN ? html`<li>${words.more(bad.length - SHOWN)}</li>` : ''}
    </ul>`;
}

function rowReason({ problem }: DrawerRow): string {
  switch (problem.kind) {
    case 'no value':
      return words.why['no value'];
    case 'value':
      return pageWords.field.problem(problem.problem);
    case 'not a count':
    case 'not a price':
    case 'unknown word':
      return words.why[problem.kind](problem.read);
    case 'twice':
      return words.why.twice(words.entries[problem.entry]);
    case 'too many':
      return words.why['too many'](problem.most);
  }
}

customElements.define('drawer-panel', DrawerPanel);

declare global {
  interface HTMLElementTagNameMap {
    'drawer-panel': DrawerPanel;
  }
}
