/** `<room-log-panel>`: a recorded day, its clock, and what it says of the setting. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Planning } from '../../app/planner.ts';
import type { OpenLog } from '../../app/playing-light.ts';
import { type RoomDesk, type RoomView, roomDeskOf } from '../../app/room-desk.ts';
import type { Session } from '../../app/session.ts';
import { inRoom, replaceReadings } from '../../design/room-commands.ts';
import type { RoomJob } from '../../plan/job.ts';
import type { LogVerdict } from '../../plan/measured-day.ts';
import { readingsFrom } from '../../plan/room-shown.ts';
import { describeWords } from '../../words/en-room.ts';
import { logWords } from '../../words/en-scenes.ts';
import { lightLogWords } from '../../words/light-log.ts';
import { AppElement } from '../app-element.ts';
import type { CommitDetail } from '../controls/events.ts';
import '../controls/quantity-field.ts';
import { readFile } from '../files.ts';
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
  #view!: Selected<RoomView, RoomView['startHour']>;
  #planning!: Selected<Planning<RoomJob>, Planning<RoomJob>>;

  protected override bind(app: Lampnote): void {
    this.#desk = roomDeskOf(app);
    this.#log = new Selected(this, app.session, (session) => session.log);
    this.#view = new Selected(this, this.#desk.view, (view) => view.startHour);
    this.#planning = new Selected(this, this.#desk.planner.state, (state) => state);
  }

  protected override render(): TemplateResult {
    const log = this.#log.value;
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.heading}</h2>
      <p class="small">${words.hint}</p>
      <div class="row"><button type="button" @click=${this.#open}>${logWords.open}</button></div>
      <p class="small">${logWords.drop}</p>
      ${log ? this.#opened(log) : html`<p class="muted">${logWords.none}</p>`}
    </section>`;
  }

  #opened(log: OpenLog): TemplateResult {
    const refusal = log.guess.ok
      ? log.reading?.ok === false
        ? log.reading.refusal
        : null
      : log.guess.refusal;
    if (refusal || !log.reading?.ok)
      return html`<p class="fault" role="alert">${log.name}: ${refusal ? lightLogWords.refusal(refusal) : ''}</p>`;
    const { clock } = this.#desk;
    const verdict = lastReport(this.#planning.value)?.log ?? null;
    return html`<p role="status">${log.name}: ${lightLogWords.kept(log.reading.kept, log.reading.dropped)}</p>
      <quantity-field
        label=${words.start}
        .value=${this.#view.value ?? clock ?? 0}
        .format=${hourText}
        .parse=${hourReader}
        .hint=${clock === null ? words.unknown : words.known(clock)}
        @commit=${({ detail }: CustomEvent<CommitDetail>) => this.#desk.show({ startHour: detail.value })}
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

  readonly #open = async (): Promise<void> => {
    const file = await readFile('.csv,.tsv,.txt,text/csv,text/plain');
    if (!file) return;
    this.#desk.show({ startHour: null });
    this.app.light.openLog(file.name, file.text);
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
