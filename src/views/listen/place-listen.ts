/** `<place-listen>`: the instrument under a light. Margin, light, threshold, voices, board, traces. */
import { html, type PropertyValues, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { LiveFrame } from '../../app/live.ts';
import type { LightSource, Look, Session } from '../../app/session.ts';
import type { SoundState } from '../../app/sound-desk.ts';
import type { Design } from '../../design/design.ts';
import { VOICES } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import '../controls/choice-row.ts';
import type { ChooseDetail } from '../controls/events.ts';
import '../load-again.ts';
import '../plots/light-axis.ts';
import { choicesOf } from '../controls/choices.ts';
import type { LiveTraces } from '../plots/live-traces.ts';
import { CALMLY, LiveFrames, Selected } from '../select.ts';
import { marginStyles } from '../theme/margin.ts';
import { common } from '../theme/shared.ts';
import { listenStyles } from './listen-styles.ts';
import { referenceBands, tripsOnAxis } from './references.ts';
import './reference-note.ts';
import './stage-panel.ts';
import './threshold-panel.ts';
import './voice-panel.ts';
import { takeWords } from '../../words/en-scenes.ts';
import { whyWords } from './why.ts';

/** Levels to compare with: full moon, corridor and classroom (EN 12464-1:2021; the classroom's 300 lx from memory), sky and sun. */
const marks = () =>
  [
    { lux: 0.25, label: words.axis.marks.moon },
    { lux: 100, label: words.axis.marks.corridor },
    { lux: 300, label: words.axis.marks.class },
    { lux: 10_000, label: words.axis.marks.overcast },
    { lux: 110_000, label: words.axis.marks.sun },
  ] as const;

export class PlaceListen extends AppElement {
  static override properties = { ...AppElement.properties, incomplete: { state: true } };
  static override styles = [common, marginStyles, listenStyles];

  /** What comes later did not come. */
  declare incomplete: boolean;
  #design!: Selected<Design, Design>;
  #light!: Selected<Session, LightSource>;
  #look!: Selected<Session, Look>;
  #sound!: Selected<SoundState, SoundState['kind']>;
  #live!: LiveFrames;
  /** The same rows at every rendering. */
  readonly #marks = marks();
  #traces: Partial<Pick<LiveTraces, 'push'>> | null = null;

  constructor() {
    super();
    this.incomplete = false;
  }

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, CALMLY);
    this.#light = new Selected(this, app.session, (session) => session.light);
    this.#look = new Selected(this, app.session, (session) => session.look);
    this.#sound = new Selected(this, app.sound.state, (sound) => sound.kind);
    this.#live = new LiveFrames(this, app.live, 10, (frame) => this.#trace(frame));
  }

  protected override firstUpdated(_changed: PropertyValues): void {
    this.#traces = this.renderRoot.querySelector('live-traces');
    void this.#loadRest();
  }

  /** Whether the rest of the place is there now. */
  async #loadRest(): Promise<boolean> {
    this.incomplete = await import('./later.ts').then(
      () => false,
      () => true,
    );
    return !this.incomplete;
  }

  protected override render(): TemplateResult {
    const design = this.#design.value;
    const instrument = derivedInstrument(design);
    const frame = this.#live.frame;
    const trips = tripsOnAxis(design, instrument.voices);
    const lux = frame?.lux ?? { A: 0, B: 0 };
    return html`<main>
      ${
        this.incomplete
          ? html`<load-again
              .app=${this.app}
              text=${words.places.partMissing}
              .again=${() => this.#loadRest()}
            ></load-again>`
          : ''
      }
      ${this.#begin(`above ${this.#look.value}`)}
      <light-axis
        .needles=${VOICES.map((voice) => ({ voice, lux: lux[voice], label: words.axis.needle(voice, lux[voice]) }))}
        .trips=${trips}
        .marks=${this.#marks}
        .summary=${words.axis.summary(
          lux,
          trips.map((trip) => trip.label),
        )}
        .format=${words.luxNumber}
        dark-label=${words.axis.dark}
        bright-label=${words.axis.bright}
        unit=${words.axis.unit}
        table-label=${words.axis.table}
        .heads=${words.axis.heads}
      ></light-axis>
      <div class="page ${this.#look.value}">
        <section class="margin" aria-label=${words.why.heading}>
          ${this.#begin('beside')}
          ${frame ? whyWords(design, instrument, frame).map((text, i) => html`<p class=${i ? '' : 'why'}>${text}</p>`) : ''}
          <caution-note .places=${['headphones', 'sound']}></caution-note>
        </section>
        <section class="light" aria-labelledby="light">
          <div class="title">
            <h2 id="light">${words.light.heading}</h2>
            <choice-row
              legend=${words.light.stageLegend}
              legend-hidden
              .choices=${choicesOf(words.light.sources)}
              value=${this.#light.value}
              @choose=${({ detail }: CustomEvent<ChooseDetail>) => this.app.light.choose(detail.value as LightSource)}
            ></choice-row>
          </div>
          ${this.#source()}
          <details class="cautions">
            <summary>${words.caution.more}</summary>
            <caution-note .places=${['light']}></caution-note>
          </details>
        </section>
        <threshold-panel class="threshold" .app=${this.app}></threshold-panel>
        <section class="voices" aria-labelledby="voices">
          <h2 id="voices">${words.voices.heading}</h2>
          ${VOICES.map((voice) => html`<voice-panel .app=${this.app} .voice=${voice}></voice-panel>`)}
          <p class="small">${words.voices.formula}</p>
        </section>
        <section class="traces" aria-labelledby="traces">
          <h2 id="traces">${words.traces.heading}</h2>
          <live-traces
            .label=${words.traces.label}
            .summary=${words.traces.summary}
            .max=${this.#traceTop(instrument.railVolts)}
            .span=${4}
            .references=${referenceBands(instrument.voices)}
            .formatVolts=${words.volts}
            .formatAgo=${words.traces.ago}
            .describe=${describeMoment}
            .row=${momentRow}
            .chatter=${this.#chatter(frame)}
            hold-label=${words.traces.hold}
            cursor-label=${words.traces.cursor}
            cursor-hint=${words.traces.cursorHint}
            table-label=${words.traces.table}
            .heads=${words.traces.heads}
          ></live-traces>
          <p class="small">${words.traces.figure}</p>
        </section>
        <section class="first" aria-labelledby="first">
          <h2 id="first">${words.first.heading}</h2>
          <first-cycles .app=${this.app}></first-cycles>
          <p class="small">${words.first.figure}</p>
        </section>
        <section class="reference" aria-labelledby="reference">
          <h2 id="reference">${words.reference.heading}</h2>
          <reference-note .app=${this.app}></reference-note>
        </section>
        <section class="take" aria-labelledby="take">
          <h2 id="take">${takeWords.heading}</h2>
          <take-panel .app=${this.app}></take-panel>
        </section>
        <warnings-panel class="warnings" .app=${this.app}></warnings-panel>
        <board-panel class="board" .app=${this.app}></board-panel>
      </div>
    </main>`;
  }

  /** Until the sound is on: what this is, and what to press. One of two places shows it, by the width of the page. */
  #begin(where: string): TemplateResult | string {
    if (this.#sound.value === 'on') return '';
    return html`<p class="begin ${where}">${words.why.what} <strong>${words.why.begin}</strong></p>`;
  }

  #source(): TemplateResult {
    switch (this.#light.value) {
      case 'stage':
        return html`<stage-panel .app=${this.app}></stage-panel><lamp-row .app=${this.app}></lamp-row>`;
      case 'scene':
        return html`<scene-panel .app=${this.app}></scene-panel><lamp-row .app=${this.app}></lamp-row>`;
      case 'log':
        return html`<log-panel .app=${this.app}></log-panel><lamp-row .app=${this.app}></lamp-row>`;
      case 'camera':
        return html`<camera-panel .app=${this.app}></camera-panel>`;
    }
  }

  #trace(frame: LiveFrame): void {
    // Until its code has come, the element is there but cannot take anything.
    this.#traces?.push?.({ seconds: frame.time, volts: frame.node, sounding: frame.sounding });
  }

  /** The whole supply: a trace that leaves the paper tells nothing. */
  #traceTop(rail: number): number {
    return Math.ceil(rail);
  }

  #chatter(frame: LiveFrame | null): string {
    if (!frame) return '';
    return VOICES.flatMap((voice) => {
      const shown = frame.shown[voice];
      return shown.kind === 'chattering' ? [`${voice} ${words.strip.chattering(shown.perSecond)}`] : [];
    }).join('; ');
  }
}

import type { TraceSample } from '../plots/trace-ring.ts';

const describeMoment = ({ ago, volts, sounding }: TraceSample): string =>
  words.traces.moment(ago, volts, sounding);
const momentRow = ({ ago, volts, sounding }: TraceSample): readonly string[] =>
  words.traces.row(ago, volts, sounding);

customElements.define('place-listen', PlaceListen);

declare global {
  interface HTMLElementTagNameMap {
    'place-listen': PlaceListen;
  }
}
