/** `<batch-panel>`: how many kits can be set, how many are right at one common mark, and what sorting gains. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Planning } from '../../app/planner.ts';
import { type RoomDesk, roomDeskOf } from '../../app/room-desk.ts';
import type { Design } from '../../design/design.ts';
import { PITCH_LIMITS } from '../../design/pitch.ts';
import type { RoomBatch, Spread } from '../../design/room.ts';
import { inRoom, setBatch } from '../../design/room-commands.ts';
import { ROOM_LIMITS } from '../../design/room-schema.ts';
import type { BatchComparison } from '../../plan/batch-room.ts';
import type { RoomJob } from '../../plan/job.ts';
import { describeWords } from '../../words/en-room.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { AppElement } from '../app-element.ts';
import { reader, voltsText } from '../edits.ts';
import { Fields, fieldStyles } from '../fields.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import '../plots/share-strip.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { plainField, shareField, shareReader, wholeReader } from './readers.ts';
import { lastReport } from './report.ts';
import { innerStyles } from './room-styles.ts';

const words = answerWords.batch;
const read = {
  kits: wholeReader(ROOM_LIMITS.kits),
  seed: wholeReader(PITCH_LIMITS.seed),
  tolerance: shareReader(ROOM_LIMITS.tolerance),
  offset: reader('voltage', ROOM_LIMITS.offsetVolts),
};

export class BatchPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    panelStyles,
    innerStyles,
    css`
      progress {
        width: min(14em, 100%);
        height: 12px;
        accent-color: var(--accent);
      }
    `,
  ];

  #desk!: RoomDesk;
  #batch!: Selected<Design, RoomBatch>;
  #planning!: Selected<Planning<RoomJob>, Planning<RoomJob>>;
  #fields!: Fields;

  protected override bind(app: Lampnote): void {
    this.#desk = roomDeskOf(app);
    this.#batch = new Selected(this, app.design, (design) => design.room.batch);
    this.#planning = new Selected(this, this.#desk.planner.state, (state) => state);
    this.#fields = new Fields(app, describeWords.step);
  }

  protected override render(): TemplateResult {
    const batch = this.#batch.value;
    const report = lastReport(this.#planning.value);
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      <div class="fields">
        ${this.#fields.quantity({ label: words.kits, value: batch.kits, read: read.kits, text: plainField, command: (kits) => inRoom(setBatch({ kits })) })}
        ${this.#fields.quantity({ label: words.seed, value: batch.seed, read: read.seed, text: plainField, command: (seed) => inRoom(setBatch({ seed })) })}
        ${this.#fields.list(words.spread, words.spreads, batch.spread, (spread) => inRoom(setBatch({ spread: spread as Spread })))}
        ${this.#fields.quantity({
          label: words.resistors,
          value: batch.resistorTolerance,
          read: read.tolerance,
          text: shareField,
          command: (resistorTolerance) => inRoom(setBatch({ resistorTolerance })),
        })}
        ${this.#fields.quantity({
          label: words.offset,
          value: batch.offsetVolts,
          read: read.offset,
          text: voltsText,
          command: (offsetVolts) => inRoom(setBatch({ offsetVolts })),
        })}
        <p class="small">${words.kitsHint}</p>
      </div>
      ${this.#progress()} ${report ? batchTable(report.batch) : html`<p class="muted">${answerWords.set.later}</p>`}
    </section>`;
  }

  #progress(): TemplateResult | string {
    const planning = this.#planning.value;
    if (planning.kind === 'stopped' || planning.kind === 'failed')
      return html`<div class="row">
        <p role="status" class=${planning.kind === 'failed' ? 'fault' : ''}>${words[planning.kind]}</p>
        <button type="button" @click=${() => this.#desk.again()}>${words.again}</button>
      </div>`;
    if (planning.kind !== 'working') return '';
    const { progress } = planning;
    const share = progress?.stage === 'kits' ? progress.share : 0;
    return html`<div class="row">
      <progress aria-label=${words.progressName} max="1" .value=${share}></progress>
      <span class="small">${words.progress(share)}</span>
      <button type="button" @click=${() => this.#desk.planner.stop()}>${words.stop}</button>
      ${planning.anew ? html`<p role="status">${words.anew}</p>` : ''}
    </div>`;
  }
}

function batchTable({ unsorted, sorted }: BatchComparison): TemplateResult {
  const row = (label: string, cells: readonly string[]) =>
    html`<tr>
      <th scope="row">${label}</th>
      ${cells.map((cell) => html`<td>${cell}</td>`)}
    </tr>`;
  const both = [unsorted, sorted];
  const { p5, p50, p95 } = unsorted.places;
  const mark = unsorted.marks[0]?.[0] ?? p50;
  return html`<table class="facts">
      <thead>
        <tr>
          <th scope="col"><span class="visually-hidden">${words.heading}</span></th>
          ${words.heads.slice(1).map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${row(
          words.settable,
          both.map(({ settableShare }) => words.percent(settableShare)),
        )}
        ${row(
          words.comfortable,
          both.map(({ comfortableShare }) => words.percent(comfortableShare)),
        )}
        ${row(
          words.mark,
          both.map(({ rightAtMarkShare }) => words.percent(rightAtMarkShare)),
        )}
        ${row(
          words.markAt,
          both.map(({ marks }) => words.marks(marks.flatMap((trimmers) => trimmers[0] ?? []))),
        )}
        ${row(
          words.spreadOf,
          both.map(({ places }) => words.places(places.p5, places.p95)),
        )}
      </tbody>
    </table>
    <p class="said">${words.gain(unsorted.settableShare, unsorted.rightAtMarkShare, sorted.rightAtMarkShare)}</p>
    <share-strip
      label=${words.strip}
      .low=${p5}
      .high=${p95}
      .mark=${mark}
      .summary=${words.stripSummary(p5, p50, p95)}
    ></share-strip>`;
}

customElements.define('batch-panel', BatchPanel);

declare global {
  interface HTMLElementTagNameMap {
    'batch-panel': BatchPanel;
  }
}
