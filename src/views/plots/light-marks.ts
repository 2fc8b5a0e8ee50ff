/** What stands on the light axis, and how needles and trip points are drawn. Light in lux, places in px. */
import { css, nothing, type SVGTemplateResult, svg } from 'lit';
import type { Lux, VoiceId } from '../../quantity/units.ts';
import { markAt } from '../theme/voice-mark.ts';
import { voiceClass } from './chart.ts';

/** The light now at one sensor. */
export interface Needle {
  readonly voice: VoiceId;
  readonly lux: Lux;
  readonly label: string;
}
/** Where a voice stops and starts; null = not on this axis. */
export interface Trip {
  readonly voices: VoiceId | 'both';
  readonly off: Lux | null;
  readonly on: Lux | null;
  readonly label: string;
  /** Said instead of the label where the axis is narrow, e.g. "A 86–101 lux". */
  readonly short?: string;
}
/** A level to compare with. */
export interface LightMark {
  readonly lux: Lux;
  readonly label: string;
}

export const DARKEST: Lux = 0.1;
/** A little beyond 100 000 lx, so that a bright sun (110 000 lx) stands at its own place. */
export const BRIGHTEST: Lux = 130_000;
/** Height of the bar, and how far it stays from the drawing's sides; px. */
export const BAR = 10;
export const EDGE = 10;

/** The trip's two ends in rising order; a missing one is drawn where the other stands. */
export function ends(trip: Trip): readonly [Lux, Lux] {
  const off = trip.off ?? trip.on ?? DARKEST;
  const on = trip.on ?? trip.off ?? DARKEST;
  return [Math.min(off, on), Math.max(off, on)];
}

export function drawTrip(
  trip: Trip,
  place: (lux: Lux) => number,
  top: number,
  bottom: number,
): SVGTemplateResult {
  const [from, to] = ends(trip).map(place) as [number, number];
  const name = voiceClass(trip.voices);
  return svg`<rect class="band ${name}" x=${from} y=${top} width=${to - from} height=${bottom - top}></rect>
    <line class="edge ${name}" x1=${from} x2=${from} y1=${top} y2=${bottom}></line>
    <line class="edge ${name}" x1=${to} x2=${to} y1=${top} y2=${bottom}></line>`;
}

export function drawNeedle(
  needle: Needle,
  x: number,
  y: number,
  bar: number,
  width: number,
): SVGTemplateResult {
  const name = voiceClass(needle.voice);
  const beyond =
    needle.lux < DARKEST
      ? `M${EDGE - 2} ${bar}l-7 5l7 5z`
      : needle.lux > BRIGHTEST
        ? `M${width - EDGE + 2} ${bar}l7 5l-7 5z`
        : null;
  return svg`<line class="line ${name}" x1=${x} x2=${x} y1=${y} y2=${bar + BAR}></line>
    ${beyond === null ? nothing : svg`<path class="beyond ${name}" d=${beyond}></path>`}
    ${markAt(needle.voice, x, y)}`;
}

export const lightStyles = css`
  .drawing {
    min-height: 7.5rem;
  }
  .bar {
    stroke: var(--control-line);
    stroke-width: 1;
  }
  .from {
    stop-color: var(--dark-end);
  }
  .to {
    stop-color: var(--bright-end);
  }
  .level {
    stroke: var(--ink);
    stroke-width: 1;
  }
  .level.around {
    stroke: var(--paper);
    stroke-width: 3.5;
  }
  .beyond.a {
    fill: var(--voice-a);
  }
  .beyond.b {
    fill: var(--voice-b);
  }
`;
