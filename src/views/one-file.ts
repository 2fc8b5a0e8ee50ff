/** The page as one file, to be opened from a disk: the build of the site has it beside the page. */
import { html, type TemplateResult } from 'lit';
import { words } from '../words/en.ts';

/** Nothing where there is no such file: in the one file itself, and while developing. */
export const oneFileLink = (): TemplateResult | '' =>
  import.meta.env.MODE === 'production' ? html`<a href="./lampnote.html" download>${words.oneFile}</a>` : '';
