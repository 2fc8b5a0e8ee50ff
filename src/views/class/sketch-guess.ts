/** `<sketch-guess>`: the node over the light, sketched before it is tried: a slider for each light, or by hand on the chart. */
import { css, html, type TemplateResult } from 'lit';
import { classDeskOf, type OpenLesson } from '../../app/class-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Session } from '../../app/session.ts';
import type { Question } from '../../lesson/lesson.ts';
import { recordOf, stepOf } from '../../lesson/progress.ts';
import { verdictOn } from '../../lesson/verdict.ts';
import type { Volts } from '../../quantity/units.ts';
import { amountIn } from '../../words/amounts.ts';
import { words } from '../../words/en.ts';
import type { Language } from '../../words/spoken.ts';
import { AppElement } from '../app-element.ts';
import type { SlideDetail } from '../controls/events.ts';
import '../controls/level-slider.ts';
import '../plots/node-curve.ts';
import type { SketchDetail } from '../plots/node-curve.ts';
import { LiveFrames, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { luxIn, PAGE } from './lesson-words.ts';

type SketchQuestion = Extract<Question, { kind: 'sketch' }>;

export class SketchGuess extends AppElement {
  static override styles = [
    common,
    css`
      .sliders {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 11.5em), 1fr));
        gap: 0 1.5em;
        --label-width: 5.2em;
        --value-width: 3.4em;
      }
    `,
  ];

  #open!: Selected<OpenLesson | null, OpenLesson | null>;
  #language!: Selected<Session, Language>;
  #live!: LiveFrames;

  protected override bind(app: Lampnote): void {
    this.#open = new Selected(this, classDeskOf(app).open, (open) => open);
    this.#language = new Selected(this, app.session, (session) => session.language);
    this.#live = new LiveFrames(this, app.live, 6);
  }

  /** What the step asks, and what was sketched so far; null where it asks for no sketch. */
  #asked() {
    const open = this.#open.value;
    if (open === null) return null;
    const { lesson, progress } = open;
    const step = stepOf(lesson, progress);
    const { phase, answer } = recordOf(lesson, progress);
    const verdict = verdictOn(step, progress.base, answer);
    if (step.question?.kind !== 'sketch' || verdict?.kind !== 'sketch') return null;
    const sketch = answer?.kind === 'sketch' ? answer.volts : null;
    return { question: step.question, verdict, phase, sketch };
  }

  protected override render(): TemplateResult {
    const asked = this.#asked();
    if (asked === null) return html``;
    const { question, verdict, phase, sketch } = asked;
    const language = this.#language.value;
    const { guess: says } = PAGE[language];
    const { frame } = this.#live;
    const asks = phase === 'ask';
    const point = (volts: Volts, i: number) =>
      says.point(luxIn(language, question.at[i]!), voltsIn(language, volts));
    return html`<node-curve
        .at=${question.at}
        .railVolts=${verdict.railVolts}
        .sketch=${sketch}
        .model=${phase === 'reveal' ? verdict.curve : []}
        .now=${asks || !frame ? null : { lux: frame.lux[question.voice], volts: frame.node[question.voice] }}
        .drawn=${asks}
        .formatLux=${words.luxNumber}
        .formatVolts=${(volts: Volts) => voltsIn(language, volts)}
        .summary=${says.nodeOverLight((sketch ?? []).map(point))}
        sketch-word=${says.sketch}
        model-word=${says.modelCurve}
        @sketch=${({ detail }: CustomEvent<SketchDetail>) => this.#set(detail.index, detail.volts)}
      ></node-curve>
      ${asks ? this.#sliders(question, sketch, verdict.railVolts, language) : ''}`;
  }

  #sliders(
    { at }: SketchQuestion,
    sketch: readonly Volts[] | null,
    railVolts: Volts,
    language: Language,
  ): TemplateResult {
    const { guess: says } = PAGE[language];
    return html`<div class="sliders">
      ${at.map((lux, i) => {
        const text = sketch === null ? '?' : voltsIn(language, sketch[i]!);
        return html`<level-slider
          label=${says.at(luxIn(language, lux))}
          .value=${sketch?.[i] ?? railVolts / 2}
          min="0"
          max=${railVolts}
          scale="linear"
          .readout=${text}
          .valuetext=${text}
          @slide=${({ detail }: CustomEvent<SlideDetail>) => this.#set(i, detail.value)}
        ></level-slider>`;
      })}
    </div>`;
  }

  /** Before the first point is moved all stand at half of the supply. */
  #set(index: number, volts: Volts): void {
    const asked = this.#asked();
    if (asked === null) return;
    const { question, verdict, sketch } = asked;
    const before = sketch ?? question.at.map(() => verdict.railVolts / 2);
    classDeskOf(this.app).answer({
      kind: 'sketch',
      volts: before.map((old, i) => (i === index ? volts : old)),
    });
  }
}

const voltsIn = (language: Language, value: Volts): string => amountIn(language, { kind: 'volts', value });

customElements.define('sketch-guess', SketchGuess);

declare global {
  interface HTMLElementTagNameMap {
    'sketch-guess': SketchGuess;
  }
}
