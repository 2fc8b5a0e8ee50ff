/** `<faults-panel>`: from what is heard and a few readings to a ranking of faults, what to mend and how to confirm. */
import { css, html, type TemplateResult } from 'lit';
import { keyed } from 'lit/directives/keyed.js';
import { type KitDesk, type KitView, kitDeskOf, type Worked } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Look, Session } from '../../app/session.ts';
import { railVolts } from '../../circuit/supply.ts';
import { BATCH_LIMITS } from '../../design/batch.ts';
import { inBatch, kitEntry, writeKit } from '../../design/batch-commands.ts';
import type { Design } from '../../design/design.ts';
import type { Planned } from '../../kit/board/plan-board.ts';
import { type EarAnswers, earKey, NOTHING } from '../../kit/fault-finder.ts';
import type { NamedFault, Ranked } from '../../kit/kit-tasks.ts';
import { LIGHTS, type Reading } from '../../kit/observe.ts';
import { impossibleAs, readMeter } from '../../kit/slip.ts';
import { VOICES } from '../../quantity/units.ts';
import { measured, shareWords, verdictWords } from '../../words/bench.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { earWords, faultWords, finderWords } from '../../words/faults.ts';
import { AppElement } from '../app-element.ts';
import type { CommitDetail, ReadText } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { fieldStyles, listRow } from '../fields.ts';
import { wholeField, wholeReader } from '../pitch/readers.ts';
import '../plots/board-picture.ts';
import { fitFor } from '../plots/board-shapes.ts';
import { Sheet } from '../plots/sheet.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { boardText } from './board-text.ts';
import { kitStyles } from './kit-styles.ts';
import { placesWords } from './part-words.ts';
import { probePlace, readingWords } from './probe-place.ts';
import { workFailed } from './work-failed.ts';

const words = kitViewWords.faults;
const SHOWN = 6;
/** Fewer candidates than this are one. */
const ONE_LEFT = 1.5;
const NOT_TRIED = '';
const readKit = wholeReader(BATCH_LIMITS.kitNumber);
const NOBODY: ReadonlySet<string> = new Set();
/** Everything faint, for a ring to stand out. */
const FAINT = { parts: NOBODY, links: NOBODY, cuts: false, hidden: null };

export class FaultsPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    kitStyles,
    css`
      .halves {
        --halves: minmax(0, 23em) minmax(0, 1fr);
        gap: 10px 40px;
      }
      .asks {
        display: grid;
        gap: 4px;
        --label-width: min(13em, 52%);
      }
      .next {
        margin: 14px 0;
        padding: 10px 14px;
        border: 1px solid var(--hair);
        border-left: var(--stroke-data) solid var(--accent);
        --label-width: 5em;
      }
      .next p {
        margin: 0 0 4px;
      }
      ol {
        margin: 6px 0;
        padding-left: 22px;
      }
      ol li {
        padding: 6px 0;
        border-bottom: 1px solid var(--hair);
      }
      li p {
        margin: 0;
      }
      .cut {
        padding: 8px 12px;
        border: 2px solid var(--fault);
        color: var(--fault);
        font-weight: 600;
      }
      ul {
        margin: 4px 0;
        padding-left: 18px;
      }
      .picture {
        overflow-x: auto;
        margin-top: 8px;
      }
      h3:first-child {
        margin-top: 0;
      }
      .paper {
        display: none;
      }
      @media print {
        .paper {
          display: block;
        }
      }
    `,
  ];

  #desk!: KitDesk;
  #design!: Selected<Design, Design>;
  #view!: Selected<KitView, KitView>;
  #ranked!: Selected<Worked<Ranked>, Worked<Ranked>>;
  #board!: Selected<Worked<Planned>, Worked<Planned>>;
  #look!: Selected<Session, Look>;
  readonly #sheet = new Sheet(this);

  protected override bind(app: Lampnote): void {
    this.#desk = kitDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
    this.#ranked = new Selected(this, this.#desk.ranked, (ranked) => ranked);
    this.#board = new Selected(this, this.#desk.board, (board) => board);
    this.#look = new Selected(this, app.session, (session) => session.look);
  }

  protected override updated(): void {
    this.#desk.follow(this.#design.value);
    this.#desk.findFault(this.#design.value);
  }

  protected override render(): TemplateResult {
    const { kit } = this.#view.value;
    const { last, isWorking, hasFailed } = this.#ranked.value;
    return html`<section class=${this.#look.value} aria-labelledby="faults">
      <div class="title">
        <h2 id="faults">${words.heading}</h2>
        <p class="paper">${words.kit(kit)}</p>
      </div>
      <div class="tools">
        <quantity-field
          label=${kitViewWords.slip.kit}
          .value=${kit}
          .format=${wholeField}
          .parse=${readKit}
          @commit=${({ detail }: CustomEvent<CommitDetail>) => this.#desk.show({ kit: detail.value })}
        ></quantity-field>
        <button type="button" @click=${() => this.#desk.show({ findings: NOTHING })}>${words.other}</button>
        <button type="button" @click=${() => window.print()}>${kitViewWords.print}</button>
      </div>
      <div class="halves">
        <div>${this.#asks()}</div>
        <div>
          <p class="muted" role="status">${isWorking ? (last === null ? words.working : words.reworking) : ''}</p>
          ${hasFailed ? workFailed(() => this.#desk.again('faults')) : ''}
          ${last === null ? '' : html`${this.#next(last)} ${this.#ranking(last)} ${this.#taken(last)}`}
        </div>
      </div>
    </section>`;
  }

  #asks(): TemplateResult {
    const { ear } = this.#view.value.findings;
    const list = (label: string, key: string, names: Readonly<Record<string, string>>) =>
      listRow(
        label,
        [[NOT_TRIED, words.notTried], ...Object.entries(names)],
        ear[key] ?? NOT_TRIED,
        (value) => this.#hear(key, value),
      );
    return html`<h3>${words.hear}</h3>
      <p class="small">${words.hearHint}</p>
      <div class="asks">
        ${LIGHTS.flatMap((light) =>
          VOICES.map((voice) =>
            list(words.heard(voice, words.light[light]), earKey(light, voice), words.hearings),
          ),
        )}
        ${VOICES.map((voice) => list(words.pitch(voice), `pitch ${voice}`, earWords.pitch))}
        ${VOICES.map((voice) => list(words.sweep(voice), `sweep ${voice}`, earWords.sweep))}
        ${list(words.start, 'start', earWords.start)}
      </div>`;
  }

  #hear(key: string, value: string): void {
    const { findings } = this.#view.value;
    const { [key]: _, ...others } = findings.ear;
    const ear = value === NOT_TRIED ? others : { ...others, [key]: value as EarAnswers[string] };
    this.#desk.show({ findings: { ...findings, ear } });
  }

  #next({ next, cutPower, left }: Ranked): TemplateResult {
    if (cutPower) return html`<p class="cut" role="alert">${finderWords.cutPower}</p>`;
    if (next === null) return html`<p class="next">${left < ONE_LEFT ? words.oneLeft : words.noNext}</p>`;
    const { reading, healthy, leftAfter } = next;
    const { last: planned } = this.#board.value;
    const place = planned?.ok ? probePlace(reading, planned.plan) : null;
    return html`<div class="next">
      <h3>${words.next}</h3>
      <p><strong>${readingWords(reading)}</strong></p>
      <p>${reading.point === 'current' ? words.current : place ? words.where(place.text) : ''}</p>
      <p class="small">${healthy === null ? '' : words.healthy(measured(healthy, reading.unit))} ${words.nextHint(leftAfter)}</p>
      ${keyed(
        reading.id,
        html`<quantity-field
        label=${words.reading}
        .value=${null}
        .format=${(value: number) => measured(value, reading.unit)}
        .parse=${meterReader(reading, this.#design.value.supply.volts)}
        @commit=${({ detail }: CustomEvent<CommitDetail>) => this.#read(reading.id, detail.value)}
      ></quantity-field>`,
      )}
      ${
        place && planned?.ok
          ? html`<div class="picture" tabindex="0" role="group" aria-label=${words.pictureLabel}>
              <board-picture
                .plan=${planned.plan}
                .pitch=${fitFor(planned.plan, Math.min(460, this.#sheet.width / 2), this.#textSize).pitch * 0.75}
                .textSize=${this.#textSize}
                .standing=${FAINT}
                .isBare=${true}
                .at=${place.at}
                label=${words.pictureLabel}
              ></board-picture>
            </div>`
          : ''
      }
    </div>`;
  }

  get #textSize(): number {
    return boardText(this.#look.value, this.#sheet.fontSize);
  }

  #read(id: string, value: number | null): void {
    const { findings } = this.#view.value;
    const { [id]: _, ...others } = findings.meter;
    this.#desk.show({
      findings: { ...findings, meter: value === null ? others : { ...others, [id]: value } },
    });
  }

  #ranking({ faults, left, contradictions, readings }: Ranked): TemplateResult {
    const { kit, findings } = this.#view.value;
    if (Object.keys(findings.ear).length + Object.keys(findings.meter).length === 0)
      return html`<h3>${words.ranking}</h3>
        <p>${words.sayFirst}</p>`;
    const [first, ...others] = faults.slice(0, SHOWN);
    const isOne = left < ONE_LEFT;
    const logged = kitEntry(this.#design.value.batch, kit).fault;
    const unexplained = contradictions.map((key) => {
      const reading = readings.find(({ id }) => id === key);
      return reading ? readingWords(reading) : key;
    });
    return html`<h3>${words.ranking}</h3>
      <p>${words.left(left, faults.length)}</p>
      ${
        unexplained.length > 0
          ? html`<p class="caution">${unexplained.length > 1 ? finderWords.contradictory : ''} ${words.contradicts} ${unexplained.join('; ')}.</p>`
          : ''
      }
      <ol>
        ${first ? this.#fault(first, kit, logged) : ''}
        ${isOne ? '' : others.map((fault) => this.#fault(fault, kit, logged))}
      </ol>
      ${
        isOne && others.length > 0
          ? html`<details class="screen">
              <summary>${words.others}</summary>
              <ol start="2">
                ${others.map((fault) => this.#fault(fault, kit, logged))}
              </ol>
            </details>`
          : ''
      }`;
  }

  #fault(fault: NamedFault, kit: number, logged: string | null): TemplateResult {
    const { id, kind, voice, link, share } = fault;
    const { name, mend, confirm } = faultWords(kind, voice, railVolts(this.#design.value.supply), link);
    const { last: planned } = this.#board.value;
    const places = planned?.ok ? placesWords(fault, planned.plan) : '';
    return html`<li>
      <p><strong>${name}</strong> <span class="muted">${words.sure(shareWords(share))}</span></p>
      ${places === '' ? '' : html`<p><em>${words.place}:</em> ${places}</p>`}
      <p><em>${words.mend}:</em> ${mend}</p>
      <p><em>${words.confirm}:</em> ${confirm}</p>
      ${
        kind === null
          ? ''
          : logged === id
            ? html`<p class="small" role="status">${words.logged(kit)}</p>`
            : html`<button
                class="screen"
                type="button"
                aria-label="${words.log(kit)}: ${name}"
                @click=${() => this.app.change(words.step(kit), inBatch(writeKit(kit, { fault: id })))}
              >
                ${words.log(kit)}
              </button>`
      }
    </li>`;
  }

  #taken({ readings }: Ranked): TemplateResult | string {
    const { meter } = this.#view.value.findings;
    const taken = readings.filter(({ id }) => meter[id] !== undefined);
    if (taken.length === 0) return '';
    return html`<h3>${words.taken}</h3>
      <ul>
        ${taken.map((reading) => {
          const what = readingWords(reading);
          return html`<li>
            ${what}: ${measured(meter[reading.id]!, reading.unit)}
            <button class="screen" type="button" @click=${() => this.#read(reading.id, null)}>
              ${words.takeAway(what)}
            </button>
          </li>`;
        })}
      </ul>`;
  }
}

function meterReader(reading: Reading, supplyVolts: number): ReadText {
  return (text) => {
    const read = readMeter(text, reading.unit);
    if (!read.ok) return { ok: false, message: kitViewWords.slip.unread(read.read.trim()) };
    const point = reading.point === 'plus' ? 'node' : reading.point;
    const why = impossibleAs(reading.unit, point, read.value, supplyVolts);
    return why === null
      ? { ok: true, value: read.value }
      : { ok: false, message: verdictWords({ kind: 'impossible', why }) };
  };
}

customElements.define('faults-panel', FaultsPanel);

declare global {
  interface HTMLElementTagNameMap {
    'faults-panel': FaultsPanel;
  }
}
