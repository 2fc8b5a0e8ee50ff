/** The answers of a question: to choose from, each with the hands that went up for it; and how the hands were shared. */
import { html, type TemplateResult } from 'lit';
import type { ClassDesk } from '../../app/class-desk.ts';
import type { Question } from '../../lesson/lesson.ts';
import { type StepRecord, tallyOf } from '../../lesson/progress.ts';
import { amountIn } from '../../words/amounts.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import type { StepWords } from '../../words/lesson-words.ts';
import type { Language } from '../../words/spoken.ts';
import { PAGE } from './lesson-words.ts';

export function optionsOf(
  desk: ClassDesk,
  question: Question | null,
  record: StepRecord,
  words: StepWords,
  language: Language,
): TemplateResult {
  if (question?.kind !== 'choice') return html``;
  const { hands } = CLASS_WORDS[language];
  const chosen = record.answer?.kind === 'choice' ? record.answer.option : null;
  return html`<fieldset>
    <legend class="visually-hidden">${words.question}</legend>
    <div class="options">
      ${question.options.map(
        (option) => html`<div class="option ${option === chosen ? 'chosen' : ''}">
          <label>
            <input
              type="radio"
              name="guess"
              value=${option}
              .checked=${option === chosen}
              @change=${() => desk.answer({ kind: 'choice', option })}
            />
            <span>${words.options[option]}</span>
          </label>
          <input
            class="hands"
            type="number"
            inputmode="numeric"
            min="0"
            max="99"
            aria-label=${hands.count.replace('{option}', words.options[option] ?? '')}
            title=${hands.heading}
            placeholder="–"
            .value=${record.hands[option] === undefined ? '' : String(record.hands[option])}
            @change=${(event: Event) => desk.count(option, (event.currentTarget as HTMLInputElement).valueAsNumber)}
          />
        </div>`,
      )}
    </div>
    <p class="small">${PAGE[language].guess.hands}</p>
  </fieldset>`;
}

/** How the hands were shared, as bars and numbers; nothing where none was counted. */
export function handsShown(
  question: Question | null,
  record: StepRecord,
  words: StepWords,
  language: Language,
): TemplateResult {
  if (question === null || Object.values(record.hands).every((count) => count === 0)) return html``;
  const { hands } = CLASS_WORDS[language];
  return html`<ul class="tally" aria-label=${hands.heading}>
    ${tallyOf(question, record.hands).map(
      ({ option, hands: count, share }) => html`<li>
        ${words.options[option]} <strong class="figure">${count}</strong>
        <progress max="1" value=${share} aria-label=${amountIn(language, { kind: 'share', value: share })}></progress>
      </li>`,
    )}
  </ul>`;
}
