/** `<event-panel>`: what should gate, what must not, and how both go in time. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Planning } from '../../app/planner.ts';
import { roomDeskOf } from '../../app/room-desk.ts';
import type { Design } from '../../design/design.ts';
import { ROOM_EVENTS, type Room, type RoomEvent, type RoomEventKind } from '../../design/room.ts';
import {
  addPhantom,
  changePhantom,
  chooseEvent,
  inRoom,
  removePhantom,
  replacePhantom,
  setEvent,
  setRoom,
} from '../../design/room-commands.ts';
import { ROOM_LIMITS, ROOM_MOST } from '../../design/room-schema.ts';
import { shadeLeft } from '../../plan/event.ts';
import type { RoomJob } from '../../plan/job.ts';
import type { RoomAnswer } from '../../plan/room-answer.ts';
import type { RoomReport } from '../../plan/room-report.ts';
import { VOICES } from '../../quantity/units.ts';
import { describeWords } from '../../words/en-room.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { AppElement } from '../app-element.ts';
import { Fields, fieldStyles, listRow } from '../fields.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { eventFields } from './event-fields.ts';
import { lengthReader, metresField } from './readers.ts';
import { lastReport } from './report.ts';
import { innerStyles } from './room-styles.ts';

const words = describeWords.event;
const timing = answerWords.timing;
const readBore = lengthReader(ROOM_LIMITS.boreMetres);
const readDepth = lengthReader(ROOM_LIMITS.depthMetres);
/** What a first tube is: a pen's barrel. */
const TUBE = { boreRadiusMetres: 0.005, depthMetres: 0.03 } as const;

export class EventPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    panelStyles,
    innerStyles,
    css`
      details {
        padding: 4px 0;
        border-bottom: 1px solid var(--hair);
      }
      .phantom {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: 4px 12px;
      }
      .phantom p {
        margin: 0;
      }
      label.list {
        --label-width: 4.4em;
      }
    `,
  ];

  #room!: Selected<Design, Room>;
  #answer!: Selected<RoomAnswer | null, RoomAnswer | null>;
  #planning!: Selected<Planning<RoomJob>, Planning<RoomJob>>;
  #fields!: Fields;

  protected override bind(app: Lampnote): void {
    const desk = roomDeskOf(app);
    this.#room = new Selected(this, app.design, (design) => design.room);
    this.#answer = new Selected(this, desk.answer, (answer) => answer);
    this.#planning = new Selected(this, desk.planner.state, (state) => state);
    this.#fields = new Fields(app, describeWords.step);
  }

  protected override render(): TemplateResult {
    const room = this.#room.value;
    const { event, phantoms } = room;
    const report = this.#answer.value === null ? null : lastReport(this.#planning.value);
    const full = phantoms.length >= ROOM_MOST.phantoms;
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      ${this.#fields.list(words.is, words.kinds, event.kind, (kind) => inRoom(chooseEvent(kind as RoomEventKind)))}
      <div class="fields">
        ${eventFields(this.#fields, event, (change) => inRoom(setEvent(event.kind, change)))} ${this.#tube(room)}
        <p class="said">${words.leaves(shadeLeft(event, room.tube).A)} ${this.#readShares()}</p>
      </div>
      ${report ? timingTable(report) : ''}
      <h3>${words.phantoms}</h3>
      <p class="small">${words.phantomsHint}</p>
      ${phantoms.length === 0 ? html`<p class="muted">${words.none}</p>` : ''}
      ${phantoms.map((phantom, i) => this.#phantom(phantom, i, report))}
      <div class="row">
        <button
          type="button"
          ?disabled=${full}
          @click=${() => this.app.change(describeWords.step(words.add), inRoom(addPhantom(ROOM_EVENTS.person)))}
        >
          ${words.add}
        </button>
        ${full ? html`<p class="small">${words.full}</p>` : ''}
      </div>
    </section>`;
  }

  #readShares(): string {
    const sensors = this.#answer.value?.light.sensors;
    return VOICES.flatMap((voice) =>
      sensors?.[voice].shadeFrom === 'readings' ? [words.fromReadings(voice, sensors[voice].shadeShare)] : [],
    ).join(' ');
  }

  #tube({ tube }: Room): TemplateResult {
    return html`${this.#fields.tick(words.tube, tube !== null, (on) => inRoom(setRoom({ tube: on ? TUBE : null })))}
    ${
      tube === null
        ? ''
        : html`${this.#fields.quantity({
            label: words.bore,
            value: tube.boreRadiusMetres,
            read: readBore,
            text: metresField,
            command: (boreRadiusMetres) => inRoom(setRoom({ tube: { ...tube, boreRadiusMetres } })),
          })}
          ${this.#fields.quantity({
            label: words.depth,
            value: tube.depthMetres,
            read: readDepth,
            text: metresField,
            command: (depthMetres) => inRoom(setRoom({ tube: { ...tube, depthMetres } })),
          })}`
    }`;
  }

  #phantom(phantom: RoomEvent, index: number, report: RoomReport | null): TemplateResult {
    const name = words.kinds[phantom.kind];
    const verdicts = report?.phantoms[index];
    return html`<details>
      <summary>
        ${timing.phantom(name, index + 1)}${
          verdicts
            ? html`:
                ${VOICES.map(
                  (voice) =>
                    html`<span class=${verdicts[voice].kind === 'gates' ? 'fault' : ''}>
                      ${voice} ${timing.verdict(verdicts[voice])}${voice === 'A' ? ';' : '.'}
                    </span>`,
                )}`
            : ''
        }
      </summary>
      <div class="phantom">
        ${listRow(words.is, Object.entries(words.kinds), phantom.kind, (kind) =>
          this.app.change(
            describeWords.step(words.phantoms),
            inRoom(replacePhantom(index, ROOM_EVENTS[kind as RoomEventKind])),
          ),
        )}
        <button
          type="button"
          aria-label=${words.remove(timing.phantom(name, index + 1))}
          @click=${() => this.app.change(describeWords.step(words.remove(name)), inRoom(removePhantom(index)))}
        >
          ${words.removeShort}
        </button>
      </div>
      <div class="fields">
        ${eventFields(this.#fields, phantom, (change) => inRoom(changePhantom(index, change as Partial<RoomEvent>)))}
      </div>
    </details>`;
  }
}

function timingTable({ event }: RoomReport): TemplateResult {
  const { voices, works, heardSeconds, bAfterA } = event;
  const row = (label: string, cell: (voice: 'A' | 'B') => string) =>
    html`<tr>
      <th scope="row">${label}</th>
      ${VOICES.map((voice) => html`<td>${cell(voice)}</td>`)}
    </tr>`;
  const timed = (print: (timing: NonNullable<(typeof voices)['A']>) => string) => (voice: 'A' | 'B') =>
    voices[voice] === null ? timing.silent : print(voices[voice]);
  return html`<h3>${timing.heading}</h3>
    <table class="facts">
      <thead>
        <tr>
          <th scope="col"><span class="visually-hidden">${timing.heading}</span></th>
          ${VOICES.map((voice) => html`<th scope="col">${voice}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${row(
          timing.note,
          timed(({ shortestNote }) => timing.length(shortestNote)),
        )}
        ${row(
          timing.gap,
          timed(({ shortestGap }) => timing.length(shortestGap)),
        )}
        ${row(
          timing.fastest,
          timed(({ fastestHertz }) => timing.rate(fastestHertz)),
        )}
        ${row(
          timing.longer,
          timed(({ longerBy }) => timing.longerBy(longerBy)),
        )}
        ${row(timing.heard, (voice) => {
          const long = heardSeconds[voice];
          return long !== null && Number.isFinite(long) ? timing.length(long) : '–';
        })}
        ${row(timing.every, (voice) => timing.works[works[voice] ? 'true' : 'false'])}
      </tbody>
    </table>
    <p class="said">${timing.order(bAfterA)}</p>`;
}

customElements.define('event-panel', EventPanel);

declare global {
  interface HTMLElementTagNameMap {
    'event-panel': EventPanel;
  }
}
