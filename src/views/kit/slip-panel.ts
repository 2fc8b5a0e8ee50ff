/** `<slip-panel>`: what the meter should show on this design, and what the typed readings of one kit mean. */
import { css, html, type TemplateResult } from 'lit';
import { type KitDesk, type KitView, kitDeskOf, planNow, type Worked } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import { BATCH_LIMITS } from '../../design/batch.ts';
import { inBatch, kitEntry, writeKit, writeReading } from '../../design/batch-commands.ts';
import type { Design } from '../../design/design.ts';
import { equalValues } from '../../design/entries.ts';
import type { Planned } from '../../kit/board/plan-board.ts';
import { impossibleAs, judge, readMeter, type Slip, type SlipRow, slipOf } from '../../kit/slip.ts';
import { measured, measuredRange, slipPointWords, verdictWords } from '../../words/bench.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { AppElement } from '../app-element.ts';
import type { CommitDetail, ReadText } from '../controls/events.ts';
import { reader } from '../edits.ts';
import { fieldStyles } from '../fields.ts';
import '../controls/quantity-field.ts';
import { numberField, wholeField, wholeReader } from '../pitch/readers.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { kitStyles } from './kit-styles.ts';
import { netHole, slipHole } from './probe-place.ts';

const words = kitViewWords.slip;
const readKit = wholeReader(BATCH_LIMITS.kitNumber);
const readLux = reader('illuminance', { min: 0.1, max: 100_000 });
const luxText = (value: number): string => numberField(value, 4);

export class SlipPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    kitStyles,
    css`
      td.box {
        --field-width: 6.5em;
        padding-top: 0;
        min-width: 9em;
        max-width: 16em;
      }
      th[scope='row'] {
        font-weight: 400;
      }
      td,
      th[scope='row'] {
        font-size: var(--text-control);
      }
      .hole {
        color: var(--muted);
        font-size: var(--text-small);
        white-space: nowrap;
      }
      .good {
        color: var(--good);
      }
      .off {
        color: var(--fault);
        font-weight: 600;
      }
      @media print {
        .box quantity-field {
          display: none;
        }
        td,
        th[scope='row'] {
          font-size: 9.5pt;
        }
      }
      .paper,
      .paper-line {
        display: none;
      }
      @media print {
        .paper-line {
          display: block;
        }
        .paper {
          display: block;
          min-height: 5mm;
          border-bottom: 0.3mm dotted #000000;
        }
      }
    `,
  ];

  #desk!: KitDesk;
  #design!: Selected<Design, Design>;
  #view!: Selected<KitView, KitView>;
  #board!: Selected<Worked<Planned>, Worked<Planned>>;
  #slip: { readonly asked: readonly unknown[]; readonly slip: Slip } | null = null;

  protected override bind(app: Lampnote): void {
    this.#desk = kitDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
    this.#board = new Selected(this, this.#desk.board, (board) => board);
  }

  protected override updated(): void {
    this.#desk.follow(this.#design.value);
  }

  protected override render(): TemplateResult {
    const { kit, bench } = this.#view.value;
    const design = this.#design.value;
    const entry = kitEntry(design.batch, kit);
    const readings = new Map(entry.readings.map(({ point, value }) => [point, value]));
    const slip = this.#told(design, readings.get(RAIL_KEY) ?? null);
    const read = slip.rows.filter(({ key }) => readings.has(key));
    const good = read.filter(
      (row) => judge(row, readings.get(row.key)!, design.supply.volts).kind === 'good',
    );
    const plan = planNow(this.#board.value);
    const ground = plan === null ? '' : netHole('ground', plan);
    return html`<section aria-labelledby="slip">
      <div class="title">
        <h2 id="slip">${words.heading}</h2>
        <p class="muted">${words.rail(measured(slip.railVolts, 'V'))}</p>
      </div>
      <div class="tools">
        ${this.#number(words.kit, kit, readKit, wholeField, '', (value) => this.#desk.show({ kit: value }))}
        ${this.#number(words.lit, bench.lit, readLux, luxText, words.lux, (lit) =>
          this.#desk.show({ bench: { ...bench, lit } }),
        )}
        ${this.#number(words.shaded, bench.shaded, readLux, luxText, words.lux, (shaded) =>
          this.#desk.show({ bench: { ...bench, shaded } }),
        )}
        <button
          type="button"
          ?disabled=${readings.size === 0}
          @click=${() => this.app.change(words.clear, inBatch(writeKit(kit, { readings: [] })))}
        >
          ${words.clear}
        </button>
        <button type="button" @click=${() => window.print()}>${kitViewWords.print}</button>
      </div>
      <p class="paper-line">
        ${words.paper(kit, luxText(bench.lit), luxText(bench.shaded))} ${ground === '' ? '' : words.black(ground)}
      </p>
      <p role="status" class=${read.length === 0 ? 'screen' : ''}>
        ${read.length === 0 ? words.none : words.good(good.length, read.length)}
      </p>
      <div class="scroll" tabindex="0" role="group" aria-label=${words.caption}>
        <table class="narrow-table">
          <thead>
            <tr>
              ${words.heads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${slip.rows.map((row) => this.#row(row, readings.get(row.key) ?? null, design, kit))}
          </tbody>
        </table>
      </div>
    </section>`;
  }

  #row(row: SlipRow, reading: number | null, design: Design, kit: number): TemplateResult {
    const where = slipPointWords(row.point, row.voice, row.light);
    const verdict = reading === null ? null : judge(row, reading, design.supply.volts);
    const plan = planNow(this.#board.value);
    const hole = plan === null ? '' : slipHole(design, row, plan);
    return html`<tr>
      <th scope="row">${where} <span class="hole">${hole === '' ? '' : `· ${hole}`}</span></th>
      <td>${measured(row.value, row.unit)}</td>
      <td>${measuredRange(row.least, row.most, row.unit)}</td>
      <td class="box">
        <quantity-field
          label=${words.reading(where)}
          label-hidden
          .value=${reading}
          .format=${(value: number) => measured(value, row.unit)}
          .parse=${readingReader(row, design.supply.volts)}
          @commit=${({ detail }: CustomEvent<CommitDetail>) =>
            this.app.change(
              words.step(where),
              inBatch(writeReading(kit, row.key, Number.isNaN(detail.value) ? null : detail.value)),
            )}
        ></quantity-field>
        <span class="paper">${reading === null ? '' : measured(reading, row.unit)}</span>
      </td>
      <td class=${verdict === null ? '' : verdict.kind === 'good' ? 'good' : 'off'} aria-live="polite">
        ${verdict === null ? '' : verdictWords(verdict)}
      </td>
    </tr>`;
  }

  #number(
    label: string,
    value: number,
    read: ReadText,
    text: (value: number) => string,
    unit: string,
    take: (value: number) => void,
  ): TemplateResult {
    return html`<quantity-field
      label=${label}
      unit=${unit}
      .value=${value}
      .format=${text}
      .parse=${read}
      @commit=${({ detail }: CustomEvent<CommitDetail>) => take(detail.value)}
    ></quantity-field>`;
  }

  /** Kept while what it is told for stays the same: what the bench writes down changes nothing of it. */
  #told(design: Design, rail: number | null): Slip {
    const { bench } = this.#view.value;
    const { batch: _, pitch: _p, room: _r, name: _n, notes: _t, ...circuit } = design;
    const asked = [circuit, bench, rail];
    if (this.#slip === null || !equalValues(asked, this.#slip.asked))
      this.#slip = { asked, slip: slipOf(design, bench, rail) };
    return this.#slip.slip;
  }
}

/** Where the rail itself stands on the slip. */
const RAIL_KEY = 'rail  any';

/** An emptied box takes the reading away (told as no number); what no board can show is asked for again. */
function readingReader(row: SlipRow, supplyVolts: number): ReadText {
  return (text) => {
    if (text.trim() === '') return { ok: true, value: Number.NaN };
    const reading = readMeter(text, row.unit);
    if (!reading.ok) return { ok: false, message: words.unread(reading.read.trim()) };
    const why = impossibleAs(row.unit, row.point, reading.value, supplyVolts);
    return why === null
      ? { ok: true, value: reading.value }
      : { ok: false, message: verdictWords({ kind: 'impossible', why }) };
  };
}

customElements.define('slip-panel', SlipPanel);

declare global {
  interface HTMLElementTagNameMap {
    'slip-panel': SlipPanel;
  }
}
