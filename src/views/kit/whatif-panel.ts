/** `<whatif-panel>`: one mistake on the plan, what would be heard and measured, and its sound. */
import { css, html, type TemplateResult } from 'lit';
import type { Auditioned } from '../../app/audition.ts';
import { derivedInstrument } from '../../app/derived.ts';
import { type KitDesk, type KitView, kitDeskOf, linksMissing, type Worked } from '../../app/kit-desk.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Look, Session } from '../../app/session.ts';
import { troubledPiece } from '../../app/troubled-sound.ts';
import type { Design } from '../../design/design.ts';
import type { Hole } from '../../kit/board/extract.ts';
import { type BoardPlan, holeName } from '../../kit/board/plan.ts';
import type { Planned } from '../../kit/board/plan-board.ts';
import type { Trouble, Troubled } from '../../kit/kit-tasks.ts';
import { asTrouble, bridges, dryJoints, forgottenCuts } from '../../kit/mistakes.ts';
import { LIGHTS } from '../../kit/observe.ts';
import { centsBetween } from '../../plan/notes.ts';
import { formatSigned } from '../../quantity/format.ts';
import { VOICES } from '../../quantity/units.ts';
import { measured } from '../../words/bench.ts';
import { words as pageWords } from '../../words/en.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { netName } from '../../words/kit.ts';
import { AppElement } from '../app-element.ts';
import '../controls/choice-row.ts';
import { choicesOf } from '../controls/choices.ts';
import type { ChooseDetail } from '../controls/events.ts';
import { fieldStyles, listRow } from '../fields.ts';
import '../plots/board-picture.ts';
import { fitFor } from '../plots/board-shapes.ts';
import { Sheet } from '../plots/sheet.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { boardText } from './board-text.ts';
import { kitStyles } from './kit-styles.ts';
import { jointWords } from './part-words.ts';
import { readingWords } from './probe-place.ts';
import { wordTable } from './word-table.ts';
import { workFailed } from './work-failed.ts';

const words = kitViewWords.whatif;
const SOUND = 'kit mistake';
/** A reading moved by less than this share, or by less than so many volts or amperes, is told as the same. */
const SAME = { share: 0.03, V: 0.05, A: 0.0005, Hz: 0.5 } as const;

interface Place {
  readonly at: Hole;
  readonly text: string;
  readonly trouble: Trouble;
}

export class WhatifPanel extends AppElement {
  static override styles = [
    common,
    fieldStyles,
    kitStyles,
    css`
      .halves {
        --halves: minmax(0, 1fr) minmax(0, 20em);
        gap: 10px 30px;
      }
      .picture {
        overflow-x: auto;
      }
      ul {
        margin: 4px 0;
        padding-left: 18px;
      }
      h3:first-child {
        margin-top: 0;
      }
      .hot {
        color: var(--fault);
        font-weight: 600;
      }
    `,
  ];

  #desk!: KitDesk;
  #design!: Selected<Design, Design>;
  #view!: Selected<KitView, KitView>;
  #board!: Selected<Worked<Planned>, Worked<Planned>>;
  #troubled!: Selected<Worked<Troubled>, Worked<Troubled>>;
  #playing!: Selected<Auditioned | null, Auditioned | null>;
  #look!: Selected<Session, Look>;
  readonly #sheet = new Sheet(this);

  protected override bind(app: Lampnote): void {
    this.#desk = kitDeskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
    this.#board = new Selected(this, this.#desk.board, (board) => board);
    this.#troubled = new Selected(this, this.#desk.troubled, (troubled) => troubled);
    this.#playing = new Selected(this, app.audition.playing, (playing) => playing);
    this.#look = new Selected(this, app.session, (session) => session.look);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.#playing?.value?.id === SOUND) this.app.audition.stop();
  }

  protected override updated(): void {
    this.#desk.follow(this.#design.value);
    const { last: planned } = this.#board.value;
    const { kind, place: at } = this.#view.value.mistake;
    const place = planned?.ok ? placeAt(placesOf(planned.plan, kind), at) : null;
    if (place) this.#desk.tryTrouble(this.#design.value, place.trouble);
  }

  protected override render(): TemplateResult {
    const { last: planned } = this.#board.value;
    return html`<section class=${this.#look.value} aria-labelledby="whatif">
      <div class="title"><h2 id="whatif">${words.heading}</h2></div>
      ${
        planned?.ok
          ? this.#mistake(planned.plan)
          : html`<p class="muted" role="status">${planned === null ? kitViewWords.cards.waiting : kitViewWords.cards.none}</p>`
      }
    </section>`;
  }

  #mistake(plan: BoardPlan): TemplateResult {
    const { mistake } = this.#view.value;
    const places = placesOf(plan, mistake.kind);
    const place = placeAt(places, mistake.place);
    return html`<div class="tools">
        <choice-row
          legend=${words.mistake}
          legend-hidden
          .choices=${choicesOf(words.mistakes)}
          value=${mistake.kind}
          @choose=${({ detail }: CustomEvent<ChooseDetail>) =>
            this.#desk.show({ mistake: { kind: detail.value as KitView['mistake']['kind'], place: 0 } })}
        ></choice-row>
        ${listRow(
          words.place,
          places.map(({ text }, i) => [String(i), text]),
          String(place === null ? 0 : places.indexOf(place)),
          (value) => this.#desk.show({ mistake: { ...mistake, place: Number(value) } }),
        )}
      </div>
      ${place === null ? html`<p>${words.noPlaces}</p>` : this.#shown(plan, place)}`;
  }

  #shown(plan: BoardPlan, place: Place): TemplateResult {
    const { last, isWorking, hasFailed } = this.#troubled.value;
    const isProjected = this.#look.value === 'projector';
    const size = boardText(this.#look.value, this.#sheet.fontSize);
    const width =
      isProjected || this.#sheet.width < 800 ? this.#sheet.width : this.#sheet.width - 20 * 16 - 30;
    const fit = fitFor(plan, width, size);
    return html`<div class="halves">
      <div class="picture" tabindex="0" role="group" aria-label=${kitViewWords.board.pictureLabel.component}>
        <board-picture
          .plan=${plan}
          .pitch=${fit.pitch}
          .textSize=${fit.textSize}
          .at=${place.at}
          label=${kitViewWords.board.pictureLabel.component}
        ></board-picture>
      </div>
      <div>
        <p class="muted" role="status">${isWorking ? words.working : ''}</p>
        ${hasFailed ? workFailed(() => this.#desk.again('trouble')) : ''}
        ${last === null || isWorking || hasFailed ? '' : this.#outcome(last)}
      </div>
    </div>`;
  }

  #hear(troubled: Troubled): void {
    const { audition } = this.app;
    const piece = audition.playing.current?.id === SOUND ? null : troubledPiece(this.#design.value, troubled);
    if (piece === null) audition.stop();
    else void audition.play(SOUND, piece);
  }

  #outcome(troubled: Troubled): TemplateResult {
    const { ear, compared, notComputed, hertz } = troubled;
    const { voices } = derivedInstrument(this.#design.value);
    const current = compared.find(({ reading }) => reading.id === 'current, lit');
    const isHot =
      current?.troubled && current.healthy && current.troubled > Math.max(HOT, 1.5 * current.healthy);
    const rows = compared
      .filter(isOther)
      .map(({ reading, healthy, troubled: value }) => [
        readingWords(reading),
        healthy === null ? words.none : measured(healthy, reading.unit),
        value === null ? words.none : measured(value, reading.unit),
      ]);
    const isPlaying = this.#playing.value?.id === SOUND;
    return html`${isHot ? html`<p class="hot" role="alert">${words.hot(measured(current!.troubled!, 'A'))}</p>` : ''}
      ${notComputed.length > 0 ? html`<p class="caution">${words.notComputed}</p>` : ''}
      <h3>${words.heard}</h3>
      <ul>
        ${LIGHTS.filter((light) => !notComputed.includes(light)).flatMap((light) =>
          VOICES.map(
            (voice) =>
              html`<li>${words.voice(voice, kitViewWords.faults.light[light], words.hears[ear.heard[light][voice]])}</li>`,
          ),
        )}
        ${VOICES.map((voice) => {
          const heard = hertz[voice];
          const usual = voices[voice].cycle.frequency;
          if (heard === null || usual <= 0) return '';
          const cents = centsBetween(usual, heard);
          return html`<li>
            ${
              Math.abs(cents) < AUDIBLE_CENTS
                ? words.pitchSame(voice)
                : words.pitch(voice, pageWords.hertz(heard), formatSigned(cents))
            }
          </li>`;
        })}
      </ul>
      ${
        troubled.loop === null
          ? html`<p>${words.nothingToHear}</p>`
          : html`<p>
              <button
                type="button"
                aria-pressed=${isPlaying}
                @click=${() => this.#hear(troubled)}
              >
                ${isPlaying ? words.stop : words.hear}
              </button>
              <span class="small">${words.hearHint}</span>
            </p>`
      }
      <h3>${words.measured}</h3>
      ${rows.length === 0 ? html`<p>${words.same}</p>` : wordTable(words.measured, words.measuredHeads, rows)}`;
  }
}

/** A healthy instrument of this kind never draws more (judgement). */
const HOT = 0.035;
/** The network's clock and the closed form differ by less. */
const AUDIBLE_CENTS = 3;

function isOther({ reading, healthy, troubled }: Troubled['compared'][number]): boolean {
  if (healthy === null || troubled === null) return healthy !== troubled;
  return Math.abs(troubled - healthy) > Math.max(SAME[reading.unit], SAME.share * Math.abs(healthy));
}

/** One of several places, or the last. */
const placeAt = (places: readonly Place[], place: number): Place | null =>
  places[Math.min(place, places.length - 1)] ?? null;

function placesOf(plan: BoardPlan, kind: KitView['mistake']['kind']): readonly Place[] {
  switch (kind) {
    case 'cut':
      return forgottenCuts(plan).map((meeting) => ({
        at: meeting.at,
        text: words.cut(holeName(meeting.at), netName(meeting.nets[0]), netName(meeting.nets[1])),
        trouble: asTrouble(meeting),
      }));
    case 'link':
      return linksMissing(plan).map(({ id, pins }) => {
        const { from, to, net } = plan.links.find((link) => link.id === id)!;
        return {
          at: from,
          text: words.link(id, holeName(from), holeName(to), netName(net)),
          trouble: { kind: 'parted', pins },
        };
      });
    case 'bridge':
      return bridges(plan).map((meeting) => ({
        at: meeting.at,
        text: words.bridge(
          holeName(meeting.at),
          holeName({ strip: meeting.at.strip + 1, hole: meeting.at.hole }),
          netName(meeting.nets[0]),
          netName(meeting.nets[1]),
        ),
        trouble: asTrouble(meeting),
      }));
    case 'joint':
      return dryJoints(plan).map(({ joint, trouble }) => ({
        at: joint.at,
        text: jointWords(joint),
        trouble,
      }));
  }
}

customElements.define('whatif-panel', WhatifPanel);

declare global {
  interface HTMLElementTagNameMap {
    'whatif-panel': WhatifPanel;
  }
}
