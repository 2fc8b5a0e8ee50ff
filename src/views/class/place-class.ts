/** `<place-class>`: the lessons, or the one under way, and what whoever teaches needs around them. */
import { html, type PropertyValues, type TemplateResult } from 'lit';
import { classDeskOf, type OpenLesson } from '../../app/class-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Look, Session } from '../../app/session.ts';
import type { Lesson } from '../../lesson/lesson.ts';
import { LESSON_DESIGN, LESSONS } from '../../lesson/lessons.ts';
import { filled } from '../../words/amounts.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import { AppElement } from '../app-element.ts';
import { cautionNote } from './cautions.ts';
import './class-link.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { classStyles } from './class-styles.ts';
import { canVibrate, GateTouch } from './gate-touch.ts';
import './hand-outs.ts';
import './lesson-player.ts';
import { PAGE, wordsOf } from './lesson-words.ts';
import { placeStyles } from './place-styles.ts';

export class PlaceClass extends AppElement {
  static override styles = [common, classStyles, placeStyles];

  #open!: Selected<OpenLesson | null, OpenLesson | null>;
  #session!: Selected<Session, Session>;
  /** The look from before the projector. */
  #lookBefore: Look = 'light';

  protected override bind(app: Lampnote): void {
    this.#open = new Selected(this, classDeskOf(app).open, (open) => open);
    this.#session = new Selected(this, app.session, (session) => session);
    new GateTouch(this, app.live, () => this.#session.value.vibrates);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener('fullscreenchange', this.#screenChanged);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('fullscreenchange', this.#screenChanged);
  }

  protected override render(): TemplateResult {
    const { language, look } = this.#session.value;
    return html`<main class=${look} lang=${language} @projector=${this.#projector}>
      ${this.#open.value ? html`<lesson-player .app=${this.app}></lesson-player>` : this.#list()}
    </main>`;
  }

  /** A lesson that a link asks for is opened once. */
  protected override updated(_changed: PropertyValues): void {
    const { lessonByLink } = this.#session.value;
    if (lessonByLink === null) return;
    this.app.setSession({ lessonByLink: null });
    const lesson = LESSONS.find(({ id }) => id === lessonByLink);
    if (lesson && this.#open.value?.lesson !== lesson) classDeskOf(this.app).begin(lesson, LESSON_DESIGN);
  }

  #list(): TemplateResult {
    const { language, presenterKeys, vibrates } = this.#session.value;
    const page = PAGE[language];
    const { present } = page;
    return html`<div class="page">
      <section aria-labelledby="lessons">
        <h2 id="lessons">${page.heading}</h2>
        <p class="why">${page.intro}</p>
        <ol class="lessons">${LESSONS.map((lesson) => this.#lesson(lesson))}</ol>
        ${cautionNote(['sound', 'headphones', 'light', 'camera'], language)}
      </section>
      <div class="aside">
        <section aria-labelledby="over">
          <h2 id="over">${page.handOver.heading}</h2>
          <class-link .app=${this.app}></class-link>
        </section>
        <section aria-labelledby="sheets">
          <h2 id="sheets">${page.sheets.heading}</h2>
          <hand-outs .app=${this.app}></hand-outs>
        </section>
        <section aria-labelledby="present">
          <h2 id="present">${page.settings}</h2>
          <p><button type="button" aria-pressed=${this.#session.value.look === 'projector'} @click=${this.#projector}>${this.#session.value.look === 'projector' ? present.projectorEnd : present.projector}</button></p>
          <h3>${present.keysHeading}</h3>
          <dl class="keys">
            ${present.keys.map(([key, does]) => html`<div><dt>${key}</dt><dd>${does}</dd></div>`)}
          </dl>
          <label class="switch">
            <input
              type="checkbox"
              .checked=${presenterKeys}
              @change=${(event: Event) =>
                this.app.setSession({ presenterKeys: (event.currentTarget as HTMLInputElement).checked })}
            />
            ${present.keysOn}
          </label>
          ${
            canVibrate()
              ? html`<label class="switch">
                    <input
                      type="checkbox"
                      .checked=${vibrates}
                      @change=${(event: Event) =>
                        this.app.setSession({ vibrates: (event.currentTarget as HTMLInputElement).checked })}
                    />
                    ${present.vibrate}
                  </label>
                  <p class="small">${present.vibrateHint}</p>`
              : html`<p class="small">${present.noVibrate}</p>`
          }
        </section>
      </div>
    </div>`;
  }

  #lesson(lesson: Lesson): TemplateResult {
    const { language } = this.#session.value;
    const page = PAGE[language];
    const { title, aim } = wordsOf(lesson, language);
    const left = classDeskOf(this.app).leftAt(lesson);
    const of = lesson.steps.length;
    const goesOn = left !== null && !left.finished;
    const minutes = filled(language, CLASS_WORDS[language].minutes, {
      minutes: { kind: 'count', value: lesson.minutes },
    });
    return html`<li>
      <div>
        <h3>${title}</h3>
        <p>${aim}</p>
        <p class="small">${minutes}</p>
      </div>
      <button
        type="button"
        aria-label=${goesOn ? page.goOn(title, left.step + 1, of) : page.begin(title)}
        @click=${() => classDeskOf(this.app).begin(lesson, LESSON_DESIGN)}
      >
        ${goesOn ? page.short.goOn(left.step + 1, of) : page.short.begin}
      </button>
    </li>`;
  }

  /** One press: black on white, large, and nothing on the screen but the lesson. */
  readonly #projector = (): void => {
    const { look } = this.#session.value;
    if (look === 'projector') {
      this.app.setSession({ look: this.#lookBefore });
      if (document.fullscreenElement) void document.exitFullscreen();
      return;
    }
    this.#lookBefore = look;
    this.app.setSession({ look: 'projector' });
    // Where the browser gives no full screen the lesson is at least in sight.
    const whole = this.requestFullscreen?.() ?? Promise.reject(new Error('no full screen'));
    whole.catch(() => this.scrollIntoView());
  };

  /** Escape ends the full screen, and the projector with it. */
  readonly #screenChanged = (): void => {
    if (document.fullscreenElement === null && this.#session.value.look === 'projector')
      this.app.setSession({ look: this.#lookBefore });
  };
}

customElements.define('place-class', PlaceClass);

declare global {
  interface HTMLElementTagNameMap {
    'place-class': PlaceClass;
  }
}
