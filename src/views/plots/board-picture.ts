/**
 * `<board-picture>`: a board plan as a line drawing, from the component side or, mirrored, from the copper side. Strips
 * are pale bands, only used holes are drawn, a cut is a gap between two bars, links are straight lines with their length.
 */
import { css, html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { Hole } from '../../kit/board/extract.ts';
import type { BoardPlan } from '../../kit/board/plan.ts';
import { common } from '../theme/shared.ts';
import { type Line, POLE } from './board-flights.ts';
import type { Placed } from './board-labels.ts';
import {
  type BoardShapes,
  boardShapes,
  DOT,
  HOLE,
  type PartShape,
  pointOf,
  type Side,
} from './board-shapes.ts';

/** What stands out; everything else is drawn faintly. Null = all alike. */
export interface Standing {
  readonly parts: ReadonlySet<string>;
  readonly links: ReadonlySet<string>;
  readonly cuts: boolean | 'not made';
  /** Faint things are not drawn at all: `earlier` are drawn plainly, `later` left out. */
  readonly hidden: { readonly parts: ReadonlySet<string>; readonly links: ReadonlySet<string> } | null;
}

const NOBODY: ReadonlyMap<string, number> = new Map();

export class BoardPicture extends LitElement {
  static override properties = {
    plan: { attribute: false },
    side: { type: String },
    pitch: { attribute: false },
    textSize: { attribute: false },
    unit: { type: String },
    label: { type: String },
    standing: { attribute: false },
    at: { attribute: false },
    numbers: { attribute: false },
    isCentred: { attribute: false },
    isBare: { attribute: false },
  };
  static override styles = [
    common,
    css`
      :host {
        display: block;
        font-size: inherit;
      }
      svg {
        display: block;
      }
      text {
        fill: var(--ink);
        font-family: var(--font-text);
        text-anchor: middle;
        dominant-baseline: central;
        paint-order: stroke;
        stroke: var(--paper);
        stroke-width: 0.9px;
        stroke-linejoin: round;
      }
      .ruler {
        fill: var(--muted);
      }
      .fifth {
        fill: var(--ink);
        font-weight: 600;
      }
      .board {
        fill: none;
        stroke: var(--muted);
        stroke-width: 0.3;
      }
      .strip {
        fill: var(--sunken);
        stroke: var(--hair);
        stroke-width: 0.25;
      }
      .bar {
        stroke: var(--ink);
        stroke-width: 0.9;
      }
      .dot {
        fill: var(--ink);
      }
      .link {
        stroke: var(--ink);
        stroke-width: 1;
      }
      .wire {
        stroke: var(--ink);
        stroke-width: 0.55;
      }
      .body {
        fill: var(--surface);
        stroke: var(--ink);
        stroke-width: 0.6;
      }
      .mark {
        fill: none;
        stroke: var(--ink);
        stroke-width: 0.55;
      }
      .pole {
        stroke-width: 0.8;
      }
      .ring {
        fill: var(--surface);
        stroke: var(--ink);
        stroke-width: 0.8;
      }
      .length {
        fill: var(--muted);
      }
      .corner {
        fill: var(--ink);
      }
      .here {
        fill: none;
        stroke: var(--focus);
        stroke-width: 1.1;
      }
      .copper .strip {
        stroke: var(--control-line);
      }
      .ghost .body {
        fill: none;
        stroke: var(--hair);
      }
      .faint {
        opacity: 0.32;
      }
      .out .body,
      .out .wire,
      .out .mark,
      .out.link,
      .out .ring {
        stroke: var(--accent);
      }
      .out .body {
        stroke-width: 1;
      }
      .out .dot {
        fill: var(--accent);
      }
      text.out {
        fill: var(--accent);
        font-weight: 600;
      }
      .bar.out {
        stroke: var(--accent);
        stroke-width: 1.3;
      }
      @media print {
        .strip {
          fill: #f4f4f4;
          stroke: #b0b0b0;
          print-color-adjust: exact;
          -webkit-print-color-adjust: exact;
        }
        text {
          stroke: #fff;
        }
        /* What has no size to keep is no wider than the paper. */
        :host(:not([unit='mm'])) svg {
          max-width: 100%;
          height: auto;
        }
      }
      @media (forced-colors: active) {
        /* Tints without edges: the names stand across them. */
        .strip,
        .copper .strip {
          fill: color-mix(in srgb, CanvasText 12%, Canvas);
          stroke: none;
        }
      }
    `,
  ];

  declare plan: BoardPlan;
  declare side: Side;
  /** From hole to hole, in `unit`. */
  declare pitch: number;
  declare unit: 'px' | 'mm';
  /** Of the texts, in `unit`. */
  declare textSize: number;
  declare label: string;
  declare standing: Standing | null;
  /** The hole that is ringed; null = none. As on the component side. */
  declare at: Hole | null;
  /** Numbers of joints by hole as on the component side. */
  declare numbers: ReadonlyMap<string, number>;
  /** As much room left of the board as right of it: the two sides then lie on each other. */
  declare isCentred: boolean;
  /** Without words on parts, links and joints. */
  declare isBare: boolean;

  constructor() {
    super();
    this.side = 'component';
    this.pitch = 26;
    this.unit = 'px';
    this.textSize = 12;
    this.label = '';
    this.standing = null;
    this.at = null;
    this.numbers = NOBODY;
    this.isCentred = false;
    this.isBare = false;
  }

  #shapes: { readonly key: readonly unknown[]; readonly shapes: BoardShapes } | null = null;

  #made(): BoardShapes {
    const key = [this.plan, this.side, this.textSize / this.pitch, this.numbers];
    if (this.#shapes === null || key.some((one, i) => one !== this.#shapes!.key[i])) {
      const size = (this.textSize / this.pitch) * HOLE;
      this.#shapes = { key, shapes: boardShapes(this.plan, this.side, size, this.numbers) };
    }
    return this.#shapes.shapes;
  }

  protected override render(): TemplateResult {
    const shapes = this.#made();
    const { side } = shapes;
    const bounds = this.isCentred ? centred(shapes) : shapes.bounds;
    const [width, height] = [bounds.right - bounds.left, bounds.bottom - bounds.top];
    const scale = this.pitch / HOLE;
    const size = (this.textSize / this.pitch) * HOLE;
    return html`<svg
      class=${side}
      role="img"
      aria-label=${this.label}
      viewBox="${bounds.left} ${bounds.top} ${width} ${height}"
      width="${width * scale}${this.unit}"
      height="${height * scale}${this.unit}"
      font-size=${size}
    >
      ${(this.standing?.cuts === 'not made' ? shapes.wholeStrips : shapes.strips).map(
        (box) =>
          svg`<rect class="strip" x=${box.left} y=${box.top} width=${box.right - box.left} height=${box.bottom - box.top}></rect>`,
      )}
      <rect class="board" x="0" y="0" width=${shapes.board.right} height=${shapes.board.bottom}></rect>
      ${this.#corner(shapes)} ${this.#rulers(shapes)}
      ${side === 'component' ? this.#components(shapes) : this.#copper(shapes)}
      ${this.#here(shapes)}
    </svg>`;
  }

  #corner({ corner, side }: BoardShapes): SVGTemplateResult {
    const way = side === 'component' ? 1 : -1;
    return svg`<path class="corner" d="M ${corner.x} ${corner.y} h ${way * 3.4} l ${-way * 3.4} 3.4 z"></path>`;
  }

  #rulers({ rulers, board, side }: BoardShapes): SVGTemplateResult {
    const x = side === 'component' ? board.left - 5.5 : board.right + 5.5;
    return svg`
      ${rulers.strips.map(({ text, y }) => svg`<text class="ruler" x=${x} y=${y}>${text}</text>`)}
      ${rulers.holes.map(({ text, x: at, isFifth }) =>
        this.pitch < this.textSize * 1.5 && !isFifth && text !== '1'
          ? nothing
          : svg`<text class=${isFifth ? 'ruler fifth' : 'ruler'} x=${at} y=${rulers.holesAt}>${text}</text>`,
      )}`;
  }

  #cuts({ cuts, side }: BoardShapes, isOver: boolean): SVGTemplateResult | typeof nothing {
    if (this.standing?.cuts === 'not made') return nothing;
    const standing = this.#cutClass();
    return svg`${cuts.map(({ bars, isUnderChip }) => {
      if (side === 'component' && isUnderChip !== isOver) return nothing;
      return bars.map((bar) => lineOf(bar, `bar ${standing} ${isOver ? 'faint' : ''}`));
    })}`;
  }

  #cutClass(): string {
    const { standing } = this;
    if (standing === null) return '';
    return standing.cuts === true ? 'out' : 'faint';
  }

  #classOf(kind: 'parts' | 'links', key: string): string | null {
    const { standing } = this;
    if (standing === null || standing[kind].has(key)) return standing === null ? '' : 'out';
    if (standing.hidden === null) return 'faint';
    return standing.hidden[kind].has(key) ? null : 'faint';
  }

  #components(shapes: BoardShapes): SVGTemplateResult {
    const { links, parts, kept, labels, poles } = shapes;
    return svg`
      ${kept.map(({ x, y }) => svg`<path class="mark" d="M ${x - 2} ${y - 2} l 4 4 m 0 -4 l -4 4"></path>`)}
      ${this.#cuts(shapes, false)}
      ${parts.map((part) => this.#part(part))}
      ${this.#cuts(shapes, true)}
      ${links.map(({ id, line }) => {
        const look = this.#classOf('links', id);
        return look === null
          ? nothing
          : svg`<g class=${look}>${lineOf(line, `link ${look}`)}${dot(line.x1, line.y1)}${dot(line.x2, line.y2)}</g>`;
      })}
      ${poles.map(({ ref, isPlus, x, y }) => {
        const look = this.#classOf('parts', ref);
        return look === null
          ? nothing
          : svg`<g class=${look}><path class="mark pole" d="M ${x - POLE} ${y} h ${2 * POLE} ${isPlus ? `M ${x} ${y - POLE} v ${2 * POLE}` : ''}"></path></g>`;
      })}
      ${(this.isBare ? [] : labels).map((label) =>
        this.#label(
          label,
          links.some(({ id }) => id === label.key),
        ),
      )}`;
  }

  #copper(shapes: BoardShapes): SVGTemplateResult {
    const { parts, links, labels } = shapes;
    const leads = parts.flatMap((part) => {
      const look = this.#classOf('parts', part.ref);
      return look === null ? [] : part.placed.leads.map(({ at }) => ({ ...pointOf(at), look }));
    });
    const ends = links.flatMap(({ id, line }) => {
      const look = this.#classOf('links', id);
      if (look === null) return [];
      return [
        { x: line.x1, y: line.y1, look },
        { x: line.x2, y: line.y2, look },
      ];
    });
    return svg`
      <g class="ghost">${parts.map(({ ref, body, isRound }) =>
        body === null || this.#classOf('parts', ref) === null ? nothing : bodyOf(body, isRound),
      )}</g>
      ${this.#cuts(shapes, false)}
      ${[...leads, ...ends].map(({ x, y, look }) => svg`<g class=${look}>${dot(x, y)}</g>`)}
      ${this.standing === null && !this.isBare ? labels.map((label) => this.#label(label, false)) : nothing}`;
  }

  #part(part: PartShape): SVGTemplateResult | typeof nothing {
    const look = this.#classOf('parts', part.ref);
    if (look === null) return nothing;
    const { body, isRound, wires, placed } = part;
    const leads = placed.leads.map(({ at }) => pointOf(at));
    const isPin = placed.part.body.kind === 'test pin';
    return svg`<g class=${look}>
      ${body === null || isPin ? nothing : bodyOf(body, isRound)}
      ${wires.map((wire) => lineOf(wire, 'wire'))}
      ${markOf(part)}
      ${leads.map(({ x, y }) =>
        isPin ? svg`<circle class="ring" cx=${x} cy=${y} r=${DOT + 0.6}></circle>` : dot(x, y),
      )}
    </g>`;
  }

  #label({ key, lines, x, y, isUpright }: Placed, isLink: boolean): SVGTemplateResult | typeof nothing {
    const look = this.#classOf(isLink ? 'links' : 'parts', key);
    // On a build card only what is added is named.
    if (look === null || (this.standing?.hidden && look !== 'out')) return nothing;
    const size = (this.textSize / this.pitch) * HOLE;
    const first = -((lines.length - 1) / 2) * size;
    return svg`<text
      class="${look} ${isLink ? 'length' : ''}"
      transform=${isUpright ? `rotate(-90 ${x} ${y})` : nothing}
    >${lines.map((line, i) => svg`<tspan x=${x} y=${y + first + i * size}>${line}</tspan>`)}</text>`;
  }

  #here({ side }: BoardShapes): SVGTemplateResult | typeof nothing {
    const { at } = this;
    if (at === null) return nothing;
    const hole = side === 'component' ? at : { ...at, hole: this.plan.board.holes + 1 - at.hole };
    const { x, y } = pointOf(hole);
    return svg`<circle class="here" cx=${x} cy=${y} r=${DOT * 2}></circle>`;
  }
}

const lineOf = ({ x1, y1, x2, y2 }: Line, look: string): SVGTemplateResult =>
  svg`<line class=${look} x1=${x1} y1=${y1} x2=${x2} y2=${y2}></line>`;

const dot = (x: number, y: number): SVGTemplateResult =>
  svg`<circle class="dot" cx=${x} cy=${y} r=${DOT}></circle>`;

function bodyOf(body: NonNullable<PartShape['body']>, isRound: boolean): SVGTemplateResult {
  const [width, height] = [body.right - body.left, body.bottom - body.top];
  return isRound
    ? svg`<ellipse class="body" cx=${body.left + width / 2} cy=${body.top + height / 2} rx=${width / 2} ry=${height / 2}></ellipse>`
    : svg`<rect class="body" x=${body.left} y=${body.top} width=${width} height=${height}></rect>`;
}

/** Room as on the side that needs more, above and below the same for both sides. */
function centred({ bounds, board }: BoardShapes): BoardShapes['bounds'] {
  const beside = Math.max(-bounds.left, bounds.right - board.right);
  return { ...bounds, left: -beside, right: board.right + beside };
}

/** Notch and pin 1, plus, band, and which leg of a trimmer is the wiper. */
function markOf({ placed, body }: PartShape): SVGTemplateResult | typeof nothing {
  const { mark } = placed;
  if (mark === null || body === null) return nothing;
  switch (mark.kind) {
    case 'notch': {
      const middle = (body.left + body.right) / 2;
      const { x, y } = pointOf(mark.pin1);
      const inward = x < middle ? 3.6 : -3.6;
      return svg`<path class="mark" d="M ${middle - 3} ${body.top} a 3 3 0 0 0 6 0"></path>
        <text x=${x + inward} y=${y}>1</text>`;
    }
    case 'plus': {
      const { x, y } = pointOf(mark.at);
      const right = x >= (body.left + body.right) / 2 ? 1 : -1;
      const at = { x: x + right * 4, y };
      return svg`<path class="mark" d="M ${at.x - 1.6} ${at.y} h 3.2 M ${at.x} ${at.y - 1.6} v 3.2"></path>`;
    }
    case 'band': {
      const { y } = pointOf(mark.at);
      const isTop = y < (body.top + body.bottom) / 2;
      const at = isTop ? body.top + 1.8 : body.bottom - 1.8;
      return svg`<path class="mark" stroke-width="1.2" d="M ${body.left} ${at} H ${body.right}"></path>`;
    }
    case 'legs': {
      const { x, y } = pointOf(mark.wiper);
      return svg`<circle class="mark" cx=${x} cy=${y} r=${DOT + 1.1}></circle>`;
    }
  }
}

customElements.define('board-picture', BoardPicture);

declare global {
  interface HTMLElementTagNameMap {
    'board-picture': BoardPicture;
  }
}
