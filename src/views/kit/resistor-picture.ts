/** A resistor with its bands in their own colours. The words for them always stand beside it. */
import { css, html, svg, type TemplateResult } from 'lit';
import { type BandColour, bandWords } from '../../words/bench.ts';

/** As printed on real parts, near enough to be told apart; the same in every look. */
const PAINT: Readonly<Record<BandColour, string>> = {
  black: '#161616',
  brown: '#6f4120',
  red: '#c3202c',
  orange: '#e9781c',
  yellow: '#f0cf1f',
  green: '#2d7f3d',
  blue: '#2659b0',
  violet: '#7c4a9f',
  grey: '#858585',
  white: '#ffffff',
  gold: '#b48a2c',
  silver: '#b9bdc2',
  pink: '#e890ab',
};

const WIDTH = 132;
const HEIGHT = 28;
const BODY = { left: 24, right: 108 } as const;
const BAND = 7;
/** First band from the body's end, and from one band to the next. */
const FIRST = 9;
/** The tolerance band stands apart, so that one knows where to begin. */
const APART = 7;

function placesOf(count: number): readonly number[] {
  const figures = count <= 4 ? 3 : 4;
  const step = (BODY.right - BODY.left - 2 * FIRST - BAND - APART) / Math.max(1, count - 1);
  return Array.from({ length: count }, (_, i) => BODY.left + FIRST + i * step + (i >= figures ? APART : 0));
}

/** Decorative: the words that say the bands stand beside it. */
function resistorPicture(bands: readonly BandColour[]): TemplateResult {
  const places = placesOf(bands.length);
  return html`<svg class="resistor" viewBox="0 0 ${WIDTH} ${HEIGHT}" width=${WIDTH} height=${HEIGHT} aria-hidden="true">
    <line x1="0" y1=${HEIGHT / 2} x2=${BODY.left} y2=${HEIGHT / 2}></line>
    <line x1=${BODY.right} y1=${HEIGHT / 2} x2=${WIDTH} y2=${HEIGHT / 2}></line>
    <rect class="body" x=${BODY.left} y="3" width=${BODY.right - BODY.left} height=${HEIGHT - 6} rx="7"></rect>
    ${bands.map(
      (band, i) =>
        svg`<rect class="band" x=${places[i]!} y="3.6" width=${BAND} height=${HEIGHT - 7.2} fill=${PAINT[band]}></rect>`,
    )}
  </svg>`;
}

export function resistorWithWords(bands: readonly BandColour[]): TemplateResult {
  return html`<span class="with-words">${resistorPicture(bands)} <span>${bandWords(bands)}</span></span>`;
}

export const resistorStyles = css`
  .resistor line {
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .resistor .body {
    fill: #efe6cf;
    stroke: var(--ink);
    stroke-width: 1;
  }
  .resistor .band {
    stroke: rgb(0 0 0 / 35%);
    stroke-width: 0.5;
  }
  .with-words {
    display: inline-flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 2px 10px;
    font-weight: 400;
  }
  @media print {
    .with-words {
      flex-wrap: nowrap;
    }
    .resistor {
      width: 26mm;
      height: auto;
    }
    .resistor,
    .resistor .body,
    .resistor .band {
      print-color-adjust: exact;
      -webkit-print-color-adjust: exact;
    }
  }
`;
