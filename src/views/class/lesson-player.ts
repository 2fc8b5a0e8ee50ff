/** `<lesson-player>`: a lesson under way: the picture above, the step beneath it, then what whoever presents may press. */
import { html, type PropertyValues, type TemplateResult } from 'lit';
import { classDeskOf, type OpenLesson } from '../../app/class-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Session } from '../../app/session.ts';
import type { SoundState } from '../../app/sound-desk.ts';
import type { ControlId } from '../../lesson/controls.ts';
import { ALL_SHOWN } from '../../lesson/lesson.ts';
import { shownVoices } from '../../lesson/picture.ts';
import { recordOf, stepOf } from '../../lesson/progress.ts';
import { VOICES } from '../../quantity/units.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import type { Language } from '../../words/spoken.ts';
import { AppElement } from '../app-element.ts';
import { cautionNote } from './cautions.ts';
import './class-controls.ts';
import { classStyles } from './class-styles.ts';
import { PAGE, stepWords, wordsOf } from './lesson-words.ts';
import { notesOf } from './notes.ts';
import { NotesWindow } from './notes-window.ts';
import './picture-panel.ts';
import { playerStyles } from './player-styles.ts';
import { presenterBar } from './presenter-bar.ts';
import { keyOf, type PresenterAct, PresenterKeys } from './presenter-keys.ts';
import './step-panel.ts';
import { fire } from '../controls/events.ts';
import { printOnly } from '../print-only.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';

export class LessonPlayer extends AppElement {
  static override properties = {
    ...AppElement.properties,
    algebra: { state: true },
    notesHere: { state: true },
    told: { state: true },
  };
  static override styles = [common, classStyles, playerStyles];

  declare algebra: boolean;
  /** No second window: the notes stand on the page. */
  declare notesHere: boolean;
  declare told: string;

  #open!: Selected<OpenLesson | null, OpenLesson | null>;
  #session!: Selected<Session, Session>;
  #sound!: Selected<SoundState, SoundState>;
  readonly #notes = new NotesWindow();
  #where = '';

  constructor() {
    super();
    this.algebra = false;
    this.notesHere = false;
    this.told = '';
  }

  protected override bind(app: Lampnote): void {
    this.#open = new Selected(this, classDeskOf(app).open, (open) => open);
    this.#session = new Selected(this, app.session, (session) => session);
    this.#sound = new Selected(this, app.sound.state, (sound) => sound);
    new PresenterKeys(
      this,
      () => this.#session.value.presenterKeys,
      (act) => this.#act(act),
    );
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#notes.close();
  }

  get #page() {
    return PAGE[this.#session.value.language];
  }

  protected override render(): TemplateResult {
    const open = this.#open.value;
    if (open === null) return html``;
    const { lesson, progress } = open;
    const { language, look } = this.#session.value;
    const step = stepOf(lesson, progress);
    const free = progress.mode === 'free';
    return html`<article class=${look} lang=${language} aria-labelledby="lesson">
      <header>
        <h2 id="lesson" tabindex="-1">${wordsOf(lesson, language).title}</h2>
        <span class="muted">${free ? CLASS_WORDS[language].go.free : this.#page.step(progress.step + 1, lesson.steps.length)}</span>
      </header>
      <picture-panel
        class=${look}
        .app=${this.app}
        .voices=${free ? VOICES : shownVoices(step.voices)}
        .stages=${free ? ALL_SHOWN : step.stages}
        .step=${`${lesson.id} ${step.id} ${progress.mode}`}
      ></picture-panel>
      ${free ? this.#free() : progress.finished ? this.#finished(open) : this.#step(open)}
      ${presenterBar({
        progress,
        session: this.#session.value,
        sound: this.#sound.value.kind,
        algebra: this.algebra,
        desk: classDeskOf(this.app),
        act: (act) => this.#act(act),
        write: (algebra) => {
          this.algebra = algebra;
        },
        printNotes: this.#printNotes,
      })}
      <details class="mind">
        <summary>${CLASS_WORDS[language].parts.cautions}</summary>
        ${cautionNote(lesson.cautions, language)}
      </details>
      ${this.notesHere ? this.#notesOnPage(open, language) : ''}
      <p class="visually-hidden" role="status">${this.told}</p>
    </article>`;
  }

  #step({ lesson, progress }: OpenLesson): TemplateResult {
    const { phase } = recordOf(lesson, progress);
    // Predict first, then try.
    const tries = phase === 'try' || phase === 'reveal';
    return html`<step-panel class=${this.#session.value.look} .app=${this.app} .algebra=${this.algebra}>
      ${tries ? this.#touch(stepOf(lesson, progress).controls) : ''}
    </step-panel>`;
  }

  #touch(controls: readonly ControlId[]): TemplateResult {
    const { controls: says } = this.#page;
    return controls.length === 0
      ? html`<p class="muted">${says.none}</p>`
      : html`<section aria-label=${says.heading}>
          <class-controls .app=${this.app} .allowed=${controls}></class-controls>
        </section>`;
  }

  #free(): TemplateResult {
    const { language, presenterKeys } = this.#session.value;
    return html`<section aria-label=${this.#page.controls.heading}>
      <p>${this.#page.freeText}</p>
      <p>
        <button type="button" @click=${() => this.#act('free')}>
          ${CLASS_WORDS[language].go.toLesson}${presenterKeys ? keyOf('F') : ''}
        </button>
      </p>
      <class-controls .app=${this.app} .allowed=${null}></class-controls>
    </section>`;
  }

  #finished({ lesson }: OpenLesson): TemplateResult {
    const { language } = this.#session.value;
    return html`<section role="status">
      <h3>${this.#page.finished}</h3>
      <p>${this.#page.finishedText} ${wordsOf(lesson, language).aim}</p>
    </section>`;
  }

  /** The class does not get to read them on the wall. */
  #notesOnPage(open: OpenLesson, language: Language): TemplateResult {
    const { present } = this.#page;
    return this.#session.value.look === 'projector'
      ? html`<p class="remark fault" role="alert">${present.notesNotProjected}</p>`
      : html`<aside class="notes"><p class="fault">${present.notesBlocked}</p>${notesOf(open, language)}</aside>`;
  }

  #act(act: PresenterAct): void {
    const desk = classDeskOf(this.app);
    const acts: Readonly<Record<PresenterAct, () => unknown>> = {
      advance: () => desk.advance(),
      back: () => desk.back(),
      show: () => desk.showAnyway(),
      free: () => desk.toggleFree(),
      reset: () => desk.resetBench(),
      projector: () => fire(this, 'projector', null),
      notes: () => this.#openNotes(),
      sound: () => this.#toggleSound(),
    };
    acts[act]();
  }

  #toggleSound(): void {
    const { kind } = this.#sound.value;
    if (this.#session.value.soundByLink === 'off') return;
    if (kind === 'off') void this.app.sound.on();
    else void this.app.sound.off();
  }

  #openNotes(): void {
    this.notesHere = !this.#notes.open(this.#page.present.notes) && !this.notesHere;
    this.#showNotes();
  }

  #showNotes(): void {
    if (this.#open.value && this.#notes.isOpen)
      this.#notes.show(notesOf(this.#open.value, this.#session.value.language));
  }

  readonly #printNotes = (): void => {
    if (this.#open.value) void printOnly(notesOf(this.#open.value, this.#session.value.language));
  };

  protected override updated(_changed: PropertyValues): void {
    this.#showNotes();
    const open = this.#open.value;
    if (open === null) return;
    const { lesson, progress } = open;
    const { phase } = recordOf(lesson, progress);
    const where = `${progress.mode} ${progress.step} ${phase} ${progress.finished}`;
    if (where === this.#where) return;
    const before = this.#where.split(' ');
    this.#where = where;
    void (before.length < 2 ? this.#arrive() : this.#told(open, before));
  }

  /** Reading goes on from the step's title: the button that was pressed is gone. It is projected from its top. */
  async #arrive(): Promise<void> {
    const panel = this.renderRoot.querySelector('step-panel');
    await panel?.updateComplete;
    if (this.#session.value.look === 'projector' || this.getBoundingClientRect().top < 0)
      this.scrollIntoView();
    const lost = this.renderRoot instanceof ShadowRoot && this.renderRoot.activeElement === null;
    if (!lost || document.activeElement === null) return;
    if (panel) panel.focusHead();
    else this.renderRoot.querySelector('h2')?.focus({ preventScroll: true });
  }

  /** Another step is told, and the focus goes on with it. */
  async #told({ lesson, progress }: OpenLesson, [mode, step]: readonly string[]): Promise<void> {
    const { language } = this.#session.value;
    const page = this.#page;
    if (mode !== progress.mode)
      this.told = progress.mode === 'free' ? page.announceFree : page.announceLesson;
    else if (step !== String(progress.step))
      this.told = page.announceStep(
        progress.step + 1,
        lesson.steps.length,
        stepWords(lesson, stepOf(lesson, progress), language).title,
      );
    if (progress.finished) this.told = page.finished;
    await this.#arrive();
  }
}

customElements.define('lesson-player', LessonPlayer);

declare global {
  interface HTMLElementTagNameMap {
    'lesson-player': LessonPlayer;
  }
}
