/** What is said where the long work of the bench broke off, with the press that tries it again. */
import { html, type TemplateResult } from 'lit';
import { words } from '../../words/en.ts';
import { kitViewWords } from '../../words/en-kit.ts';

export const workFailed = (again: () => void): TemplateResult =>
  html`<p class="fault screen" role="alert">
    ${kitViewWords.workFailed}
    <button type="button" @click=${again}>${words.places.again}</button>
  </p>`;
