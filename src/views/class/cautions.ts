/** Cautions in the language of the class. */
import { html, type TemplateResult } from 'lit';
import type { CautionPlace } from '../../words/cautions.ts';
import { CLASS_WORDS, cautionsIn, localRulesIn } from '../../words/class-words.ts';
import type { Language } from '../../words/spoken.ts';

export function cautionNote(places: readonly CautionPlace[], language: Language): TemplateResult {
  const { cautions: heading } = CLASS_WORDS[language].parts;
  return html`<div class="cautions" role="note" aria-label=${heading}>
    ${cautionsIn(language, places).map(
      ({ words }, i) => html`<p>${i === 0 ? html`<strong>${heading}.</strong> ` : ''}${words}</p>`,
    )}
    <p>${localRulesIn(language)}</p>
  </div>`;
}
