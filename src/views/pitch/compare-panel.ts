/** `<compare-panel>`: two to six capacitors with the same resistors: seen, heard, and how they drift. */
import { css, html, type TemplateResult } from 'lit';
import type { Auditioned, Piece } from '../../app/audition.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { deskOf, type PitchDesk, type PitchView } from '../../app/pitch-desk.ts';
import { designAt, heardAs, sweepPiece } from '../../app/pitch-pieces.ts';
import type { Design } from '../../design/design.ts';
import { equalValues } from '../../design/entries.ts';
import { LIMITS } from '../../design/limits.ts';
import type { Candidate, VoiceParts } from '../../design/pitch.ts';
import { DIELECTRICS, type DielectricId } from '../../parts/capacitors.ts';
import { COMPARED, type Compared, compareCapacitors } from '../../plan/compare.ts';
import type { DriftRange } from '../../plan/drift.ts';
import { fittedParts } from '../../plan/fitted.ts';
import { chipOf } from '../../plan/timing.ts';
import { pairOf } from '../../quantity/units.ts';
import { DIELECTRIC_NAMES, pitchWords, toleranceText } from '../../words/en-pitch.ts';
import { foundWords } from '../../words/en-pitch-found.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import type { ChooseDetail, CommitDetail } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { faradsText, reader } from '../edits.ts';
import { fieldStyles, listRow } from '../fields.ts';
import '../plots/pitch-ruler.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { panelStyles } from './panel-styles.ts';

const words = foundWords.compare;
/** Few enough to be drawn while a value is typed: the ends of 99 % are then within a cent or two. */
const KITS = 8000;
type Asked = Parameters<typeof compareCapacitors>;
type Capacitor = VoiceParts['capacitor'];
const read = { farads: reader('capacitance', LIMITS.timingFarads), share: reader('share', LIMITS.tolerance) };
const toleranceField = (value: number | null): string =>
  value === null ? '' : toleranceText(value).slice(1);

/** Asked most: the next film value down, and a cheap ceramic in its stead. */
const FIRST: readonly Capacitor[] = [
  { farads: 100e-9, dielectric: 'polyester', tolerance: 0.1 },
  { farads: 82e-9, dielectric: 'polyester', tolerance: 0.05 },
  { farads: 100e-9, dielectric: 'y5v', tolerance: 0.2 },
];

export class ComparePanel extends AppElement {
  static override properties = {
    ...AppElement.properties,
    base: { state: true },
    capacitors: { state: true },
  };
  static override styles = [
    common,
    fieldStyles,
    panelStyles,
    css`
      fieldset {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 16px;
        padding: 4px 0;
        border-bottom: 1px solid var(--hair);
        --label-width: 5.8em;
        --field-width: 6em;
      }
      th,
      td {
        white-space: nowrap;
      }
      thead th {
        white-space: normal;
        vertical-align: bottom;
      }
    `,
  ];

  /** Whose resistors. */
  declare base: 'A' | 'B' | 'found';
  declare capacitors: readonly Capacitor[];
  #desk!: PitchDesk;
  #design!: Selected<Design, Design>;
  #view!: Selected<PitchView, PitchView>;
  #playing!: Selected<Auditioned | null, Auditioned | null>;
  #asked: Asked | null = null;
  #found: readonly Compared[] = [];

  constructor() {
    super();
    this.base = 'A';
    this.capacitors = FIRST;
  }

  protected override bind(app: Lampnote): void {
    this.#desk = deskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
    this.#playing = new Selected(this, app.audition.playing, (playing) => playing);
  }

  protected override render(): TemplateResult {
    const design = this.#design.value;
    const parts = this.#parts(design);
    const { law, seed } = design.pitch.wish;
    const chip = chipOf(design);
    const voice = this.base === 'B' ? 'B' : 'A';
    const asked: Asked = [chip, chip.controlVolts[voice], parts, this.capacitors, { law, seed, kits: KITS }];
    // Drawn anew only when something else is asked: this panel is also shown anew at each step of a sound.
    if (!equalValues(asked, this.#asked)) this.#found = compareCapacitors(...asked);
    this.#asked = asked;
    const found = this.#found;
    const chosen = this.#desk.candidate(this.#view.value.chosen);
    const bases = (['A', 'B', 'found'] as const)
      .filter((base) => base !== 'found' || chosen)
      .map((base) => ({ value: base, label: words.bases[base] }));
    return html`<section aria-labelledby="compare">
      <h2 id="compare">${words.heading}</h2>
      <p class="small">${words.explain}</p>
      <choice-row
        legend=${words.base}
        .choices=${bases}
        value=${this.base === 'found' && !chosen ? 'A' : this.base}
        @choose=${({ detail }: CustomEvent<ChooseDetail>) => {
          this.base = detail.value as typeof this.base;
        }}
      ></choice-row>
      <p class="small">
        ${words.with(words.resistors(parts.ra.ohms, parts.rbFixed.ohms, parts.trimmer.ohms))}
      </p>
      ${this.capacitors.map((capacitor, n) => this.#fields(capacitor, n))}
      <div class="row">
        <button
          type="button"
          ?disabled=${this.capacitors.length >= COMPARED.max}
          @click=${() => {
            this.capacitors = [...this.capacitors, this.capacitors.at(-1)!];
          }}
        >
          ${words.add}
        </button>
      </div>
      ${found.length === 0 ? html`<p class="fault">${words.never}</p>` : this.#shown(found, design)}
    </section>`;
  }

  #parts(design: Design): VoiceParts {
    const chosen = this.base === 'found' ? this.#desk.candidate(this.#view.value.chosen) : null;
    return chosen ? chosen.parts.A : fittedParts(design, this.base === 'B' ? 'B' : 'A');
  }

  #fields(capacitor: Capacitor, n: number): TemplateResult {
    const change = (part: Partial<Capacitor>) => {
      this.capacitors = this.capacitors.map((one, i) => (i === n ? { ...one, ...part } : one));
    };
    const dielectrics = (Object.keys(DIELECTRICS) as DielectricId[]).map((id) => [id, DIELECTRIC_NAMES[id]]);
    return html`<fieldset>
      <legend class="visually-hidden">${words.value(n + 1)}</legend>
      <quantity-field
        label=${words.value(n + 1)}
        .value=${capacitor.farads}
        .format=${faradsText}
        .parse=${read.farads}
        @commit=${({ detail }: CustomEvent<CommitDetail>) => change({ farads: detail.value })}
      ></quantity-field>
      ${listRow(words.dielectric, dielectrics, capacitor.dielectric, (id) => {
        const dielectric = id as DielectricId;
        change({ dielectric, tolerance: DIELECTRICS[dielectric].tolerance });
      })}
      <quantity-field
        label=${words.tolerance}
        .value=${capacitor.tolerance}
        .format=${toleranceField}
        .parse=${read.share}
        @commit=${({ detail }: CustomEvent<CommitDetail>) => change({ tolerance: detail.value })}
      ></quantity-field>
      <button
        type="button"
        aria-label=${words.remove(n + 1)}
        ?disabled=${this.capacitors.length <= COMPARED.min}
        @click=${() => {
          this.capacitors = this.capacitors.filter((_, i) => i !== n);
        }}
      >
        ${words.removeShort}
      </button>
    </fieldset>`;
  }

  #shown(found: readonly Compared[], design: Design): TemplateResult {
    const names = found.map(({ parts }) => foundWords.capacitor(parts.capacitor));
    const { a4Hertz } = design.pitch.wish;
    const bars = found.map(({ nominal, easyPromised }, n) => ({
      key: String(n),
      label: names[n]!,
      voices: 'both' as const,
      nominal,
      sure: easyPromised,
      says: foundWords.span(nominal.lowHertz, nominal.highHertz),
      chosen: false,
      untuned: [],
    }));
    const { ruler } = foundWords;
    return html`<pitch-ruler
        .bars=${bars}
        .a4=${a4Hertz}
        .summary=${words.summary(names)}
        .hertzNumber=${foundWords.numberOf}
        .text=${{
          caption: words.caption(pitchWords.wish.laws[design.pitch.wish.law]),
          fileName: words.fileName,
          svgLabel: ruler.svg,
          csvLabel: ruler.csv,
          table: { toggle: words.table, heads: words.heads, rows: found.map(comparedRow) },
        }}
        @choose=${({ detail }: CustomEvent<ChooseDetail>) => this.#hear(Number(detail.value), found, design)}
      ></pitch-ruler>
      ${found.map((_, n) => html`<div class="row">${this.#buttons(n, names[n]!, found, design)}</div>`)}`;
  }

  #buttons(n: number, name: string, found: readonly Compared[], design: Design): TemplateResult {
    const candidate = asCandidate(found[n]!);
    const button = (id: string, label: string, make: () => Piece) => {
      const playing = this.#playing.value?.id === id;
      return html`<button
        type="button"
        aria-pressed=${playing}
        @click=${() => {
          if (playing) this.app.audition.stop();
          else void this.app.audition.play(id, make());
        }}
      >
        ${label}
      </button>`;
    };
    return html`${button(`compared-${n}`, words.hear(name), () => middlePiece(candidate, design))}
    ${button(`compared-sweep-${n}`, words.sweep(name), () => onlyA(sweepPiece(design, candidate)))}`;
  }

  #hear(n: number, found: readonly Compared[], design: Design): void {
    const one = found[n];
    if (one) void this.app.audition.play(`compared-${n}`, middlePiece(asCandidate(one), design));
  }
}

/** The same parts in both voices; one of them is heard. */
function asCandidate({ parts, middleHertz }: Compared): Candidate {
  return {
    parts: pairOf(() => parts),
    targets: pairOf(() => ({ lowHertz: middleHertz, highHertz: middleHertz })),
  };
}

const onlyA = (piece: Piece): Piece => heardAs(piece, 'A');

const middlePiece = (candidate: Candidate, design: Design): Piece => ({
  kind: 'steady',
  design: designAt(
    design,
    candidate,
    pairOf(() => 0.5),
  ),
  only: 'A',
});

function comparedRow({
  parts,
  nominal,
  easyPromised,
  middleHertz,
  worstCase,
  drift,
}: Compared): readonly string[] {
  const { numberOf, span, table, ruler, capacitor } = foundWords;
  const range = ({ lowCents, highCents }: DriftRange) => table.range(lowCents, highCents);
  return [
    capacitor(parts.capacitor),
    numberOf(nominal.lowHertz),
    numberOf(nominal.highHertz),
    easyPromised ? numberOf(easyPromised.lowHertz) : ruler.nothing,
    easyPromised ? numberOf(easyPromised.highHertz) : ruler.nothing,
    numberOf(middleHertz),
    span(worstCase.lowHertz, worstCase.highHertz),
    range(drift.warmRoom),
    range(drift.thumb),
    range(drift.year),
  ];
}

customElements.define('compare-panel', ComparePanel);

declare global {
  interface HTMLElementTagNameMap {
    'compare-panel': ComparePanel;
  }
}
