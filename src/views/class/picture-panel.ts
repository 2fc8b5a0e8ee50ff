/**
 * `<picture-panel>`: the one picture alive, its values in short words and in sentences, and the tools of whoever presents:
 * hide, freeze and slow its parts, or hold it and let a change through part by part.
 */
import { html, type PropertyValues, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import type { LiveFrame } from '../../app/live.ts';
import type { Session } from '../../app/session.ts';
import type { Design } from '../../design/design.ts';
import { ALL_SHOWN, STAGES, type StageId, type StageMode } from '../../lesson/lesson.ts';
import { slowFactor, visibleStages } from '../../lesson/picture.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import type { Language } from '../../words/spoken.ts';
import { AppElement } from '../app-element.ts';
import { fieldStyles } from '../fields.ts';
import '../plots/signal-picture.ts';
import type { StageLabel } from '../plots/signal-picture.ts';
import { LiveFrames, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { classStyles } from './class-styles.ts';
import { PAGE } from './lesson-words.ts';
import { PictureFollow } from './picture-follow.ts';
import { pictureStyles } from './picture-styles.ts';
import { pictureTools } from './picture-tools.ts';
import { labelOf, sentencesOf, type Told } from './picture-words.ts';

/** A change is told to screen readers once nothing else has changed for this long. */
const REST_MILLISECONDS = 1200;

type Labels = Readonly<Record<StageId, readonly StageLabel[]>>;
type Modes = Readonly<Record<StageId, StageMode>>;

export class PicturePanel extends AppElement {
  static override properties = {
    ...AppElement.properties,
    voices: { attribute: false },
    stages: { attribute: false },
    step: { type: String },
    own: { state: true },
    reached: { state: true },
    running: { state: true },
    told: { state: true },
  };
  static override styles = [common, fieldStyles, classStyles, pictureStyles];

  declare voices: readonly VoiceId[];
  /** Which parts the step shows, and how. */
  declare stages: Modes;
  /** Another step: what the presenter had set for the last one is over. */
  declare step: string;
  /** What the presenter set instead. */
  declare own: Partial<Record<StageId, StageMode>>;
  /** Parts that a held picture has let a change through to; null = not held. */
  declare reached: number | null;
  /** The slowed cycle moves by itself. */
  declare running: boolean;
  declare told: string;

  #design!: Selected<Design, Design>;
  #language!: Selected<Session, Language>;
  readonly #follow = new PictureFollow();
  #said = '';
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.voices = ['A', 'B'];
    this.stages = ALL_SHOWN;
    this.step = '';
    this.own = {};
    this.reached = null;
    this.running = !window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    this.told = '';
  }

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design);
    this.#language = new Selected(this, app.session, (session) => session.language);
    new LiveFrames(this, app.live, 15, (frame) => this.#take(frame));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    if (changed.has('step')) {
      this.own = {};
      this.reached = null;
      this.#follow.held = {};
    }
    const { latest } = this.app.live;
    if (latest) this.#take(latest);
  }

  get #modes(): Modes {
    return { ...this.stages, ...this.own };
  }

  #take(frame: LiveFrame): void {
    const { lamp, light } = this.app.session.current;
    const modes = this.#modes;
    const { reached } = this;
    this.#follow.take(frame, {
      design: this.#design.value,
      voices: this.voices,
      rippling: lamp.kind !== null && light !== 'camera',
      running: this.running,
      holds: (stage) => modes[stage] === 'frozen' || (reached !== null && STAGES.indexOf(stage) >= reached),
    });
  }

  protected override render(): TemplateResult {
    const language = this.#language.value;
    const { picture: says } = PAGE[language];
    const modes = this.#modes;
    const { now, held } = this.#follow;
    return html`<signal-picture
        .voices=${now.map(({ drawn }) => drawn)}
        .held=${Object.fromEntries(
          Object.entries(held).map(([stage, told]) => [stage, told.map(({ drawn }) => drawn)]),
        )}
        .modes=${modes}
        .heads=${CLASS_WORDS[language].stages}
        .labels=${this.#labels(language)}
        .notes=${this.#notes(language)}
        name=${says.name}
        hidden-word=${says.hidden}
      ></signal-picture>
      ${modes.tone === 'slowed' ? this.#slowTools(language) : ''}
      <div class="folds">
        <details>
          <summary>${says.inWords}</summary>
          <ul>
            ${this.#sentences(language).map((sentence) => html`<li>${sentence}</li>`)}
          </ul>
        </details>
        <details>
          <summary>${says.tools}</summary>
          ${pictureTools({
            language,
            modes,
            reached: this.reached,
            show: (stage, mode) => {
              this.own = { ...this.own, [stage]: mode };
            },
            hold: this.#hold,
            letOn: this.#letOn,
          })}
        </details>
      </div>
      <p class="visually-hidden" role="status" lang=${language}>${this.told}</p>`;
  }

  #labels(language: Language): Labels {
    const { words, held } = this.#follow;
    return Object.fromEntries(
      STAGES.map((stage) => [
        stage,
        (held[stage] ?? words).map((told) => ({
          voice: told.drawn.id,
          text: labelOf(stage, told, language),
        })),
      ]),
    ) as unknown as Labels;
  }

  #notes(language: Language): Readonly<Record<StageId, string>> {
    const { picture: says } = PAGE[language];
    const modes = this.#modes;
    const note = (stage: StageId, i: number): string => {
      if (modes[stage] === 'frozen') return says.frozen;
      if (this.reached !== null && i >= this.reached) return says.waits;
      const frequency = this.#follow.now[0]?.drawn.picture.tone.frequency ?? 0;
      return modes[stage] === 'slowed' ? says.slowedBy(formatNumber(slowFactor(frequency), 3)) : '';
    };
    return Object.fromEntries(STAGES.map((stage, i) => [stage, note(stage, i)])) as Record<StageId, string>;
  }

  #sentences(language: Language): readonly string[] {
    return sentencesOf(visibleStages(this.#modes), this.#follow.words, language);
  }

  #slowTools(language: Language): TemplateResult {
    const { picture: says } = PAGE[language];
    return html`<div class="row slow">
      <button
        type="button"
        @click=${() => {
          this.running = !this.running;
        }}
      >
        ${this.running ? says.pause : says.run}
      </button>
      <button
        type="button"
        ?disabled=${this.running}
        @click=${() => {
          this.#follow.nudge(this.#design.value, this.voices);
          this.requestUpdate();
        }}
      >
        ${says.moment}
      </button>
    </div>`;
  }

  readonly #hold = (): void => {
    this.reached = this.reached === null ? 0 : null;
  };

  readonly #letOn = (): void => {
    if (this.reached === null) return;
    this.reached = this.reached + 1 < STAGES.length ? this.reached + 1 : null;
  };

  /** Tells what changed, once it has come to rest. */
  protected override updated(_changed: PropertyValues): void {
    const language = this.#language.value;
    const key = JSON.stringify([language, this.#follow.now.map((told) => restKey(told)), this.#modes]);
    if (key === this.#said) return;
    const first = this.#said === '';
    this.#said = key;
    clearTimeout(this.#timer);
    if (first) return;
    this.#timer = setTimeout(() => {
      this.told = this.#sentences(language).join(' ');
    }, REST_MILLISECONDS);
  }
}

/** What makes a picture another one to the ear of a reader: not every digit. */
function restKey({ drawn, gate }: Told): string {
  const { lux, tone, compare } = drawn.picture;
  return [lux.toPrecision(2), tone.frequency.toPrecision(3), gate.kind, compare.nodeIs].join();
}

customElements.define('picture-panel', PicturePanel);

declare global {
  interface HTMLElementTagNameMap {
    'picture-panel': PicturePanel;
  }
}
