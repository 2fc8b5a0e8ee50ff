/** The presenter's tools for the picture: how each part is shown, and a change let through part by part. */
import { html, type TemplateResult } from 'lit';
import { STAGES, type StageId, type StageMode } from '../../lesson/lesson.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import type { Language } from '../../words/spoken.ts';
import { listRow } from '../fields.ts';
import { PAGE } from './lesson-words.ts';

export interface PictureTools {
  readonly language: Language;
  readonly modes: Readonly<Record<StageId, StageMode>>;
  /** Parts that a held picture has let a change through to; null = not held. */
  readonly reached: number | null;
  readonly show: (stage: StageId, mode: StageMode) => void;
  readonly hold: () => void;
  readonly letOn: () => void;
}

export function pictureTools({ language, modes, reached, show, hold, letOn }: PictureTools): TemplateResult {
  const { picture: says } = PAGE[language];
  const heads = CLASS_WORDS[language].stages;
  const next = reached === null ? undefined : STAGES[reached];
  return html`<div class="tools">
      ${STAGES.map((stage) => {
        const names = stage === 'tone' ? { ...says.modes, slowed: says.slowed } : says.modes;
        return listRow(heads[stage], Object.entries(names), modes[stage], (mode) =>
          show(stage, mode as StageMode),
        );
      })}
    </div>
    <div class="row">
      <button type="button" aria-pressed=${reached !== null} @click=${hold}>${says.hold}</button>
      ${
        next === undefined
          ? ''
          : html`<button type="button" @click=${letOn}>${says.letOn(heads[next])}</button>`
      }
      <span class="small">${says.holdHint}</span>
    </div>`;
}
