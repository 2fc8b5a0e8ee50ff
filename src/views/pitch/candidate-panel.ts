/** `<candidate-panel>`: the chosen candidate looked at closely: parts, reach, tuning, sound, drift, what to change. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { deskOf, keeping, type PitchDesk, type PitchView } from '../../app/pitch-desk.ts';
import type { Design } from '../../design/design.ts';
import { equalValues } from '../../design/entries.ts';
import type { Candidate } from '../../design/pitch.ts';
import { shortlist, takeCandidate } from '../../design/pitch-commands.ts';
import type { Assessment } from '../../plan/assess.ts';
import { chipOf, targetRotations, trimmerCurve } from '../../plan/timing.ts';
import { pairOf, VOICES } from '../../quantity/units.ts';
import { pitchWords } from '../../words/en-pitch.ts';
import { foundWords } from '../../words/en-pitch-found.ts';
import { AppElement } from '../app-element.ts';
import '../plots/trimmer-curve.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { changeLines, curveText, driftRows, hurtRows, reachRows, togetherLines } from './close-look.ts';
import './hear-row.ts';
import { noteText } from './bars.ts';
import { panelStyles } from './panel-styles.ts';

const words = foundWords.detail;

export class CandidatePanel extends AppElement {
  static override styles = [
    common,
    panelStyles,
    css`
      .two {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 25em), 1fr));
        gap: 6px 34px;
        align-items: start;
      }
      .two > * {
        min-width: 0;
      }
      .lock {
        padding-left: 10px;
        border-left: var(--stroke-data) solid var(--caution);
      }
      ul {
        margin: 4px 0;
        padding-left: 18px;
      }
      table {
        width: 100%;
      }
      td {
        white-space: nowrap;
      }
    `,
  ];

  #desk!: PitchDesk;
  #view!: Selected<PitchView, PitchView>;
  #design!: Selected<Design, Design>;

  protected override bind(app: Lampnote): void {
    this.#desk = deskOf(app);
    this.#view = new Selected(this, this.#desk.view, (view) => view);
    this.#design = new Selected(this, app.design, (design) => design);
  }

  protected override render(): TemplateResult {
    const { chosen } = this.#view.value;
    const candidate = this.#desk.candidate(chosen);
    if (candidate === null) return html``;
    const design = this.#design.value;
    const { A, B } = candidate.parts;
    const name = foundWords.name(chosen.of === 'found' ? chosen.place + 1 : null, A, B);
    const look = this.#desk.closeLook(candidate);
    return html`<section aria-labelledby="candidate">
      <h2 id="candidate">${words.heading(name)}</h2>
      ${
        equalValues(A, B)
          ? html`<p>${foundWords.partsOf('both', A)}</p>`
          : VOICES.map((id) => html`<p>${foundWords.partsOf(id, candidate.parts[id])}</p>`)
      }
      ${look ? html`<p>${words.reach(look.reached.easy, look.reached.full, look.kits, pitchWords.wish.laws[look.law])}</p>` : ''}
      ${this.#acts(candidate, design)}
      <h3>${foundWords.hear.heading}</h3>
      <hear-row .app=${this.app} .candidate=${candidate}></hear-row>
      ${look ? this.#look(candidate, look, design) : html`<p class="fault">${words.impossible}</p>`}
    </section>`;
  }

  #acts(candidate: Candidate, design: Design): TemplateResult {
    const rotations = targetRotations(chipOf(design), candidate);
    const taken = takeCandidate(candidate, rotations)(design) === design;
    const kept = keeping(design, candidate);
    return html`<div class="row">
        <button
          type="button"
          class="primary"
          ?disabled=${taken}
          @click=${() => this.app.change(words.takeStep, takeCandidate(candidate, rotations))}
        >
          ${words.take}
        </button>
        <button
          type="button"
          ?disabled=${kept !== 'free'}
          @click=${() => this.app.change(words.keepStep, shortlist(candidate))}
        >
          ${kept === 'kept' ? words.kept : words.keep}
        </button>
        ${kept === 'full' ? html`<span class="small">${words.full}</span>` : ''}
      </div>
      <p class="small" role="status">${taken ? words.taken : ''}</p>`;
  }

  #look(candidate: Candidate, look: Assessment, design: Design): TemplateResult {
    const law = pitchWords.wish.laws[look.law];
    const { a4Hertz } = design.pitch.wish;
    const { lines, lock } = togetherLines(candidate, look.together);
    return html`<p class=${lock ? 'lock' : ''}>${lines.join(' ')}</p>
      <div class="two">
        <div>
          <h3>${words.table}</h3>
          ${plainTable(words.table, words.heads, reachRows(candidate, look, law, a4Hertz))}
        </div>
        <div>
          <h3>${foundWords.curve.heading}</h3>
          ${this.#curve(candidate, look, design)}
        </div>
        <div>
          <h3>${words.driftTable}</h3>
          ${plainTable(words.driftTable, words.driftHeads, driftRows(look))}
        </div>
        <div>
          <h3>${words.hurts}</h3>
          ${plainTable(words.hurts, words.hurtsHeads, hurtRows(look))}
          <p class="small">${words.hurtsBasis}</p>
          <h3>${words.changes}</h3>
          <ul>
            ${changeLines(look).map((line) => html`<li>${line}</li>`)}
          </ul>
        </div>
      </div>`;
  }

  #curve(candidate: Candidate, { voices }: Assessment, design: Design): TemplateResult {
    const chip = chipOf(design);
    const { a4Hertz } = design.pitch.wish;
    const curves = pairOf((id) => trimmerCurve(chip, chip.controlVolts[id], candidate.parts[id]));
    const marks = pairOf((id) => voices[id].atTarget);
    const words = foundWords.curve;
    const text = curveText(curves, a4Hertz);
    return html`<trimmer-curve
      .curves=${curves}
      .marks=${marks}
      .a4=${a4Hertz}
      .summary=${words.summary(VOICES.map((id) => `${id}: ${noteText(marks[id].hertz, a4Hertz)}`).join(', '))}
      cursor-label=${words.cursor}
      cursor-hint=${words.cursorHint}
      steep-label=${words.degrees}
      .describe=${text.describe}
      .formatHertz=${foundWords.numberOf}
      .formatShare=${foundWords.share}
      .text=${text.figure}
    ></trimmer-curve>`;
  }
}

function plainTable(
  name: string,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): TemplateResult {
  return html`<div class="scroll" tabindex="0" role="group" aria-label=${name}>
    <table>
      <thead>
        <tr>
          ${heads.map((head) => (head ? html`<th scope="col">${head}</th>` : html`<td></td>`))}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ([first, ...rest]) =>
            html`<tr>
              <th scope="row">${first}</th>
              ${rest.map((cell) => html`<td>${cell}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

customElements.define('candidate-panel', CandidatePanel);

declare global {
  interface HTMLElementTagNameMap {
    'candidate-panel': CandidatePanel;
  }
}
