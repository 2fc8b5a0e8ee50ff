/**
 * `<step-panel>`: a step, told at the left and done at the right: notice, question with its show of hands, task beside its
 * controls (its content), what came out. The way on stays in sight beneath.
 */
import { html, type TemplateResult } from 'lit';
import { classDeskOf, type OpenLesson } from '../../app/class-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Session } from '../../app/session.ts';
import type { SoundState } from '../../app/sound-desk.ts';
import type { Question, Step } from '../../lesson/lesson.ts';
import { isMet, recordOf, type StepRecord, stepOf } from '../../lesson/progress.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import type { StepWords } from '../../words/lesson-words.ts';
import type { Language } from '../../words/spoken.ts';
import { AppElement } from '../app-element.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { handsShown, optionsOf } from './answers.ts';
import { cautionNote } from './cautions.ts';
import { classStyles } from './class-styles.ts';
import { answerWords, PAGE, stepWords, verdictWords } from './lesson-words.ts';
import './place-guess.ts';
import './sketch-guess.ts';
import { volumeSlider } from '../volume.ts';
import { keyOf } from './presenter-keys.ts';
import { stepStyles } from './step-styles.ts';

/** One phase of a step, in the parts it is laid out by. */
interface Phased {
  readonly tells: TemplateResult | readonly TemplateResult[];
  readonly does: TemplateResult;
  readonly acts: TemplateResult;
}

export class StepPanel extends AppElement {
  static override properties = { ...AppElement.properties, algebra: { type: Boolean } };
  static override styles = [common, classStyles, stepStyles];

  /** Formulas are shown as algebra. */
  declare algebra: boolean;
  #open!: Selected<OpenLesson | null, OpenLesson | null>;
  #session!: Selected<Session, Session>;
  #sound!: Selected<SoundState, SoundState>;

  constructor() {
    super();
    this.algebra = false;
  }

  protected override bind(app: Lampnote): void {
    this.#open = new Selected(this, classDeskOf(app).open, (open) => open);
    this.#session = new Selected(this, app.session, (session) => session);
    this.#sound = new Selected(this, app.sound.state, (sound) => sound);
  }

  protected override render(): TemplateResult {
    const open = this.#open.value;
    if (open === null) return html``;
    const { lesson, progress } = open;
    const { language } = this.#session.value;
    const step = stepOf(lesson, progress);
    const record = recordOf(lesson, progress);
    const words = stepWords(lesson, step, language);
    const { tells, does, acts } = this.#phase(step, record, words, language);
    return html`<section lang=${language} aria-labelledby="title">
      <div class="two">
        <div>
          <h3 id="title" tabindex="-1">${words.title}</h3>
          ${tells}
        </div>
        <div class="does">${does}</div>
      </div>
      <div class="acts">${acts}${this.#keys(language)}</div>
    </section>`;
  }

  /** Reading goes on from the step's title. */
  focusHead(): void {
    this.renderRoot.querySelector('.two')?.scrollTo(0, 0);
    this.renderRoot.querySelector<HTMLElement>('#title')?.focus({ preventScroll: true });
  }

  /** What is told at the left, what there is to do at the right, and the way on beneath both. */
  #phase(step: Step, record: StepRecord, words: StepWords, language: Language): Phased {
    const { go, notices } = CLASS_WORDS[language];
    switch (record.phase) {
      case 'notice':
        return {
          tells: html`${step.notices.map((notice) => html`<p class="notice" role="note">${notices[notice]}</p>`)}
            ${step.notices.includes('flickers in the ear') ? volumeSlider(this.app, this.#session.value.volumeDb) : ''}`,
          does: cautionNote(step.notices.includes('camera') ? ['camera'] : ['sound', 'headphones'], language),
          acts: this.#advance(go.understood),
        };
      case 'ask':
        return {
          tells: html`<p>${words.text}</p>
            <p class="question"><strong>${CLASS_WORDS[language].parts.question}:</strong> ${words.question}</p>`,
          does: html`${this.#pointed(step.question)}
            ${optionsOf(classDeskOf(this.app), step.question, record, words, language)}`,
          acts: html`${this.#advance(go.stand, record.answer === null)}
            <button type="button" @click=${() => classDeskOf(this.app).pass()}>${go.pass}</button>`,
        };
      case 'try':
        return this.#trial(step, record, words, language);
      case 'reveal':
        return this.#outcome(step, record, words, language);
    }
  }

  #trial(step: Step, record: StepRecord, words: StepWords, language: Language): Phased {
    const { go, parts, met: says } = CLASS_WORDS[language];
    const { lesson, progress } = this.#open.value!;
    const met = isMet(lesson, progress);
    return {
      tells: html`${step.question === null ? html`<p>${words.text}</p>` : this.#recap(record, words, language)}
        <p class="question"><strong>${parts.task}:</strong> ${words.task}</p>
        <p class="met ${met ? 'done' : ''}" role="status">${met ? says.done : record.watched.place > 0 ? says.part : ''}</p>`,
      does: this.#touched(step),
      acts: html`${this.#advance(go.show, !met)}
        ${met ? '' : html`<button type="button" @click=${() => classDeskOf(this.app).showAnyway()}>${go.showAnyway}${this.#key('spaceKey')}</button>`}`,
    };
  }

  #outcome(step: Step, record: StepRecord, words: StepWords, language: Language): Phased {
    const { go, parts } = CLASS_WORDS[language];
    const { lesson, progress } = this.#open.value!;
    const verdict = verdictWords(step, words, record.answer, language);
    const last = progress.step >= lesson.steps.length - 1;
    return {
      tells: html`${step.question === null ? '' : html`<p class="muted">${words.question}</p>`}
        <div role="status">
          ${record.answer?.kind === 'passed' || verdict === null ? '' : html`<p class="verdict-word">${verdict}</p>`}
          <p class="verdict"><strong>${parts.reveal}:</strong> ${words.reveal}</p>
        </div>
        ${
          this.algebra && words.algebra
            ? html`<p class="algebra"><span class="visually-hidden">${parts.algebra}: </span>${words.algebra}</p>`
            : ''
        }`,
      does: html`${this.#touched(step)}${handsShown(step.question, record, words, language)}`,
      acts: this.#advance(last ? go.finish : go.next),
    };
  }

  /** The controls, handed in by whoever holds them; with them what a place or a sketch was pointed on. */
  #touched({ question }: Step): TemplateResult {
    return html`<slot></slot>
      ${this.#pointed(question)}`;
  }

  /** What answers are pointed on: the light axis, or the paper of a sketch. */
  #pointed(question: Question | null): TemplateResult | '' {
    switch (question?.kind) {
      case 'place':
        return html`<place-guess .app=${this.app}></place-guess>`;
      case 'sketch':
        return html`<sketch-guess .app=${this.app}></sketch-guess>`;
      default:
        return '';
    }
  }

  /** On the projector the rest of the buttons stands below what is projected: the keys are named instead. */
  #keys(language: Language): TemplateResult | '' {
    const { look, presenterKeys, soundByLink } = this.#session.value;
    if (look !== 'projector' || !presenterKeys) return '';
    const { present } = PAGE[language];
    const sound = present.soundKey(this.#sound.value.kind === 'on');
    return html`<p class="keys">
      ${[...present.shortKeys, ...(soundByLink === 'off' ? [] : [sound])].map(([key, does]) => html`<span><span class="key">${key}</span> ${does}</span>`)}
    </p>`;
  }

  /** The one thing to do next; `disabled` while something else comes first. */
  #advance(label: string, disabled = false): TemplateResult {
    return html`<button
      id="advance"
      type="button"
      class=${disabled ? '' : 'primary'}
      ?disabled=${disabled}
      @click=${() => classDeskOf(this.app).advance()}
    >
      ${label}${this.#key('enterKey')}
    </button>`;
  }

  #key(name: 'enterKey' | 'spaceKey'): TemplateResult | '' {
    const { language, presenterKeys } = this.#session.value;
    return presenterKeys ? keyOf(PAGE[language].present[name]) : '';
  }

  #recap({ answer }: StepRecord, words: StepWords, language: Language): TemplateResult {
    const { guess: says } = PAGE[language];
    const said = answerWords(answer, words, language);
    return html`<p class="muted">${words.question} ${said ? says.recap(said) : says.none}</p>`;
  }
}

customElements.define('step-panel', StepPanel);

declare global {
  interface HTMLElementTagNameMap {
    'step-panel': StepPanel;
  }
}
