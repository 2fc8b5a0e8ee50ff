/**
 * `<picture-panel>`: the one picture alive, its values in short words and in sentences, and the tools of whoever presents:
 * hide, freeze and slow its parts, or hold it and let a change through part by part.
 */
import { css, html, type PropertyValues, type TemplateResult } from 'lit';
import { derivedInstrument, memoized } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { LiveFrame } from '../../app/live.ts';
import type { Session } from '../../app/session.ts';
import { cellOf, cellOhms } from '../../circuit/cell.ts';
import type { Instrument } from '../../circuit/instrument.ts';
import type { Design } from '../../design/design.ts';
import { STAGES, type StageId, type StageMode } from '../../lesson/lesson.ts';
import { firstCyclePoints, livePicture, slowFactor, visibleStages } from '../../lesson/picture.ts';
import { type Lux, pairOf, type VoiceId } from '../../quantity/units.ts';
import type { Language } from '../../words/amounts.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import { AppElement } from '../app-element.ts';
import { fieldStyles, listRow } from '../fields.ts';
import { GateHold } from '../plots/gate-hold.ts';
import '../plots/signal-picture.ts';
import type { StageLabel } from '../plots/signal-picture.ts';
import { SLOW_CYCLES, SlowClock } from '../plots/slow-cycle.ts';
import type { DrawnVoice } from '../plots/stage-drawings.ts';
import { Steadied } from '../plots/steadied.ts';
import { LiveFrames, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { classStyles } from './class-styles.ts';
import { PAGE } from './lesson-words.ts';
import { labelOf, sentencesOf, type Told } from './picture-words.ts';

/** Light at which the cells' curves are drawn. */
const CURVE: readonly Lux[] = [0.1, 1, 10, 100, 1000, 10_000, 100_000];
/** Values in words are renewed this often; a second. */
const WORDS_EVERY = 0.3;
/** A change is told to screen readers once nothing else has changed for this long. */
const REST_MILLISECONDS = 1200;

const curvesOf = memoized((design: Design) =>
  pairOf((voice) => CURVE.map((lux) => ({ lux, ohms: cellOhms(cellOf(design.voices[voice]), lux) }))),
);
const cyclesOf = memoized((instrument: Instrument) =>
  pairOf((voice) => firstCyclePoints(instrument.astables[voice], SLOW_CYCLES)),
);

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
  static override styles = [
    common,
    fieldStyles,
    classStyles,
    css`
      .tools {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 12em), 1fr));
        gap: 6px 26px;
        margin: 8px 0;
        --label-width: 6.4em;
      }
      details {
        margin-top: 6px;
      }
      .folds {
        display: flex;
        flex-wrap: wrap;
        gap: 0 28px;
      }
      .folds details[open] {
        flex-basis: 100%;
      }
      ul {
        margin: 4px 0 8px;
        padding-left: 1.2em;
      }
      @media print {
        .folds {
          display: none;
        }
      }
    `,
  ];

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
  #live!: LiveFrames;
  #now: readonly Told[] = [];
  #held: Partial<Record<StageId, readonly Told[]>> = {};
  #words: { readonly at: number; readonly of: readonly Told[] } = { at: Number.NEGATIVE_INFINITY, of: [] };
  #said = '';
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #steadied = { A: new Steadied(), B: new Steadied() };
  readonly #sides = { A: new GateHold(), B: new GateHold() };
  readonly #clocks = { A: new SlowClock(), B: new SlowClock() };

  constructor() {
    super();
    this.voices = ['A', 'B'];
    this.stages = {
      lux: 'shown',
      ohms: 'shown',
      volts: 'shown',
      compare: 'shown',
      gate: 'shown',
      tone: 'shown',
    };
    this.step = '';
    this.own = {};
    this.reached = null;
    this.running = !window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    this.told = '';
  }

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design);
    this.#language = new Selected(this, app.session, (session) => session.classLanguage);
    this.#live = new LiveFrames(this, app.live, 15);
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
      this.#held = {};
    }
    const { frame } = this.#live;
    if (frame) this.#follow(frame);
  }

  get #modes(): Modes {
    return { ...this.stages, ...this.own };
  }

  #follow(frame: LiveFrame): void {
    const design = this.#design.value;
    const instrument = derivedInstrument(design);
    const picture = livePicture(design, instrument, frame);
    const rippling =
      this.app.session.current.lamp.kind !== null && this.app.session.current.light !== 'camera';
    this.#now = this.voices.map((id) => {
      const shown = frame.shown[id];
      const astable = instrument.astables[id];
      const steady = this.#steadied[id].next(
        frame.time,
        picture[id],
        rippling || shown.kind === 'chattering',
      );
      const drawn: DrawnVoice = {
        id,
        picture: steady,
        shown: shown.kind,
        cell: design.voices[id].divider.cell,
        curve: curvesOf(design)[id],
        cycles: cyclesOf(instrument)[id],
        since: this.#clocks[id].next(
          frame.time,
          frame.shown[id].kind !== 'silent',
          this.running,
          slowFactor(picture[id].tone.frequency),
        ),
        levels: { lower: astable.lowerVolts, upper: astable.upperVolts, rest: astable.sinkVolts },
      };
      const isAbove = this.#sides[id].next(frame.time, picture[id].compare.nodeIs === 'above');
      return { drawn, gate: shown, isAbove };
    });
    const modes = this.#modes;
    STAGES.forEach((stage, i) => {
      const waits = modes[stage] === 'frozen' || (this.reached !== null && i >= this.reached);
      if (!waits) delete this.#held[stage];
      else this.#held[stage] ??= this.#now;
    });
    const settled = this.#words.of.length === this.#now.length;
    if (!settled || frame.time - this.#words.at >= WORDS_EVERY || frame.time < this.#words.at)
      this.#words = { at: frame.time, of: this.#now };
  }

  protected override render(): TemplateResult {
    const language = this.#language.value;
    const { picture: says } = PAGE[language];
    const modes = this.#modes;
    return html`<signal-picture
        .voices=${this.#now.map(({ drawn }) => drawn)}
        .held=${Object.fromEntries(
          Object.entries(this.#held).map(([stage, told]) => [stage, told.map(({ drawn }) => drawn)]),
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
          ${this.#tools(language)}
        </details>
      </div>
      <p class="visually-hidden" role="status" lang=${language}>${this.told}</p>`;
  }

  #labels(language: Language): Labels {
    const shown = this.#words.of;
    return Object.fromEntries(
      STAGES.map((stage) => [
        stage,
        (this.#held[stage] ?? shown).map((told) => ({
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
      const frequency = this.#now[0]?.drawn.picture.tone.frequency ?? 0;
      return modes[stage] === 'slowed' ? says.slowedBy(factorText(slowFactor(frequency), language)) : '';
    };
    return Object.fromEntries(STAGES.map((stage, i) => [stage, note(stage, i)])) as Record<StageId, string>;
  }

  #sentences(language: Language): readonly string[] {
    return sentencesOf(visibleStages(this.#modes), this.#words.of, language);
  }

  #slowTools(language: Language): TemplateResult {
    const { picture: says } = PAGE[language];
    return html`<div class="row">
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
          for (const id of this.voices)
            this.#clocks[id].nudge(derivedInstrument(this.#design.value).voices[id].cycle.frequency);
          this.requestUpdate();
        }}
      >
        ${says.moment}
      </button>
    </div>`;
  }

  #tools(language: Language): TemplateResult {
    const { picture: says } = PAGE[language];
    const heads = CLASS_WORDS[language].stages;
    const next = this.reached === null ? undefined : STAGES[this.reached];
    return html`<div class="tools">
        ${STAGES.map((stage) => {
          const modes = Object.entries(
            stage === 'tone' ? { ...says.modes, slowed: says.slowed } : says.modes,
          );
          return listRow(heads[stage], modes, this.#modes[stage], (mode) => {
            this.own = { ...this.own, [stage]: mode as StageMode };
          });
        })}
      </div>
      <div class="row">
        <button type="button" aria-pressed=${this.reached !== null} @click=${this.#hold}>${says.hold}</button>
        ${
          next === undefined
            ? ''
            : html`<button type="button" @click=${this.#letOn}>${says.letOn(heads[next])}</button>`
        }
        <span class="small">${says.holdHint}</span>
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
    const key = JSON.stringify([language, this.#now.map((told) => restKey(told)), this.#modes]);
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
function restKey({ drawn, gate, isAbove }: Told): string {
  const { lux, tone } = drawn.picture;
  return [lux.toPrecision(2), tone.frequency.toPrecision(3), gate.kind, isAbove].join();
}

const factorText = (factor: number, language: Language): string => factor.toLocaleString(language);

customElements.define('picture-panel', PicturePanel);

declare global {
  interface HTMLElementTagNameMap {
    'picture-panel': PicturePanel;
  }
}
