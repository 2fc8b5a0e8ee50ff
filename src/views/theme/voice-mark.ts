/** How the two voices look wherever they appear: A a solid line and a round mark, B a dashed line and a square one. */
import { css, html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { VoiceId } from '../../quantity/units.ts';

/** The mark alone, centred on (x, y), for use inside a drawing; `radius` in px. */
export function markAt(voice: VoiceId, x: number, y: number, radius = 6): SVGTemplateResult {
  return voice === 'A'
    ? svg`<circle class="mark a" cx=${x} cy=${y} r=${radius}></circle>`
    : svg`<rect class="mark b" x=${x - radius} y=${y - radius} width=${radius * 2} height=${radius * 2}></rect>`;
}

/** A short line ending in the mark, for running text; decorative, so always beside the letter. */
export function voiceMark(voice: VoiceId): TemplateResult {
  return html`<svg class="voice-mark" viewBox="0 0 48 16" width="48" height="16" aria-hidden="true">
    <line class=${voice === 'A' ? 'line a' : 'line b'} x1="1" y1="8" x2="36" y2="8"></line>
    ${markAt(voice, 41, 8, 5)}
  </svg>`;
}

/** Rules for `.line` and `.mark` in drawings. */
export const voiceStyles = css`
  .voice-mark {
    flex: none;
    vertical-align: middle;
    overflow: visible;
  }
  .line {
    fill: none;
    stroke-width: var(--stroke-data);
  }
  .line.a {
    stroke: var(--voice-a);
  }
  .line.b {
    stroke: var(--voice-b);
    stroke-dasharray: 8 4;
  }
  .mark {
    stroke-width: var(--stroke-data);
  }
  .mark.a {
    fill: var(--voice-a);
    stroke: var(--voice-a);
  }
  .mark.b {
    fill: var(--surface);
    stroke: var(--voice-b);
  }
`;
