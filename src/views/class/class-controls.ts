/** `<class-controls>`: the controls a step lets the class touch, or all of them in free play. */
import { html, type TemplateResult } from 'lit';
import { classDeskOf } from '../../app/class-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { LightSource, Session } from '../../app/session.ts';
import { cameraStands } from '../../app/stand-in.ts';
import type { Design } from '../../design/design.ts';
import { DEFAULT_LIGHT } from '../../lesson/bench.ts';
import {
  CONTROL_IDS,
  CONTROLS,
  type Control,
  type ControlId,
  type Setting,
  settingOf,
  withSetting,
} from '../../lesson/controls.ts';
import { LESSON_DESIGN } from '../../lesson/lessons.ts';
import type { QuantityKind } from '../../quantity/parse.ts';
import type { VoiceId } from '../../quantity/units.ts';
import { type AmountKind, amountIn } from '../../words/amounts.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import { choicesOf } from '../controls/choices.ts';
import type { ChooseDetail, Phase, SlideDetail } from '../controls/events.ts';
import '../controls/level-slider.ts';
import { GestureEdits } from '../edits.ts';
import { fieldStyles, listRow } from '../fields.ts';
import '../listen/camera-panel.ts';
import '../listen/scene-panel.ts';
import { LiveFrames, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { classStyles } from './class-styles.ts';
import { classTrimmer } from './class-trimmer.ts';
import { controlStyles } from './control-styles.ts';
import { luxIn, PAGE } from './lesson-words.ts';

type NumberControl = Extract<Control, { kind: 'number' }>;

const AMOUNTS: Readonly<Partial<Record<QuantityKind, AmountKind>>> = {
  illuminance: 'lux',
  resistance: 'ohms',
  capacitance: 'farads',
  voltage: 'volts',
  share: 'share',
};
const SOURCES = ['stage', 'scene', 'camera'] as const satisfies readonly LightSource[];
/** The voice a control belongs to, where it belongs to one. */
const VOICE: Readonly<Partial<Record<ControlId, VoiceId>>> = {
  'hand A': 'A',
  'hand B': 'B',
  'pitch A': 'A',
  'pitch B': 'B',
  'charge resistor A': 'A',
  'charge resistor B': 'B',
  'capacitor A': 'A',
  'capacitor B': 'B',
};

/** What is fitted when something is: the value the lessons' instrument has. */
const usualOf = (id: ControlId): Setting => settingOf({ design: LESSON_DESIGN, light: DEFAULT_LIGHT }, id);

export class ClassControls extends AppElement {
  static override properties = {
    ...AppElement.properties,
    allowed: { attribute: false },
    said: { state: true },
  };
  static override styles = [common, fieldStyles, classStyles, controlStyles];

  /** What may be touched; null = everything. */
  declare allowed: readonly ControlId[] | null;
  /** What the last press came to. */
  declare said: string;

  #design!: Selected<Design, Design>;
  #session!: Selected<Session, Session>;
  #live!: LiveFrames;
  #edits!: GestureEdits;

  constructor() {
    super();
    this.allowed = null;
    this.said = '';
  }

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design);
    this.#session = new Selected(this, app.session, (session) => session);
    this.#live = new LiveFrames(this, app.live, 4);
    this.#edits = new GestureEdits(app);
  }

  protected override render(): TemplateResult {
    const ids = this.allowed ?? CONTROL_IDS;
    const { light } = this.#session.value;
    const page = PAGE[this.#session.value.language];
    // Where nothing is lit by the lamp, moving it would do nothing.
    const stands = cameraStands(this.app);
    const dead = (id: ControlId) =>
      light === 'camera' && (id === 'camera' || (!stands && CONTROLS[id].writes.length === 0));
    const shown = ids.filter((id) => !dead(id));
    return html`${this.allowed === null ? this.#sources() : ''}
      <div class="controls">${shown.map((id) => this.#control(id))}</div>
      <p class="small" role="status">${this.said}</p>
      ${stands ? html`<p class="small">${page.controls.standsIn}</p>` : ''}
      ${this.allowed !== null && light === 'camera' ? html`<camera-panel .app=${this.app}></camera-panel>` : ''}`;
  }

  /** In free play the light may come from anywhere. */
  #sources(): TemplateResult {
    const { light, language } = this.#session.value;
    return html`<choice-row
        legend=${PAGE[language].controls.source}
        .choices=${choicesOf(Object.fromEntries(SOURCES.map((source) => [source, words.light.sources[source]])))}
        value=${light}
        @choose=${({ detail }: CustomEvent<ChooseDetail>) => this.app.light.choose(detail.value as LightSource)}
      ></choice-row>
      ${light === 'scene' ? html`<scene-panel .app=${this.app}></scene-panel>` : ''}
      ${light === 'camera' ? html`<camera-panel .app=${this.app}></camera-panel>` : ''}`;
  }

  #control(id: ControlId): TemplateResult {
    const control = CONTROLS[id];
    switch (control.kind) {
      case 'number':
        return id === 'threshold' || id === 'pitch A' || id === 'pitch B'
          ? classTrimmer({
              voice: VOICE[id] ?? null,
              label: this.#name(id),
              design: this.#design.value,
              language: this.#session.value.language,
              turn: ({ rotation, phase }) => this.#set(id, rotation, phase),
            })
          : this.#slider(id, control);
      case 'choice':
        return this.#choice(id, control.options);
      case 'press':
        return id === 'camera'
          ? html`<button type="button" @click=${() => this.app.light.choose('camera')}>
              ${this.#name(id)}
            </button>`
          : html`<button type="button" @click=${this.#turnToJustOn}>${this.#name(id)}</button>`;
    }
  }

  #name(id: ControlId): string {
    return CLASS_WORDS[this.#session.value.language].controls[id];
  }

  #text(quantity: QuantityKind, value: number): string {
    return amountIn(this.#session.value.language, { kind: AMOUNTS[quantity] ?? 'number', value });
  }

  #slider(id: ControlId, control: NumberControl): TemplateResult {
    const value = settingOf(classDeskOf(this.app).bench, id);
    const { choices } = CLASS_WORDS[this.#session.value.language];
    const fitted = typeof value === 'number';
    const readout = fitted ? this.#text(control.quantity, value) : choices.none;
    return html`<div>
      <level-slider
        .voice=${VOICE[id] ?? null}
        label=${this.#name(id)}
        .value=${fitted ? value : control.max}
        min=${control.min}
        max=${control.max}
        scale=${control.scale}
        .disabled=${!fitted}
        .readout=${readout}
        .valuetext=${this.#spoken(id, readout)}
        @slide=${({ detail }: CustomEvent<SlideDetail>) => this.#set(id, detail.value, detail.phase)}
      ></level-slider>
      ${control.orNone ? this.#fitted(id, fitted) : ''}
    </div>`;
  }

  #fitted(id: ControlId, fitted: boolean): TemplateResult {
    const { language } = this.#session.value;
    return html`<label class="tick">
      <input
        type="checkbox"
        .checked=${fitted}
        @change=${(event: Event) =>
          this.#set(id, (event.currentTarget as HTMLInputElement).checked ? usualOf(id) : null, 'end')}
      />
      ${this.#name(id)}: ${PAGE[language].controls.fitted}
    </label>`;
  }

  /** A hand tells what it does to its sensor. */
  #spoken(id: ControlId, readout: string): string {
    if (id !== 'hand A' && id !== 'hand B') return readout;
    const voice = VOICE[id]!;
    const { language } = this.#session.value;
    const lux = this.#live.frame?.lux[voice] ?? 0;
    return PAGE[language].controls.handSays(voice, readout, luxIn(language, lux));
  }

  #choice(id: ControlId, options: readonly string[]): TemplateResult {
    const { choices } = CLASS_WORDS[this.#session.value.language];
    const names = options.map((option) => [option, choices[option as keyof typeof choices]] as const);
    const value = String(settingOf(classDeskOf(this.app).bench, id));
    if (options.length > 3)
      return listRow(this.#name(id), names, value, (chosen) => this.#set(id, chosen, 'end'));
    return html`<choice-row
      legend=${this.#name(id)}
      .choices=${choicesOf(Object.fromEntries(names))}
      value=${value}
      @choose=${({ detail }: CustomEvent<ChooseDetail>) => this.#set(id, detail.value, 'end')}
    ></choice-row>`;
  }

  /** The setting goes where it belongs: into the document as one step, or to the light. */
  #set(id: ControlId, value: Setting, phase: Phase): void {
    const before = classDeskOf(this.app).bench;
    const after = withSetting(before, id, value);
    if (CONTROLS[id].writes.length > 0)
      this.#edits.edit(
        this.#name(id),
        (design) => withSetting({ ...before, design }, id, value).design,
        phase,
      );
    const { stage, lamp } = after.light;
    if (stage !== before.light.stage) this.app.light.setStage(stage, cameraStands(this.app));
    if (lamp !== before.light.lamp) this.app.light.setLamp(lamp);
    this.app.sound.touch();
  }

  readonly #turnToJustOn = (): void => {
    const found = Object.values(this.app.turnToJustOn(this.#name('just on')));
    this.said = found.some((one) => one?.kind === 'never')
      ? words.threshold.justOnNever
      : found.some((one) => one?.kind === 'always')
        ? words.threshold.justOnAlways
        : words.threshold.justOnDone;
  };
}

customElements.define('class-controls', ClassControls);

declare global {
  interface HTMLElementTagNameMap {
    'class-controls': ClassControls;
  }
}
