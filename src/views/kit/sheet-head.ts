/** What stands at the head of every printed sheet: whose design, which day, and the link that opens it, as a code. */
import { css, html, type TemplateResult } from 'lit';
import { formatDay } from '../../quantity/format.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import '../plots/qr-code.ts';

/** Longer ones make a code too fine to print and read. */
const MOST_LETTERS_IN_CODE = 1400;

/** Whether the head carries a code: there is a link, and it is short enough for one. */
export const hasCode = (link: string): boolean => link !== '' && link.length <= MOST_LETTERS_IN_CODE;

/** `link`: the whole address; empty while it is not made yet, or where others cannot reach this page. */
export function sheetHead(name: string, link: string): TemplateResult {
  const code = hasCode(link) ? link : '';
  return html`<div class="head ${code === '' ? 'plain' : ''}">
    <div>
      <p><strong>${kitViewWords.printed(name, today())}</strong></p>
      ${link === '' ? '' : html`<p>${code === '' ? kitViewWords.noCode : kitViewWords.qr}</p>`}
    </div>
    ${code === '' ? '' : html`<qr-code text=${code} label=${kitViewWords.qr}></qr-code>`}
  </div>`;
}

const today = (): string => formatDay(new Date());

export const sheetHeadStyles = css`
  .head {
    display: none;
  }
  @media print {
    .head {
      display: grid;
      grid-template-columns: minmax(0, 1fr) 32mm;
      gap: 6mm;
      height: 36mm;
      margin-bottom: 2mm;
      padding-bottom: 2mm;
      overflow: hidden;
      border-bottom: 0.3mm solid var(--hair);
      font-size: 10pt;
      text-align: start;
    }
    .head p {
      margin: 0;
      max-width: none;
      overflow-wrap: anywhere;
    }
    .head.plain {
      height: auto;
    }
  }
`;

/** Name, date and page number at the foot of every page, where the browser can; gives what takes it away again. */
export function footPages(name: string): () => void {
  const sheet = new CSSStyleSheet();
  const text = JSON.stringify(kitViewWords.printed(name, today()));
  sheet.replaceSync(
    `@page { margin: 12mm 12mm 14mm; @bottom-left { content: ${text}; font: 8pt sans-serif; } @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif; } }`,
  );
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
  };
}
