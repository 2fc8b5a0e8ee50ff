/** Work sheets and their answer sheets, as they are printed. */
import { html, type TemplateResult } from 'lit';
import { lessonLink } from '../../app/address.ts';
import { handOver } from '../../app/hand-over.ts';
import type { SheetAnswer, Worksheet } from '../../lesson/worksheet.ts';
import { type Amount, amountIn, filled } from '../../words/amounts.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import type { Language } from '../../words/spoken.ts';
import '../plots/qr-code.ts';
import { PAGE } from './lesson-words.ts';

/** What a sheet belongs to. */
export interface SheetOf {
  readonly language: Language;
  /** The class's word; '' = none. */
  readonly word: string;
  /** Where pupils reach the page; '' = nowhere. */
  readonly link: string;
}

/** The address of the lessons for pupils' devices; '' where there is none to hand on. */
export function sheetLink(hosted: string, language: Language): string {
  const over = handOver(location.href, hosted);
  return over.kind === 'address' ? `${over.address}${lessonLink(null, 'muted', language)}` : '';
}

function head(title: string, { language, word, link }: SheetOf): TemplateResult {
  const { sheets: says, handOver: over } = PAGE[language];
  const date = new Intl.DateTimeFormat(language === 'de' ? 'de-DE' : 'en-GB', { dateStyle: 'long' });
  // The first line stands again on every further page of the sheet.
  return html`<div class="running"><p>${title}. ${says.of(word, date.format(new Date()))}</p></div>
  <div class="head">
    <div>
      <h1>${title}</h1>
      ${link === '' ? '' : html`<p class="link">${says.page} ${link}</p>`}
    </div>
    ${link === '' ? '' : html`<qr-code text=${link} label=${over.code}></qr-code>`}
  </div>`;
}

const count = (value: number): Amount => ({ kind: 'count', value });

/** What a pupil gets: questions with room to write. */
export function pupilSheet({ number, questions }: Worksheet, of: SheetOf): TemplateResult {
  const { language } = of;
  const { sheet: says } = CLASS_WORDS[language];
  const named = { number: count(number) };
  return html`<section class="sheet" lang=${language}>
    ${head(filled(language, says.title, named), of)}
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
export function answerSheet({ number, questions }: Worksheet, of: SheetOf): TemplateResult {
  const { language } = of;
  const { sheet: says } = CLASS_WORDS[language];
  return html`<section class="sheet answers" lang=${language}>
    ${head(filled(language, says.answers, { number: count(number) }), { ...of, link: '' })}
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
