/** `<board-readouts>`: what the output and the supply come to: levels, DC, headphones, current, hours. */
import { css, html, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import type { Lampnote } from '../../app/lampnote.ts';
import type { Level } from '../../circuit/output.ts';
import { PLAY_STATES, type PlayState } from '../../circuit/power.ts';
import type { Design } from '../../design/design.ts';
import { VOICES } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { AppElement } from '../app-element.ts';
import { CALMLY, Selected } from '../select.ts';
import { common } from '../theme/shared.ts';

export class BoardReadouts extends AppElement {
  static override styles = [
    common,
    css`
      .tables {
        display: flex;
        flex-wrap: wrap;
        gap: 8px 40px;
        margin: 8px 0;
      }
      .scroll {
        overflow-x: auto;
      }
      caption {
        padding-bottom: 2px;
        font-weight: 600;
        text-align: start;
      }
    `,
  ];

  #design!: Selected<Design, Design>;

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, CALMLY);
  }

  protected override render(): TemplateResult {
    const { level, power } = derivedInstrument(this.#design.value);
    const levels: readonly (readonly [string, Level])[] = [
      ...VOICES.map((voice) => [words.board.levelOf(voice), level.voices[voice]] as const),
      [words.board.levelOf('both'), level.both],
    ];
    return html`<div class="tables">
        ${table(
          words.board.levelHead,
          words.board.levels,
          levels.map(([name, one]) => [
            name,
            words.board.milliVolts(one.peakToPeakVolts),
            words.board.milliVolts(one.rmsVolts),
            words.board.decibels(one.dbv),
            words.board.decibels(one.dbu),
          ]),
        )}
        ${table(
          words.board.powerHead,
          words.board.powers,
          (Object.keys(PLAY_STATES) as PlayState[]).map((state) => {
            const { drain, railVolts, sagVolts, hours } = power.states[state];
            return [
              words.board.playStates[state],
              words.board.amperes(drain.total),
              words.volts(railVolts),
              words.board.milliVolts(sagVolts),
              words.board.hours(hours),
            ];
          }),
        )}
      </div>
      <p class="small">
        ${words.board.dc(level.couplingVolts)}
        ${level.thumpSeconds === null ? '' : words.board.thump(level.thumpVolts, level.thumpSeconds)}
        ${level.headphones === null ? '' : words.board.headphones(level.headphones.watts, level.headphones.decibels)}
      </p>`;
  }
}

function table(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): TemplateResult {
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${caption}>
    <table>
      <caption>
        ${caption}
      </caption>
      <thead>
        <tr>
          ${heads.map((head) => (head === '' ? html`<td></td>` : html`<th scope="col">${head}</th>`))}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ([name, ...cells]) =>
            html`<tr>
              <th scope="row">${name}</th>
              ${cells.map((cell) => html`<td class="figure">${cell}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

customElements.define('board-readouts', BoardReadouts);

declare global {
  interface HTMLElementTagNameMap {
    'board-readouts': BoardReadouts;
  }
}
