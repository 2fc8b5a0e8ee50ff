/** `<results-panel>`: what was found, as bars on a ruler and as a table to choose from. */
import { css, html, type TemplateResult } from 'lit';
import { memoized } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { type Choice, deskOf, type PitchDesk, type PitchView } from '../../app/pitch-desk.ts';
import type { Design } from '../../design/design.ts';
import { equalValues } from '../../design/entries.ts';
import type { Candidate, Wish } from '../../design/pitch.ts';
import { type Assessment, untunedBench } from '../../plan/assess.ts';
import type { SearchReport } from '../../plan/job.ts';
import type { Ranked } from '../../plan/search.ts';
import { chipOf } from '../../plan/timing.ts';
import { VOICES } from '../../quantity/units.ts';
import { pitchWords } from '../../words/en-pitch.ts';
import { foundWords } from '../../words/en-pitch-found.ts';
import { AppElement } from '../app-element.ts';
import type { ChooseDetail } from '../controls/events.ts';
import { offerFile } from '../files.ts';
import '../plots/pitch-ruler.ts';
import type { RulerBar } from '../plots/pitch-ruler.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { barRow, barsOf, rulerTargets } from './bars.ts';
import { candidateCsv } from './candidate-csv.ts';
import { panelStyles } from './panel-styles.ts';

type Found = Extract<SearchReport, { kind: 'found' }>;
/** Bars drawn at first; more are a press away. */
const FIRST_BARS = 6;
/** Rows of the table that are in sight before it is scrolled. */
const FIRST_ROWS = 14;
/** Kits drawn as marks: more would be a smear. */
const MOST_MARKS = 40;

export class ResultsPanel extends AppElement {
  static override properties = { ...AppElement.properties, standing: { state: true } };
  static override styles = [
    common,
    panelStyles,
    css`
      .scroll {
        max-height: 24rem;
        overflow: auto;
      }
      table {
        width: 100%;
      }
      th,
      td {
        white-space: nowrap;
      }
      thead th {
        position: sticky;
        top: 0;
        z-index: 1;
        background: var(--paper);
        white-space: normal;
        vertical-align: bottom;
      }
      tr.chosen td,
      tr.chosen th {
        font-weight: 600;
      }
      tbody tr {
        cursor: pointer;
      }
      tbody th,
      tbody td {
        vertical-align: middle;
      }
      tbody label {
        display: flex;
        align-items: center;
      }
      tbody tr:hover {
        background: var(--sunken);
      }
      td.figure {
        padding-right: 22px;
      }
      h2 {
        margin-bottom: 4px;
      }
      .table {
        margin-top: 22px;
      }
      @media print {
        .scroll {
          max-height: none;
        }
      }
    `,
  ];

  /** Rows that stand so far. */
  declare standing: number;
  #standingOf: PitchView['searched'] = null;
  #later: ReturnType<typeof setTimeout> | undefined;
  #desk!: PitchDesk;
  #view!: Selected<PitchView, PitchView>;
  #design!: Selected<Design, Design>;

  constructor() {
    super();
    this.standing = FIRST_ROWS;
  }

  protected override bind(app: Lampnote): void {
    this.#desk = deskOf(app);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
    this.#design = new Selected(this, app.design, (design) => design);
  }

  protected override render(): TemplateResult {
    const { searched } = this.#view.value;
    if (searched?.report.kind !== 'found' || searched.report.ranked.length === 0) return html``;
    const { report, task } = searched;
    const law = pitchWords.wish.laws[task.pitch.wish.law];
    const kits = report.assessments[0]?.kits ?? 0;
    return html`<section aria-labelledby="reach">
        <h2 id="reach">${foundWords.ruler.heading}</h2>
        ${this.#ruler(report)}
      </section>
      <section class="table" aria-labelledby="candidates">
        <h2 id="candidates">${foundWords.table.heading}</h2>
        <p class="small">${foundWords.table.caption(law, kits)} ${foundWords.table.keys}</p>
        ${this.#table(report)}
        <div class="row">
          <button type="button" @click=${() => this.#save(report)}>${foundWords.table.csv}</button>
        </div>
      </section>`;
  }

  #ruler(report: Found): TemplateResult {
    const { allBars, chosen } = this.#view.value;
    const design = this.#design.value;
    const { wish } = design.pitch;
    const { ranked, assessments, targets } = report;
    const isChosen = (place: number) => chosen.of === 'found' && chosen.place === place;
    const shown = ranked
      .map((one, place) => ({ one, place }))
      .filter(({ place }) => allBars || place < FIRST_BARS || isChosen(place));
    const draw = { law: wish.law, seed: wish.seed, kits: Math.min(MOST_MARKS, wish.kits) };
    const bars = shown.flatMap(({ one, place }) => {
      const bench = isChosen(place) ? (untunedBench(chipOf(design), one.candidate, draw) ?? []) : [];
      return barsOf(String(place), place + 1, one.candidate, assessments[place]!, isChosen(place), bench);
    });
    const [best] = ranked;
    const { ruler } = foundWords;
    const name = foundWords.name(null, best!.candidate.parts.A, best!.candidate.parts.B);
    return html`<pitch-ruler
        .bars=${bars}
        .targets=${rulerTargets(targets, wish.a4Hertz)}
        .a4=${wish.a4Hertz}
        .summary=${ruler.summary(shown.length, name, foundWords.share(assessments[0]!.reached.easy))}
        .hertzNumber=${foundWords.numberOf}
        .text=${this.#figureText(bars, wish.law, draw.kits)}
        @choose=${({ detail }: CustomEvent<ChooseDetail>) => this.#choose(Number(detail.value))}
      ></pitch-ruler>
      ${
        ranked.length > FIRST_BARS
          ? html`<div class="row">
              <button type="button" aria-pressed=${allBars} @click=${() => this.#desk.show({ allBars: !allBars })}>
                ${allBars ? ruler.fewer : ruler.all(ranked.length)}
              </button>
            </div>`
          : ''
      }`;
  }

  #figureText(bars: readonly RulerBar[], law: Wish['law'], kits: number) {
    const { ruler } = foundWords;
    return {
      caption: ruler.caption(pitchWords.wish.laws[law], kits),
      fileName: ruler.fileName,
      svgLabel: ruler.svg,
      csvLabel: ruler.csv,
      table: { toggle: ruler.table, heads: ruler.heads, rows: bars.map(barRow) },
    };
  }

  #table(report: Found): TemplateResult {
    const { ranked } = report;
    const row = this.#rows(report);
    const { heads } = foundWords.table;
    const priced = ranked.some(({ reasons }) => reasons.price !== null);
    const { chosen } = this.#view.value;
    const shownHeads = priced ? heads : heads.slice(0, -1);
    return html`<div class="scroll">
      <table>
        <thead>
          <tr>
            ${shownHeads.map((head) => html`<th scope="col">${head || html`<span class="visually-hidden">${foundWords.table.heading}</span>`}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${ranked.slice(0, this.standing).map((_, place) => {
            const cells = row(place);
            const isChosen = chosen.of === 'found' && chosen.place === place;
            return html`<tr class=${isChosen ? 'chosen' : ''} @click=${() => this.#choose(place)}>
              <th scope="row">
                <label>
                  <input
                    type="radio"
                    name="candidate"
                    aria-label=${foundWords.table.choose(place + 1)}
                    .checked=${isChosen}
                    @change=${() => this.#choose(place)}
                  />${place + 1}
                </label>
              </th>
              ${cells.slice(0, priced ? cells.length : -1).map((cell) => html`<td>${cell}</td>`)}
            </tr>`;
          })}
        </tbody>
      </table>
    </div>`;
  }

  /** The rows in words, each made once for a report, when it is first shown. */
  readonly #rows = memoized(({ ranked, assessments }: Found) => {
    const made: (readonly string[])[] = [];
    return (place: number) => {
      made[place] ??= rowOf(ranked[place]!, assessments[place]!);
      return made[place];
    };
  });

  /** The first rows stand at once, the others when these are on the screen: the page answers in between. */
  protected override updated(): void {
    const { searched } = this.#view.value;
    if (searched === this.#standingOf) return;
    this.#standingOf = searched;
    clearTimeout(this.#later);
    this.#later = setTimeout(() => {
      this.standing = Number.POSITIVE_INFINITY;
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#later);
  }

  #choose(place: number): void {
    const chosen: Choice = { of: 'found', place };
    if (!equalValues(chosen, this.#view.value.chosen)) this.#desk.show({ chosen });
  }

  #save(report: Found): void {
    offerFile(foundWords.table.fileName, 'csv', 'text/csv', candidateCsv(report));
  }
}

function rowOf({ candidate, reasons }: Ranked, { voices, reached }: Assessment): readonly string[] {
  const { table, sensitivity, share, shortParts } = foundWords;
  const turned = VOICES.map((id) => {
    const { rotation, rotationSpread } = voices[id];
    return table.turned(rotation, rotationSpread.low, rotationSpread.high);
  });
  const worse = voices.A.reached.easy <= voices.B.reached.easy ? voices.A : voices.B;
  const [worst] = worse.sensitivities;
  const { warmRoom } = worse.drift;
  return [
    shortParts(candidate.parts.A),
    sameParts(candidate) ? table.same : shortParts(candidate.parts.B),
    share(reached.easy),
    ...turned,
    table.pair(voices.A.atTarget.centsPerDegree, voices.B.atTarget.centsPerDegree),
    table.range(warmRoom.lowCents, warmRoom.highCents),
    worst ? table.sensitivity(sensitivity[worst.of], worst.share) : '',
    String(reasons.differentParts),
    table.price(reasons.price),
  ];
}

const sameParts = ({ parts }: Candidate): boolean => equalValues(parts.A, parts.B);

customElements.define('results-panel', ResultsPanel);

declare global {
  interface HTMLElementTagNameMap {
    'results-panel': ResultsPanel;
  }
}
