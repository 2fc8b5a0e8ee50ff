/** `<wish-panel>`: what is wanted of the two voices, in four ways; what counts; and the batch it is for. */
import { css, html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Design } from '../../design/design.ts';
import { LIMITS } from '../../design/limits.ts';
import { DRAW_LAWS, NOTE_LENGTH, PITCH_LIMITS, type Wish } from '../../design/pitch.ts';
import { changeWish } from '../../design/pitch-commands.ts';
import { centsBetween, nearestNote, parseNote } from '../../plan/notes.ts';
import { targetsOf } from '../../plan/wish.ts';
import { formatShare, formatSigned } from '../../quantity/format.ts';
import { pairOf, VOICES, type VoiceId } from '../../quantity/units.ts';
import { words as pageWords } from '../../words/en.ts';
import { INTERVAL_WORDS, pitchWords } from '../../words/en-pitch.ts';
import { AppElement } from '../app-element.ts';
import '../caution-note.ts';
import { reader } from '../edits.ts';
import { Fields, fieldStyles } from '../fields.ts';
import { READABLY, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { panelStyles } from './panel-styles.ts';
import { noteSentence } from './problem-words.ts';
import { centsField, centsReader, hertzField, hertzReader, wholeField, wholeReader } from './readers.ts';

const words = pitchWords.wish;
const read = {
  hertz: hertzReader(PITCH_LIMITS.hertz),
  a4: hertzReader(PITCH_LIMITS.a4Hertz),
  cents: centsReader(PITCH_LIMITS.cents),
  kits: wholeReader(PITCH_LIMITS.kits),
  seed: wholeReader(PITCH_LIMITS.seed),
  duty: reader('share', LIMITS.fraction),
};
const dutyField = (value: number | null): string => (value === null ? '' : formatShare(value));
/** A design within so many cents of the wish sounds it: no trimmer is set closer by ear. */
const NEAR_CENTS = 10;
/** What is set when limits for the duty cycle are first asked for. */
const USUAL_DUTY = { least: 0.5, most: 0.7 } as const;

export class WishPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    panelStyles,
    css`
      .note {
        display: grid;
        grid-template-columns: minmax(0, var(--label-width)) minmax(0, var(--field-width));
        align-items: center;
        column-gap: var(--unit);
        font-size: var(--text-control);
      }
      .hand {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 12px;
        font-size: var(--text-control);
      }
      /* Its words are longer than a column. */
      .long {
        grid-column: 1 / -1;
      }
      .long label.list {
        grid-template-columns: auto minmax(0, 1fr);
      }
      @media (min-width: 47.5625em) {
        .long label.list {
          grid-template-columns: minmax(min-content, var(--label-width)) minmax(0, 1fr);
        }
      }
      .problem {
        grid-column: 1 / -1;
        margin: 2px 0 0;
        color: var(--fault);
        font-size: var(--text-small);
      }
    `,
  ];

  #design!: Selected<Design, Wish>;
  #whole!: Selected<Design, Design>;
  #fields!: Fields;

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design.pitch.wish);
    this.#whole = new Selected(this, app.design, (design) => design, READABLY);
    this.#fields = new Fields(app, words.step);
  }

  protected override render(): TemplateResult {
    const wish = this.#design.value;
    const wanted = targetsOf(wish);
    return html`<section aria-labelledby="wish">
      <h2 id="wish">${words.heading}</h2>
      ${this.#fields.choice(words.way, words.ways, wish.way, (way) => changeWish({ way: way as Wish['way'] }))}
      <div class="fields">
        ${this.#way(wish)} ${this.#tuning(wish)}
        <p role="status">
          ${
            wanted.ok
              ? words.comesTo(
                  pairOf((voice) => [wanted.targets[voice].lowHertz, wanted.targets[voice].highHertz]),
                )
              : ''
          }
        </p>
        ${wish.way === 'sweep' ? '' : this.#atHand(wish)}
        <p class="small">${words.kept}</p>
      </div>
      ${this.#duty(wish)}
      <h3>${words.weights}</h3>
      ${this.#weights(wish)}
      <h3>${words.batch}</h3>
      ${this.#batch(wish)}
    </section>`;
  }

  /** What the open design sounds, where that is not what is wished for. */
  #atHand(wish: Wish): TemplateResult | string {
    const { voices } = derivedInstrument(this.#whole.value);
    const sounding = pairOf((voice) => voices[voice].cycle.frequency);
    const wanted = targetsOf(wish);
    const isNear = (voice: VoiceId): boolean =>
      wanted.ok && Math.abs(centsBetween(wanted.targets[voice].lowHertz, sounding[voice])) < NEAR_CENTS;
    if (VOICES.some((voice) => !(sounding[voice] > 0)) || VOICES.every(isNear)) return '';
    const notes = pairOf((voice) => {
      const { name, cents } = nearestNote(sounding[voice], wish.a4Hertz);
      return Math.abs(cents) < NEAR_CENTS ? name : `${name} ${formatSigned(cents)} c`;
    });
    return html`<p class="hand">
      ${words.atHand(pairOf((voice) => pageWords.notes.shown(notes[voice])))}
      <button
        type="button"
        @click=${() => this.app.change(words.step(words.takeAtHand), changeWish({ way: 'notes', notes }))}
      >
        ${words.takeAtHand}
      </button>
    </p>`;
  }

  #way(wish: Wish): TemplateResult | readonly TemplateResult[] {
    switch (wish.way) {
      case 'notes':
        return html`${VOICES.map((voice) => this.#note(voice, wish))}
          <p class="small">${words.noteHint}</p>`;
      case 'interval':
        return this.#interval(wish);
      case 'frequencies':
        return VOICES.map((voice) =>
          this.#hertz(words.hertz(voice), wish.hertz[voice], (hertz) => ({
            hertz: { ...wish.hertz, [voice]: hertz },
          })),
        );
      case 'sweep':
        return VOICES.map((voice) => {
          const range = wish.sweep[voice];
          const ends = (change: Partial<typeof range>) => ({
            sweep: { ...wish.sweep, [voice]: { ...range, ...change } },
          });
          return html`${this.#hertz(words.low(voice), range.lowHertz, (lowHertz) => ends({ lowHertz }))}
          ${this.#hertz(words.high(voice), range.highHertz, (highHertz) => ends({ highHertz }))}`;
        });
    }
  }

  #interval(wish: Wish): TemplateResult {
    const { interval } = wish;
    const change = (part: Partial<Wish['interval']>) => changeWish({ interval: { ...interval, ...part } });
    return html`${this.#fields.choice(words.given, words.givenVoices, interval.from, (from) =>
      change({ from: from as VoiceId }),
    )}
      ${this.#note(interval.from, wish)}
      ${this.#fields.list(words.interval, INTERVAL_WORDS, interval.name, (name) =>
        change({ name: name as Wish['interval']['name'] }),
      )}
      ${this.#fields.choice(
        words.direction(interval.from === 'A' ? 'B' : 'A'),
        words.directions,
        interval.direction,
        (direction) => change({ direction: direction as 'up' | 'down' }),
      )}
      ${this.#fields.quantity({
        label: words.cents,
        value: interval.cents,
        read: read.cents,
        text: centsField,
        command: (cents) => change({ cents }),
      })}
      <p class="small">${words.noteHint}</p>`;
  }

  #tuning(wish: Wish): TemplateResult {
    const named = wish.way === 'notes' || wish.way === 'interval';
    return html`${this.#fields.quantity({
      label: words.a4,
      value: wish.a4Hertz,
      read: read.a4,
      text: hertzField,
      command: (a4Hertz) => changeWish({ a4Hertz }),
    })}
    ${
      named
        ? this.#fields.choice(words.temperament, words.temperaments, wish.temperament, (temperament) =>
            changeWish({ temperament: temperament as Wish['temperament'] }),
          )
        : ''
    }
    ${named && wish.temperament === 'just' ? html`<p class="small">${words.just}</p>` : ''}`;
  }

  #duty({ duty, polarised }: Wish): TemplateResult {
    return html`<div class="fields">
        ${this.#fields.tick(words.dutyWanted, duty !== null, (on) => changeWish({ duty: on ? USUAL_DUTY : null }))}
        ${
          duty === null
            ? ''
            : (['least', 'most'] as const).map((end) =>
                this.#fields.quantity({
                  label: end === 'least' ? words.dutyLeast : words.dutyMost,
                  value: duty[end],
                  read: read.duty,
                  text: dutyField,
                  command: (share) => changeWish({ duty: { ...duty, [end]: share } }),
                }),
              )
        }
        ${this.#fields.tick(words.polarised, polarised, (on) => changeWish({ polarised: on }))}
      </div>
      ${polarised ? html`<caution-note .places=${['timing capacitor']}></caution-note>` : ''}`;
  }

  #weights({ weights }: Wish): TemplateResult {
    const choices = Object.fromEntries(words.weightWords.map((word, weight) => [String(weight), word]));
    return html`<div class="fields">
      ${(Object.keys(words.weightNames) as (keyof Wish['weights'])[]).map((name) =>
        this.#fields.list(words.weightNames[name], choices, String(Math.round(weights[name])), (weight) =>
          changeWish({ weights: { ...weights, [name]: Number(weight) } }),
        ),
      )}
      <p class="small">${words.cheaperHint}</p>
    </div>`;
  }

  #batch({ law, kits, seed }: Wish): TemplateResult {
    const laws = Object.fromEntries(DRAW_LAWS.map((id) => [id, words.laws[id]]));
    return html`<div class="fields">
      ${this.#fields.quantity({
        label: words.kits,
        value: kits,
        read: read.kits,
        text: wholeField,
        command: (value) => changeWish({ kits: value }),
      })}
      ${this.#fields.quantity({
        label: words.seed,
        value: seed,
        read: read.seed,
        text: wholeField,
        command: (value) => changeWish({ seed: value }),
      })}
      <div class="long">
        ${this.#fields.list(words.law, laws, law, (value) => changeWish({ law: value as Wish['law'] }))}
      </div>
      <p class="small">${words.kitsHint}</p>
      <p class="small">${words.lawHint} ${words.seedHint}</p>
    </div>`;
  }

  #hertz(label: string, value: number, change: (hertz: number) => Partial<Wish>): TemplateResult {
    return this.#fields.quantity({
      label,
      value,
      read: read.hertz,
      text: hertzField,
      command: (hertz) => changeWish(change(hertz)),
    });
  }

  /** A note is kept as typed, even where it does not read: the box and the document hold the same text. */
  #note(voice: VoiceId, { notes }: Wish): TemplateResult {
    const reading = parseNote(notes[voice]);
    const shown = pageWords.notes.shown(notes[voice]);
    const id = `note-${voice}`;
    return html`<div class="note">
      <label for=${id}>${words.note(voice)}</label>
      <input
        id=${id}
        type="text"
        maxlength=${NOTE_LENGTH}
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        .value=${shown}
        aria-invalid=${reading.ok ? 'false' : 'true'}
        aria-describedby="${id}-problem"
        @change=${(event: Event) => {
          const text = pageWords.notes.typed((event.currentTarget as HTMLInputElement).value);
          this.app.change(words.step(words.note(voice)), changeWish({ notes: { ...notes, [voice]: text } }));
        }}
      />
      <div id="${id}-problem" class="problem" aria-live="polite">
        ${reading.ok ? '' : noteSentence(voice, reading.problem)}
      </div>
    </div>`;
  }
}

customElements.define('wish-panel', WishPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wish-panel': WishPanel;
  }
}
