/** `<place-guess>`: a place on the light axis to guess: by slider or by a press on the axis, with the marks of the class. */
import { css, html, type TemplateResult } from 'lit';
import { classDeskOf, type OpenLesson } from '../../app/class-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Session } from '../../app/session.ts';
import { recordOf, stepOf } from '../../lesson/progress.ts';
import { verdictOn } from '../../lesson/verdict.ts';
import type { Lux } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import type { Language } from '../../words/spoken.ts';
import { AppElement } from '../app-element.ts';
import type { SlideDetail } from '../controls/events.ts';
import '../controls/level-slider.ts';
import { luxAtPlace } from '../plots/axis-place.ts';
import '../plots/light-axis.ts';
import { BRIGHTEST, DARKEST, type LightMark, type Trip } from '../plots/light-marks.ts';
import { LiveFrames, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { classStyles } from './class-styles.ts';
import { luxIn, PAGE } from './lesson-words.ts';

/** Where the slider stands before anybody has guessed: the middle of the axis. */
const UNDECIDED: Lux = 100;

export class PlaceGuess extends AppElement {
  static override styles = [
    common,
    classStyles,
    css`
      .asks light-axis {
        cursor: crosshair;
      }
      level-slider {
        margin: 8px 0;
        --label-width: 6em;
      }
      .row {
        margin-bottom: 10px;
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

  protected override render(): TemplateResult {
    const open = this.#open.value;
    if (open === null) return html``;
    const { lesson, progress } = open;
    const { phase, answer, places } = recordOf(lesson, progress);
    const language = this.#language.value;
    const { guess: says } = PAGE[language];
    const guess = answer?.kind === 'place' ? answer.lux : null;
    const verdict = phase === 'reveal' ? verdictOn(stepOf(lesson, progress), progress.base, answer) : null;
    const mark = (label: (lux: string) => string) => (lux: Lux) => ({
      lux,
      label: label(luxIn(language, lux)),
    });
    const stands = (lux: Lux, label: (lux: string) => string, voices: Trip['voices']): Trip => ({
      voices,
      off: lux,
      on: lux,
      label: label(luxIn(language, lux)),
    });
    const marks: readonly LightMark[] = places.map(mark(says.pupil));
    const trips: readonly Trip[] = [
      ...(guess === null ? [] : [stands(guess, says.mine, 'both')]),
      ...(verdict?.kind === 'place' ? [stands(verdict.lux, says.model, 'A')] : []),
    ];
    const now = this.#live.frame?.lux.A ?? DARKEST;
    const asks = phase === 'ask';
    return html`<div class=${asks ? 'asks' : ''}>
      <light-axis
        .needles=${[{ voice: 'A', lux: now, label: words.axis.needle('A', now) }]}
        .trips=${trips}
        .marks=${marks}
        .summary=${says.axis([...trips, ...marks].map(({ label }) => label))}
        .format=${words.luxNumber}
        dark-label=${words.axis.dark}
        bright-label=${words.axis.bright}
        unit=${words.axis.unit}
        @pointerdown=${asks ? this.#press : null}
      ></light-axis>
      ${asks ? this.#slider(guess, language) : ''}
    </div>`;
  }

  #slider(guess: Lux | null, language: Language): TemplateResult {
    const { guess: says } = PAGE[language];
    const text = guess === null ? '?' : luxIn(language, guess);
    const marked = this.#open.value;
    const places = marked ? recordOf(marked.lesson, marked.progress).places : [];
    return html`<level-slider
        label=${says.slider}
        .value=${guess ?? UNDECIDED}
        min=${DARKEST}
        max=${BRIGHTEST}
        scale="log"
        .readout=${text}
        .valuetext=${text}
        @slide=${({ detail }: CustomEvent<SlideDetail>) => this.#guess(detail.value)}
      ></level-slider>
      <div class="row">
        <button type="button" ?disabled=${guess === null} @click=${() => classDeskOf(this.app).point(guess)}>${says.add}</button>
        <button type="button" ?disabled=${places.length === 0} @click=${() => classDeskOf(this.app).point(null)}>
          ${says.takeBack}
        </button>
        <span class="small">${says.hint}</span>
      </div>`;
  }

  readonly #press = (event: PointerEvent): void => {
    const axis = event.currentTarget as HTMLElement;
    const { left, width } = axis.getBoundingClientRect();
    this.#guess(luxAtPlace(event.clientX - left, width));
  };

  #guess(lux: Lux): void {
    classDeskOf(this.app).answer({ kind: 'place', lux });
  }
}

customElements.define('place-guess', PlaceGuess);

declare global {
  interface HTMLElementTagNameMap {
    'place-guess': PlaceGuess;
  }
}
