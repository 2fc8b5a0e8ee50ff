/** Work sheets and their answer sheets, as they are printed. */
import { html, type TemplateResult } from 'lit';
import type { SheetAnswer, Worksheet } from '../../lesson/worksheet.ts';
import { type Amount, amountIn, filled, type Language } from '../../words/amounts.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';

const count = (value: number): Amount => ({ kind: 'count', value });

/** What a pupil gets: questions with room to write. */
export function pupilSheet({ number, questions }: Worksheet, language: Language): TemplateResult {
  const { sheet: says } = CLASS_WORDS[language];
  const named = { number: count(number) };
  return html`<section class="sheet" lang=${language}>
    <h1>${filled(language, says.title, named)}</h1>
    <p>${filled(language, says.who, named)}</p>
    <p>${says.hint}</p>
    <ol>
      ${questions.map(
        ({ id, given, answer }) => html`<li>
          ${filled(language, says.questions[id], given)} ${roundingOf(answer, language)}
          <span class="line"></span>
        </li>`,
      )}
    </ol>
  </section>`;
}

/** What the teacher gets: the model's answers, rounded as asked, with what may be off. */
export function answerSheet({ number, questions }: Worksheet, language: Language): TemplateResult {
  const { sheet: says } = CLASS_WORDS[language];
  return html`<section class="sheet" lang=${language}>
    <h1>${filled(language, says.answers, { number: count(number) })}</h1>
    <ol>
      ${questions.map(
        ({ id, given, answer }) => html`<li>
          ${filled(language, says.questions[id], given)} <strong>${answerOf(answer, language)}</strong> ${acceptOf(answer, language)}
        </li>`,
      )}
    </ol>
  </section>`;
}

function roundingOf(answer: SheetAnswer, language: Language): string {
  const { round, reason } = CLASS_WORDS[language].sheet;
  if (answer.kind === 'choice') return reason;
  return filled(language, round[answer.rounding.by], { n: count(answer.rounding.n) });
}

function answerOf(answer: SheetAnswer, language: Language): string {
  return answer.kind === 'choice'
    ? CLASS_WORDS[language].sheet.options[answer.option]
    : amountIn(language, answer.rounded);
}

function acceptOf(answer: SheetAnswer, language: Language): string {
  if (answer.kind === 'choice') return '';
  const share: Amount = { kind: 'share', value: answer.rounding.accept };
  return filled(language, CLASS_WORDS[language].sheet.accept, { share });
}
