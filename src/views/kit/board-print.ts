/**
 * The board plan on paper: each side on a page of its own, at its own size and larger (on two sheets where one page does
 * not hold both), in the middle of the page and at the same height, so that the two outlines lie on each other when the
 * sheet is turned over on its long edge.
 */
import { css, html, svg, type TemplateResult } from 'lit';
import { PITCH_MILLIMETRES } from '../../kit/board/bodies.ts';
import type { BoardPlan } from '../../kit/board/plan.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import '../plots/board-picture.ts';
import { heightOnPaper, pitchOnPaper } from '../plots/board-shapes.ts';
import { hasCode, sheetHead } from './sheet-head.ts';

const words = kitViewWords.board;
/** Millimetres of the texts; the drawing at its own size carries only its rulers. */
const OWN_TEXT = 1.7;
const LARGE_TEXT = 2.6;
/** Words no larger than this share of the way from hole to hole keep apart. */
const TEXT_SHARE = 0.47;
/** Widest that both A4 and Letter hold within 12 mm margins. */
const WIDEST = 184;

/** Drawings of one page, A4 and Letter, under a head with its code or without, the words and the bar; measured. */
const TALLEST = { withCode: 170, plain: 196 } as const;
/** Beside the drawing at its own size a larger one is worth its place from here on, mm from hole to hole. */
const LEAST_LARGER = 1.5 * PITCH_MILLIMETRES;

type Size = 'own' | 'larger';

/** From hole to hole of the larger drawing, and what each page of a side holds. */
function pagesFor(
  plan: BoardPlan,
  tallest: number,
): { readonly larger: number; readonly pages: readonly Size[][] } {
  const widest = pitchOnPaper(plan, WIDEST, LARGE_TEXT, { isCentred: true, most: 3 * PITCH_MILLIMETRES });
  const fitting = (room: number, least: number): number | null => {
    for (let pitch = widest; pitch >= least; pitch *= 0.98)
      if (heightOnPaper(plan, pitch, LARGE_TEXT) <= room) return pitch;
    return null;
  };
  const beside = fitting(tallest - heightOnPaper(plan, PITCH_MILLIMETRES, OWN_TEXT), LEAST_LARGER);
  if (beside !== null) return { larger: beside, pages: [['own', 'larger']] };
  return { larger: fitting(tallest, 0)!, pages: [['own'], ['larger']] };
}

/** Pages in pairs: what is printed on both faces of one sheet belongs together. */
export function boardPrint(
  plan: BoardPlan,
  numbers: ReadonlyMap<string, number>,
  name: string,
  link: string,
): TemplateResult {
  const sides = ['component', 'copper'] as const;
  const { larger, pages } = pagesFor(plan, hasCode(link) ? TALLEST.withCode : TALLEST.plain);
  const text = Math.max(OWN_TEXT, Math.min(LARGE_TEXT, TEXT_SHARE * larger));
  const picture = (side: (typeof sides)[number], size: Size): TemplateResult =>
    size === 'own'
      ? html`<h4>${words.actual}</h4>
          <board-picture class="own" .isBare=${true} .plan=${plan} side=${side} unit="mm" .pitch=${PITCH_MILLIMETRES} .textSize=${OWN_TEXT} .numbers=${numbers} .isCentred=${true} label=${words.pictureLabel[side]}></board-picture>`
      : html`<h4>${words.larger}</h4>
          <board-picture class="large" .plan=${plan} side=${side} unit="mm" .pitch=${larger} .textSize=${text} .numbers=${numbers} .isCentred=${true} label=${words.pictureLabel[side]}></board-picture>`;
  return html`<div class="paper-sides">
    ${pages.map((sizes) =>
      sides.map(
        (side) => html`<div class="side">
          ${sheetHead(name, link)}
          <h3>${words.heading[side]}</h3>
          <p class="small">${side === 'copper' ? words.mirroredNote : words.pair}</p>
          ${checkBar()} ${sizes.map((size) => picture(side, size))}
        </div>`,
      ),
    )}
  </div>`;
}

/** A bar that is 100 mm long when the sheet was printed at its own size. */
export function checkBar(): TemplateResult {
  return html`<figure class="check-bar">
    <svg viewBox="0 0 100 4" width="100mm" height="4mm" aria-hidden="true">
      ${svg`<path d="M 0.1 0 V 4 M 0.1 2 H 99.9 M 99.9 0 V 4" fill="none" stroke="currentColor" stroke-width="0.2"></path>
      ${Array.from({ length: 9 }, (_, i) => svg`<path d="M ${10 * (i + 1)} 1 v 2" stroke="currentColor" stroke-width="0.2"></path>`)}`}
    </svg>
    <figcaption>${kitViewWords.checkBar}</figcaption>
  </figure>`;
}

export const boardPrintStyles = css`
  .paper-sides {
    display: none;
  }
  @media print {
    .paper-sides {
      display: block;
    }
    .side {
      break-after: page;
      break-inside: avoid;
      text-align: center;
    }
    .side > h3,
    .side > h4,
    .side > p {
      margin: 1mm auto;
      text-align: center;
    }
    .side > p {
      height: 9mm;
      overflow: hidden;
    }
    .side board-picture {
      display: flex;
      justify-content: center;
    }
    .check-bar {
      display: flex;
      flex-direction: column;
      align-items: center;
    }
  }
`;
