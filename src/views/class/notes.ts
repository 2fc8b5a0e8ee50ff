/** What whoever teaches wants beside them: aim, ideas to expect, this step with its answer, and the next one. */
import { html, type TemplateResult } from 'lit';
import type { OpenLesson } from '../../app/class-desk.ts';
import type { Step } from '../../lesson/lesson.ts';
import { stepOf } from '../../lesson/progress.ts';
import { filled } from '../../words/amounts.ts';
import { CLASS_WORDS, cautionsIn, localRulesIn } from '../../words/class-words.ts';
import type { Language } from '../../words/spoken.ts';
import { PAGE, stepWords, verdictWords, wordsOf } from './lesson-words.ts';

export function notesOf({ lesson, progress }: OpenLesson, language: Language): TemplateResult {
  const { parts, minutes } = CLASS_WORDS[language];
  const { present } = PAGE[language];
  const text = wordsOf(lesson, language);
  const step = stepOf(lesson, progress);
  const next = lesson.steps[lesson.steps.indexOf(step) + 1];
  const length = filled(language, minutes, { minutes: { kind: 'count', value: lesson.minutes } });
  const list = (heading: string, items: readonly string[]) =>
    html`<h2>${heading}</h2><ul>${items.map((item) => html`<li>${item}</li>`)}</ul>`;
  return html`<main lang=${language}>
    <h1>${text.title}</h1>
    <p class="muted">${length}, ${PAGE[language].step(progress.step + 1, lesson.steps.length)}</p>
    <p>${parts.aim}: ${text.aim}</p>
    <section class="now">
      <h2>${present.now}: ${stepWords(lesson, step, language).title}</h2>
      ${stepNotes(lesson, step, language)}
    </section>
    <h2>${present.next}${next ? `: ${stepWords(lesson, next, language).title}` : ''}</h2>
    ${next ? html`<p>${stepWords(lesson, next, language).text}</p>` : html`<p>${present.last}</p>`}
    ${list(parts.wrongIdeas, text.wrongIdeas)} ${list(parts.notes, text.notes)}
    ${list(parts.cautions, [...cautionsIn(language, lesson.cautions).map(({ words }) => words), localRulesIn(language)])}
  </main>`;
}

function stepNotes(lesson: OpenLesson['lesson'], step: Step, language: Language): TemplateResult {
  const { parts } = CLASS_WORDS[language];
  const words = stepWords(lesson, step, language);
  const rows: readonly (readonly [string, string | null])[] = [
    [parts.question, words.question],
    [parts.task, words.task],
    [parts.reveal, [verdictWords(step, words, null, language), words.reveal].filter(Boolean).join(' ')],
    [parts.algebra, words.algebra],
  ];
  return html`<p>${words.text}</p>
    <dl>${rows.map(([head, said]) => (said === null ? '' : html`<dt>${head}</dt><dd>${said}</dd>`))}</dl>`;
}
