/** `<search-panel>`: begins and stops the search, tells how far it is, what stands in its way, and why others fall out. */
import { css, html, type TemplateResult } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { deskOf, isStale, type PitchDesk, type PitchView } from '../../app/pitch-desk.ts';
import type { Planning } from '../../app/planner.ts';
import type { Design } from '../../design/design.ts';
import type { Pitch } from '../../design/pitch.ts';
import type { JobProgress, SearchReport } from '../../plan/job.ts';
import type { Miss } from '../../plan/search-voice.ts';
import { type WishProblem, wishProblems } from '../../plan/wish.ts';
import { formatNumber } from '../../quantity/format.ts';
import { VOICES, type VoiceId } from '../../quantity/units.ts';
import { pitchWords } from '../../words/en-pitch.ts';
import { foundWords } from '../../words/en-pitch-found.ts';
import { AppElement } from '../app-element.ts';
import { Selected } from '../select.ts';
import { common } from '../theme/shared.ts';
import { panelStyles } from './panel-styles.ts';
import { problemSentence, remedy } from './problem-words.ts';

const words = pitchWords.search;
type Found = Extract<SearchReport, { kind: 'found' }>;

export class SearchPanel extends AppElement {
  static override styles = [
    common,
    panelStyles,
    css`
      progress {
        width: min(18em, 100%);
        height: 12px;
        accent-color: var(--accent);
      }
      .status {
        margin: 6px 0;
      }
      li button {
        min-height: 26px;
        margin-left: 6px;
        padding: 1px 8px;
      }
    `,
  ];

  #desk!: PitchDesk;
  #design!: Selected<Design, Design>;
  #planning!: Selected<Planning, Planning>;
  #searched!: Selected<PitchView, PitchView['searched']>;

  protected override bind(app: Lampnote): void {
    this.#desk = deskOf(app);
    this.#design = new Selected(this, app.design, (design) => design);
    this.#planning = new Selected(this, this.#desk.planner.state, (state) => state);
    this.#searched = new Selected(this, this.#desk.view, (view) => view.searched);
  }

  protected override render(): TemplateResult {
    const { pitch } = this.#design.value;
    const planning = this.#planning.value;
    const problems = wishProblems(pitch);
    const works = planning.kind === 'working';
    const searched = this.#searched.value;
    const ready = !works && problems.length === 0;
    return html`<div class="row">
        <button type="button" class=${ready ? 'primary' : ''} ?disabled=${!ready} @click=${() => this.#desk.find()}>
          ${searched ? words.again : words.go}
        </button>
        <button type="button" ?disabled=${!works} @click=${() => this.#desk.planner.stop()}>${words.stop}</button>
        ${works ? progressBar(planning.progress) : ''}
        ${works && planning.anew ? html`<p class="small">${words.anew}</p>` : ''}
      </div>
      ${problems.length > 0 ? this.#problems(problems, pitch) : ''}
      <p class=${works ? 'visually-hidden' : 'status'} role="status">${this.#status(planning, problems.length > 0)}</p>
      ${!works && searched?.report.kind === 'found' ? missesOf(searched.report) : ''}`;
  }

  #problems(problems: readonly WishProblem[], pitch: Pitch): TemplateResult {
    return html`<div role="group" aria-labelledby="problems">
      <h3 id="problems">${pitchWords.problem.heading}</h3>
      <ul class="problems fault">
        ${problems.map((problem) => {
          const command = remedy(problem, pitch);
          return html`<li>
            ${problemSentence(problem, pitch)}
            ${
              command
                ? html`<button type="button" @click=${() => this.app.change(pitchWords.problem.useStep, command)}>
                    ${pitchWords.problem.use}
                  </button>`
                : ''
            }
          </li>`;
        })}
      </ul>
    </div>`;
  }

  /** What is told to a screen reader, too: the stage, not every per cent of it. */
  #status(planning: Planning, hindered: boolean): string {
    const searched = this.#searched.value;
    switch (planning.kind) {
      case 'working':
        return `${planning.anew ? `${words.anew} ` : ''}${words.stages[planning.progress?.stage ?? 'A']}`;
      case 'stopped':
        return words.stopped;
      case 'failed':
        return words.failed;
      case 'idle':
        return hindered ? '' : words.idle;
      case 'done':
        break;
    }
    if (searched?.report.kind !== 'found') return '';
    if (isStale(searched, this.#design.value)) return words.stale;
    const { ranked, combinations, fitting } = searched.report;
    return ranked.length === 0
      ? words.foundNone(combinations)
      : words.found(ranked.length, combinations, fitting);
  }
}

function progressBar(progress: JobProgress | null): TemplateResult {
  const share = progress?.share ?? 0;
  const stage = words.stages[progress?.stage ?? 'A'];
  return html`<progress aria-label=${words.progressName} max="1" .value=${share}></progress>
    <span class="small">${words.progress(stage, share)}</span>`;
}

/** Nothing found: what comes nearest. Something found: the same, folded away. */
function missesOf({ ranked, voices }: Found): TemplateResult {
  const without = VOICES.filter((voice) => voices[voice].fit === 0);
  const rows = VOICES.flatMap((voice) => voices[voice].misses.map((miss) => missRow(voice, miss)));
  const table = html`<div class="scroll" tabindex="0" role="group" aria-label=${pitchWords.misses.heading}>
    <table>
      <thead>
        <tr>
          ${pitchWords.misses.heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows}
      </tbody>
    </table>
  </div>`;
  if (ranked.length > 0)
    return html`<details>
      <summary>${pitchWords.misses.heading}</summary>
      ${table}
    </details>`;
  return html`${
    without.length > 0
      ? without.map((voice) => html`<p class="fault">${words.none(voice)}</p>`)
      : html`<p class="fault">${words.nonePairs}</p>`
  }
  ${table}
  <p>${words.next}</p>`;
}

function missRow(voice: VoiceId, { kind, count, nearest }: Miss): TemplateResult {
  const by =
    nearest === null
      ? pitchWords.misses.none
      : `${foundWords.shortParts(nearest.parts)}: ${kind === 'duty' ? pitchWords.misses.byDuty(nearest.by) : pitchWords.misses.byCents(nearest.by)}`;
  return html`<tr>
    <th scope="row">${voice}</th>
    <td>${pitchWords.misses.kinds[kind]}</td>
    <td>${formatNumber(count, 6)}</td>
    <td>${by}</td>
  </tr>`;
}

customElements.define('search-panel', SearchPanel);

declare global {
  interface HTMLElementTagNameMap {
    'search-panel': SearchPanel;
  }
}
