/** `<room-log-panel>`: a recorded day, its clock, and what it says of the setting. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Planning } from '../../app/planner.ts';
import type { OpenLog } from '../../app/playing-light.ts';
import { type RoomDesk, roomDeskOf } from '../../app/room-desk.ts';
import type { Session } from '../../app/session.ts';
import { inRoom, replaceReadings } from '../../design/room-commands.ts';
import type { RoomJob } from '../../plan/job.ts';
import type { LogVerdict } from '../../plan/measured-day.ts';
import { readingsFrom } from '../../plan/room-shown.ts';
import { describeWords } from '../../words/en-room.ts';
import { AppElement } from '../app-element.ts';
import type { CommitDetail } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import '../listen/log-panel.ts';
import { panelStyles } from '../pitch/panel-styles.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { hourReader, hourText } from './readers.ts';
import { lastReport } from './report.ts';
import { innerStyles } from './room-styles.ts';

const words = describeWords.log;

export class RoomLogPanel extends AppElement {
  static override styles = [
    common,
    panelStyles,
    innerStyles,
    css`
      quantity-field {
        --label-width: 6em;
        --field-width: 5.4em;
      }
    `,
  ];

  #desk!: RoomDesk;
  #log!: Selected<Session, OpenLog | null>;
  #planning!: Selected<Planning<RoomJob>, Planning<RoomJob>>;

  protected override bind(app: Lampnote): void {
    this.#desk = roomDeskOf(app);
    this.#log = new Selected(this, app.session, (session) => session.log);
    new Selected(this, this.#desk.view, (view) => view.start);
    this.#planning = new Selected(this, this.#desk.planner.state, (state) => state);
  }

  protected override render(): TemplateResult {
    const log = this.#log.value;
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      <p class="small">${words.hint}</p>
      <log-panel .app=${this.app}></log-panel>
      ${log?.reading?.ok ? this.#read() : ''}
    </section>`;
  }

  #read(): TemplateResult {
    const { clock, startHour } = this.#desk;
    const verdict = lastReport(this.#planning.value)?.log ?? null;
    return html`<quantity-field
        label=${words.start}
        .value=${startHour}
        .format=${hourText}
        .parse=${hourReader}
        .hint=${clock === null ? words.unknown : words.known(clock)}
        @commit=${({ detail }: CustomEvent<CommitDetail>) => this.#desk.setStartHour(detail.value)}
      ></quantity-field>
      <div class="row">
        <button type="button" @click=${this.#take}>${words.take}</button>
        <p class="small">${words.takeHint}</p>
      </div>
      ${verdict ? verdictWords(verdict) : ''}`;
  }

  readonly #take = (): void => {
    const { day } = this.#desk;
    if (day === null) return;
    this.app.change(words.takeStep, (design) =>
      inRoom(replaceReadings(readingsFrom(day, design.room)))(design),
    );
  };
}

function verdictWords({
  rightShare,
  minutes,
  knownMinutes,
  phantomsPerHour,
  chatterSeconds,
}: LogVerdict): TemplateResult {
  return html`<p class="said">
    ${words.share(rightShare, minutes, knownMinutes)} ${words.phantoms(phantomsPerHour.A, phantomsPerHour.B)}
    ${chatterSeconds.A + chatterSeconds.B > 0 ? words.chatter(chatterSeconds.A, chatterSeconds.B) : ''}
  </p>`;
}

customElements.define('room-log-panel', RoomLogPanel);

declare global {
  interface HTMLElementTagNameMap {
    'room-log-panel': RoomLogPanel;
  }
}
