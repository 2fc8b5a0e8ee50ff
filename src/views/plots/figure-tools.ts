/** Under a figure: its number and name, its table on demand, and both as files. */
import { css, html, type TemplateResult } from 'lit';
import { csvText } from '../../app/table-csv.ts';
import { offerFile } from '../files.ts';
import { type TableText, tableOnDemand } from './chart.ts';
import { svgText } from './figure-file.ts';

export interface FigureText {
  /** Printed beneath the drawing. */
  readonly caption: string;
  readonly fileName: string;
  readonly svgLabel: string;
  readonly csvLabel: string;
  readonly table: TableText;
}

/** `root` is where the one drawing (`svg.chart`) stands. */
export function figureTools(text: FigureText, root: ParentNode): TemplateResult {
  const { caption, fileName, table } = text;
  const saveDrawing = () => {
    const drawing = root.querySelector<SVGSVGElement>('svg.chart');
    if (drawing) offerFile(fileName, 'svg', 'image/svg+xml', svgText(drawing));
  };
  const saveTable = () => offerFile(fileName, 'csv', 'text/csv', csvText(table.heads, table.rows));
  return html`<figcaption>
      <span>${caption}</span>
      <button type="button" class="quiet" @click=${saveDrawing}>${text.svgLabel}</button>
      <button type="button" class="quiet" @click=${saveTable}>${text.csvLabel}</button>
    </figcaption>
    ${tableOnDemand(table)}`;
}

export const figureStyles = css`
  figcaption {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 2px 14px;
    margin: 4px 0 2px;
  }
  button.quiet {
    min-height: 24px;
    padding: 1px 8px;
    font-size: var(--text-small);
  }
  @media (pointer: coarse) {
    button.quiet {
      min-height: 44px;
    }
  }
`;
