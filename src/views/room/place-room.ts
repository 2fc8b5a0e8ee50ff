/** `<place-room>`: the threshold set in advance, and how long it holds. Margin, day, answer, and the room described. */
import { html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { roomDeskOf } from '../../app/room-desk.ts';
import type { Look, Session } from '../../app/session.ts';
import type { Design } from '../../design/design.ts';
import type { RoomAnswer } from '../../plan/room-answer.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { AppElement } from '../app-element.ts';
import { Selected } from '../select.ts';
import { marginStyles } from '../theme/margin.ts';
import { common } from '../theme/shared.ts';
import './answer-panel.ts';
import './batch-panel.ts';
import './card-panel.ts';
import './cell-panel.ts';
import './day-panel.ts';
import './daylight-panel.ts';
import './event-panel.ts';
import './hear-panel.ts';
import './lamps-panel.ts';
import './meter-panel.ts';
import './parts-panel.ts';
import './readings-panel.ts';
import './room-log-panel.ts';
import { roomStyles } from './room-styles.ts';
import { whyWords } from './why.ts';

export class PlaceRoom extends AppElement {
  static override styles = [common, marginStyles, roomStyles];

  #design!: Selected<Design, Design>;
  #answer!: Selected<RoomAnswer | null, RoomAnswer | null>;
  #look!: Selected<Session, Look>;

  protected override bind(app: Lampnote): void {
    const desk = roomDeskOf(app);
    desk.enter();
    this.#design = new Selected(this, app.design, (design) => design);
    this.#answer = new Selected(this, desk.answer, (answer) => answer);
    this.#look = new Selected(this, app.session, (session) => session.look);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    // The first time `bind` does it, when the application is there.
    if (this.hasUpdated) roomDeskOf(this.app).enter();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    roomDeskOf(this.app).leave();
  }

  protected override render(): TemplateResult {
    const { app } = this;
    const [question, ...reasons] = whyWords(this.#design.value, this.#answer.value);
    return html`<main>
      <div class="page ${this.#look.value}">
        <section class="margin" aria-label=${answerWords.why.heading}>
          <p class="why">${question}</p>
          ${reasons.map((text) => html`<p>${text}</p>`)}
        </section>
        <day-panel .app=${app} @describe=${this.#describe}></day-panel>
        <answer-panel .app=${app}></answer-panel>
        <div class="panels">
          <readings-panel class="wide" .app=${app}></readings-panel>
          <div class="column">
            <lamps-panel .app=${app}></lamps-panel>
            <daylight-panel .app=${app}></daylight-panel>
            <room-log-panel .app=${app}></room-log-panel>
          </div>
          <event-panel .app=${app}></event-panel>
          <card-panel .app=${app}></card-panel>
          <div class="column">
            <meter-panel .app=${app}></meter-panel>
            <hear-panel .app=${app}></hear-panel>
          </div>
          <div class="column">
            <parts-panel .app=${app}></parts-panel>
            <cell-panel .app=${app}></cell-panel>
          </div>
          <batch-panel .app=${app}></batch-panel>
        </div>
      </div>
    </main>`;
  }

  /** "Change" beside the heading leads to where the room is described. */
  readonly #describe = (): void => {
    const panel = this.renderRoot.querySelector('readings-panel')!;
    panel.scrollIntoView({ block: 'start' });
    panel.enter();
  };
}

customElements.define('place-room', PlaceRoom);

declare global {
  interface HTMLElementTagNameMap {
    'place-room': PlaceRoom;
  }
}
