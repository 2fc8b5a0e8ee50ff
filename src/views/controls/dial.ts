/**
 * The drawing of a trimmer: a printed scale and a plain slotted disc seen from above. Decoration only: name, value and
 * keys belong to the range it stands on. One turn sweeps 270° from lower left to lower right; a trimmer of several
 * turns shows where within the present turn the slot stands.
 */
import { css, type SVGTemplateResult, svg } from 'lit';
import type { Fraction, VoiceId } from '../../quantity/units.ts';
import { markAt } from '../theme/voice-mark.ts';
import { around, CENTRE, SWEEP, slotAngle } from './dial-angles.ts';

const DISC = 35;
const SCALE = 46;

function arc(radius: number, from: number, to: number): string {
  const a = around(radius, from);
  const b = around(radius, to);
  const large = to - from > 180 ? 1 : 0;
  return `M${a.x.toFixed(2)} ${a.y.toFixed(2)}A${radius} ${radius} 0 ${large} 1 ${b.x.toFixed(2)} ${b.y.toFixed(2)}`;
}

export interface DialPicture {
  readonly rotation: Fraction;
  readonly turns: number;
  readonly voice: VoiceId | null;
}

export function drawDial({ rotation, turns, voice }: DialPicture): SVGTemplateResult {
  const several = turns > 1;
  const start = several ? 0 : -SWEEP / 2;
  const angle = slotAngle(rotation, turns);
  const count = 10;
  const ticks = Array.from({ length: several ? count : count + 1 }, (_, index) => {
    const at = several ? index * 36 : start + (index * SWEEP) / count;
    const inner = around(SCALE - 2, at);
    const outer = around(index % 5 === 0 ? SCALE + 6 : SCALE + 2, at);
    return svg`<line class="tick" x1=${inner.x} y1=${inner.y} x2=${outer.x} y2=${outer.y}></line>`;
  });
  // A circle's arc cannot start and end at one point.
  const end = Math.min(angle, start + 359.9);
  const tip = around(SCALE, angle);
  const line = voice === 'A' ? 'line a' : voice === 'B' ? 'line b' : 'line plain';
  return svg`
    ${ticks}
    ${end - start > 0.5 ? svg`<path class=${line} d=${arc(SCALE, start, end)}></path>` : null}
    <circle class="ring" cx=${CENTRE} cy=${CENTRE} r=${DISC + 5}></circle>
    <circle class="disc" cx=${CENTRE} cy=${CENTRE} r=${DISC}></circle>
    <rect class="slot" x=${CENTRE - 4.5} y=${CENTRE - 27} width="9" height="54" rx="1"
      transform="rotate(${angle.toFixed(2)} ${CENTRE} ${CENTRE})"></rect>
    ${voice === null ? svg`<circle class="mark plain" cx=${tip.x} cy=${tip.y} r="5"></circle>` : markAt(voice, tip.x, tip.y, 5)}
  `;
}

export const dialStyles = css`
  .tick {
    stroke: var(--muted);
    stroke-width: 1.25;
  }
  .disc {
    fill: var(--surface);
    stroke: var(--ink);
    stroke-width: var(--stroke-quiet);
  }
  /* Shown when the range has the focus. */
  .ring {
    fill: none;
    stroke: none;
    stroke-width: calc(var(--stroke-focus) + 1px);
  }
  .slot {
    fill: var(--sunken);
    stroke: var(--ink);
    stroke-width: var(--stroke-quiet);
  }
  .line.plain {
    stroke: var(--accent);
  }
  .mark.plain {
    fill: var(--accent);
    stroke: var(--accent);
  }
`;
