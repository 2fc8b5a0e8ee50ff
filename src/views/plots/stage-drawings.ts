/**
 * The drawings of the one picture, one for each of its parts: light, resistance, node, comparison, gate, tone. All share
 * one size and hold no words. Values in lux, ohms, volts, seconds; places in the drawing's own units.
 */
import { scaleLinear, scaleLog } from 'd3-scale';
import { css, nothing, type SVGTemplateResult, svg } from 'lit';
import type { ShownGate } from '../../app/shown.ts';
import type { CyclePoint, VoicePicture } from '../../lesson/picture.ts';
import type { Lux, Ohms, Pair, Seconds, VoiceId, Volts } from '../../quantity/units.ts';
import { markAt } from '../theme/voice-mark.ts';
import { voiceClass } from './chart.ts';
import { BRIGHTEST, DARKEST } from './light-marks.ts';
import { placeOn } from './slow-cycle.ts';

export const DRAWING = { width: 170, height: 180 } as const;
const TOP = 14;
const BOTTOM = 166;
const MIDDLE = (TOP + BOTTOM) / 2;

/** One voice as drawn. */
export interface DrawnVoice {
  readonly id: VoiceId;
  readonly picture: VoicePicture;
  readonly shown: ShownGate['kind'];
  /** Which part of its divider the cell is. */
  readonly cell: 'top' | 'bottom';
  /** Its cell's resistance by light. */
  readonly curve: readonly { readonly lux: Lux; readonly ohms: Ohms }[];
  /** First cycles after a release, while the tone is slowed. */
  readonly cycles: readonly CyclePoint[];
  /** Seconds of the circuit since the release; null = held in reset. */
  readonly since: Seconds | null;
  /** The two levels the capacitor swings between, and where it waits. */
  readonly levels: { readonly lower: Volts; readonly upper: Volts; readonly rest: Volts };
}

const along = scaleLog().domain([DARKEST, BRIGHTEST]).range([22, 158]).clamp(true);
const lit = (lux: Lux) => along(Math.max(lux, DARKEST));
/** Columns for one voice or two. */
const columns = (voices: readonly DrawnVoice[]): Pair<number> =>
  voices.length === 1 ? { A: 85, B: 85 } : { A: 50, B: 120 };
/** Rows for one voice or two. */
const rows = (voices: readonly DrawnVoice[]): Pair<number> =>
  voices.length === 1 ? { A: MIDDLE, B: MIDDLE } : { A: 54, B: 130 };

/** Upper ends of the needles: one above the other where both have the same light. */
const NEEDLE: Pair<number> = { A: 144, B: 131 };
/** Sizes of the marks on one line: the round one stays in sight within the square one. */
const NESTED: Pair<number> = { A: 5.5, B: 10 };

/** Rays on each side of the middle one. */
const RAYS = 3;

/** Rays as many as the light has decades, and the light axis with a needle for each sensor. */
export function drawLight(voices: readonly DrawnVoice[]): SVGTemplateResult {
  const x = columns(voices);
  const apart = voices.length === 1 ? 14 : 9;
  return svg`<linearGradient id="light"><stop class="from" offset="0"></stop><stop class="to" offset="1"></stop></linearGradient>
    ${voices.map(({ id, picture }) => {
      const fall = ((RAYS + 1) * (lit(picture.lux) - 22)) / 136;
      return svg`${Array.from({ length: 2 * RAYS + 1 }, (_, i) => {
        const order = i - RAYS;
        const strength = Math.min(1, Math.max(0, fall - Math.abs(order)));
        const to = x[id] + order * apart * 0.8;
        return strength === 0
          ? nothing
          : svg`<line class="ray" x1=${x[id] + order * apart * 1.3} y1=${TOP} x2=${to} y2="70" stroke-opacity=${strength.toFixed(2)} />`;
      })}
      <circle class="sensor ${voiceClass(id)}" cx=${x[id]} cy="100" r="22" />
      <path class="line ${voiceClass(id)} plain" d="M${x[id] - 12} 104q6 -16 12 -4t12 -4" />`;
    })}
    <rect class="bar" x="22" y="154" width="136" height="9" fill="url(#light)" />
    ${voices.map(({ id, picture }) => {
      const at = lit(picture.lux);
      return svg`<line class="line ${voiceClass(id)} plain" x1=${at} x2=${at} y1=${NEEDLE[id]} y2="163" />${markAt(id, at, NEEDLE[id], 5)}`;
    })}`;
}

const ohmsUp = scaleLog()
  .domain([100, 3e6])
  .range([BOTTOM - 6, TOP])
  .clamp(true);

/** Resistance over light, both in equal steps for equal ratios. */
export function drawResistance(voices: readonly DrawnVoice[]): SVGTemplateResult {
  return svg`<path class="axis" d="M22 ${TOP - 6}V${BOTTOM}H162" />
    ${voices.map(
      ({ id, curve }) =>
        svg`<path class="line ${voiceClass(id)}" d="M${curve
          .map((point) => `${lit(point.lux).toFixed(1)} ${ohmsUp(point.ohms).toFixed(1)}`)
          .join('L')}" />`,
    )}
    ${voices.toReversed().map(({ id, picture }) => {
      const [x, y] = [lit(picture.lux), ohmsUp(picture.ohms)];
      const radius = voices.length === 1 ? 7 : NESTED[id];
      return svg`<path class="leader" d="M22 ${y}H${x}V${BOTTOM}" />${markAt(id, x, y, radius)}`;
    })}`;
}

const LEAST_PART = 12;
/** From a part to the rail, and to the middle of the node. */
const [AT_RAIL, AT_NODE] = [6, 11];
const NEAREST = AT_RAIL + LEAST_PART + AT_NODE;

/** Two resistors across the supply; each is as long as its share of it. */
export function drawDivider(voices: readonly DrawnVoice[]): SVGTemplateResult {
  const x = columns(voices);
  return svg`<path class="rail" d="M18 ${TOP}H152M18 ${BOTTOM}H152" />
    ${voices.map(({ id, picture, cell }) => {
      const up = scaleLinear([0, picture.volts.rail], [BOTTOM, TOP]);
      const node = Math.min(BOTTOM - NEAREST, Math.max(TOP + NEAREST, up(picture.volts.node)));
      const part = (side: 'top' | 'bottom', from: number, to: number) => {
        const name = side === cell ? `cell ${voiceClass(id)}` : 'fixed';
        const arrows = `M${x[id] - 32} ${(from + to) / 2 - 11}l12 7M${x[id] - 32} ${(from + to) / 2 + 1}l12 7`;
        return svg`<rect class="part ${name}" x=${x[id] - 13} y=${from} width="26" height=${Math.max(LEAST_PART, to - from)} />
          ${side === cell ? svg`<path class="falls ${voiceClass(id)}" d=${arrows} />` : nothing}`;
      };
      return svg`<path class="wire" d="M${x[id]} ${TOP}V${BOTTOM}" />
        ${part('top', TOP + AT_RAIL, node - AT_NODE)} ${part('bottom', node + AT_NODE, BOTTOM - AT_RAIL)}
        <path class="wire" d="M${x[id]} ${node}h28" />${markAt(id, x[id], node, 7)}`;
    })}`;
}

/** The node on the scales against the reference with its two trip points. */
export function drawComparison(voices: readonly DrawnVoice[]): SVGTemplateResult {
  const [first] = voices;
  if (first === undefined) return svg``;
  // Half the supply: the reference stands in the lower half, where the cells work.
  const up = scaleLinear([0, first.picture.volts.rail / 2], [BOTTOM, TOP]).clamp(true);
  const x = voices.length === 1 ? { A: 96, B: 96 } : { A: 76, B: 122 };
  const same = voices.every(({ picture }) => sameTrips(picture, first.picture));
  return svg`<path class="axis" d="M36 ${TOP - 6}V${BOTTOM}" />
    ${[0, 1, 2, 3, 4].map((volts) => svg`<path class="axis" d="M30 ${up(volts)}h6" />`)}
    ${(same ? [first] : voices).map(({ id, picture }) => {
      const { startVolts, stopVolts, reference } = picture.compare;
      const ends = [up(startVolts ?? reference), up(stopVolts ?? reference)];
      const [high, low] = [Math.min(...ends), Math.max(...ends)];
      const name = same ? 'both' : voiceClass(id);
      const [left, right] = same ? [36, 160] : [x[id] - 22, x[id] + 22];
      return svg`<rect class="band ${name}" x=${left} y=${high} width=${right - left} height=${low - high} />
        <path class="edge ${name}" d="M${left} ${high}H${right}M${left} ${low}H${right}" />`;
    })}
    ${voices.map(({ id, picture, shown }) => {
      const y = up(shown === 'chattering' ? picture.volts.node : weighed(picture));
      return svg`<path class="leader" d="M36 ${y}H${x[id]}" />${markAt(id, x[id], y, 8)}`;
    })}`;
}

/** The node on the scales: on the side it is told to be on, at the trip point while it waits to be told beyond it. */
function weighed({ volts: { node }, compare: { nodeIs, tripVolts } }: VoicePicture): Volts {
  if (tripVolts === null) return node;
  return nodeIs === 'above' ? Math.max(node, tripVolts) : Math.min(node, tripVolts);
}

function sameTrips(a: VoicePicture, b: VoicePicture): boolean {
  return a.compare.startVolts === b.compare.startVolts && a.compare.stopVolts === b.compare.stopVolts;
}

/** The way through to the timer: a straight line, a stop bar, or a wavy line. */
export function drawGate(voices: readonly DrawnVoice[]): SVGTemplateResult {
  const y = rows(voices);
  return svg`${voices.map(({ id, shown }) => {
    const [at, name] = [y[id], voiceClass(id)];
    const inside = {
      sounding: svg`<path class="line ${name}" d="M54 ${at}H108" />`,
      silent: svg`<path class="stop" d="M81 ${at - 20}v40" />`,
      chattering: svg`<path class="line ${name}" d="M54 ${at}l7 -12l9 24l9 -24l9 24l9 -24l8 12h3" />`,
    }[shown];
    const out = shown === 'silent' ? 'held' : `line ${name}`;
    return svg`<path class="line ${name}" d="M8 ${at}H${shown === 'silent' ? 74 : 54}" />
      <rect class="box" x="50" y=${at - 28} width="62" height="56" />${inside}
      <path class=${out} d="M116 ${at}H150" />
      ${shown === 'silent' ? nothing : svg`<path class="head ${name}" d="M148 ${at - 7}l13 7l-13 7z" />`}`;
  })}`;
}

/** Periods drawn of the quicker voice: two to four. */
const PERIODS = 3;
const LEFT = 10;
const RIGHT = 160;

/** The output: a square wave, a flat line, or one in pieces. */
export function drawTone(voices: readonly DrawnVoice[]): SVGTemplateResult {
  const y = rows(voices);
  const quickest = Math.max(...voices.map(({ picture }) => picture.tone.frequency));
  const seconds = windowOf(quickest);
  const height = voices.length === 1 ? 64 : 44;
  return svg`${voices.map(({ id, picture, shown }) => {
    const [low, high] = [y[id] + height / 2, y[id] - height / 2];
    const { highSeconds, lowSeconds, frequency } = picture.tone;
    if (shown === 'silent' || frequency === 0)
      return svg`<path class="held" d="M${LEFT} ${low}H${RIGHT}" />${markAt(id, RIGHT - 6, low, 5)}`;
    const x = scaleLinear([0, seconds], [LEFT, RIGHT]).clamp(true);
    const cycles = Math.ceil(seconds * frequency);
    const wave = Array.from({ length: cycles }, (_, i) => {
      const start = i * (highSeconds + lowSeconds);
      return `V${high}H${x(start + highSeconds).toFixed(1)}V${low}H${x(start + highSeconds + lowSeconds).toFixed(1)}`;
    }).join('');
    return svg`<path class="line ${voiceClass(id)} ${shown}" d="M${LEFT} ${low}${wave}" />`;
  })}`;
}

/** A power of two of a millisecond, so that turning a trimmer moves the wave and not the paper beneath it. */
function windowOf(frequency: number): Seconds {
  if (!(frequency > 0)) return 1e-3;
  return 1e-3 * 2 ** Math.round(Math.log2((PERIODS * 1000) / frequency));
}

/** The slowed voice: its capacitor between the two levels, its output beneath, and where it is now. */
export function drawSlowed(voices: readonly DrawnVoice[]): SVGTemplateResult {
  const each = (BOTTOM - TOP + 10) / voices.length;
  return svg`${voices.map((voice, i) => drawCycle(voice, TOP - 6 + i * each, each - 10))}`;
}

function drawCycle(voice: DrawnVoice, top: number, height: number): SVGTemplateResult {
  const { id, cycles, since, levels, picture } = voice;
  const end = cycles.at(-1);
  const floor = top + height * 0.66;
  const up = scaleLinear([0, picture.volts.rail * 0.75], [floor, top]).clamp(true);
  const level = (volts: Volts) => svg`<path class="level" d="M${LEFT} ${up(volts)}H${RIGHT}" />`;
  const [high, low] = [top + height * 0.78, top + height];
  if (end === undefined) return svg`<path class="held" d="M${LEFT} ${low}H${RIGHT}" />`;
  const x = scaleLinear([0, end.time], [LEFT, RIGHT]);
  const capacitor = cycles
    .map((point) => `${x(point.time).toFixed(1)} ${up(point.volts).toFixed(1)}`)
    .join('L');
  const output = cycles.map((point) => `H${x(point.time).toFixed(1)}V${point.high ? high : low}`).join('');
  const now = since === null ? null : placeOn(cycles, since);
  const name = voiceClass(id);
  return svg`<path class="axis" d="M${LEFT} ${top}V${floor}H${RIGHT}" />
    ${level(levels.lower)}${level(levels.upper)}
    <path class="line ${name} plain ${now ? '' : 'ahead'}" d="M${capacitor}" />
    <path class="line ${name} plain ${now ? '' : 'ahead'}" d="M${LEFT} ${low}V${high}${output}" />
    ${
      now === null
        ? markAt(id, LEFT, up(levels.rest), 6)
        : svg`<path class="leader" d="M${x(now.time)} ${top}V${low}" />${markAt(id, x(now.time), up(now.volts), 6)}`
    }`;
}

export const drawingStyles = css`
  svg.part {
    display: block;
    width: 100%;
    height: auto;
    max-height: 100%;
    overflow: visible;
  }
  .ray {
    stroke: var(--ink);
    stroke-width: var(--stroke-quiet);
  }
  .sensor,
  .box,
  rect.part {
    fill: var(--surface);
    stroke-width: var(--stroke-quiet);
    stroke: var(--ink);
  }
  .sensor.a,
  rect.part.a {
    stroke: var(--voice-a);
    stroke-width: var(--stroke-data);
  }
  .sensor.b,
  rect.part.b {
    stroke: var(--voice-b);
    stroke-width: var(--stroke-data);
    stroke-dasharray: 7 3;
  }
  .falls {
    fill: none;
    stroke: var(--voice-a);
    stroke-width: var(--stroke-quiet);
  }
  .falls.b {
    stroke: var(--voice-b);
  }
  .wire,
  .rail {
    fill: none;
    stroke: var(--ink);
    stroke-width: var(--stroke-quiet);
  }
  .rail {
    stroke-width: var(--stroke-data);
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
  .axis {
    stroke-width: var(--stroke-quiet);
  }
  .leader {
    stroke-dasharray: 2 4;
  }
  .line.plain {
    stroke-dasharray: none;
    stroke-linejoin: round;
  }
  .line.chattering {
    stroke-dasharray: 18 12;
  }
  .line.ahead {
    opacity: 0.4;
  }
  .level {
    fill: none;
    stroke: var(--control-line);
    stroke-width: 1;
    stroke-dasharray: 2 4;
  }
  .stop {
    stroke: var(--ink);
    stroke-width: calc(var(--stroke-data) * 2.4);
  }
  .held {
    fill: none;
    stroke: var(--control-line);
    stroke-width: var(--stroke-quiet);
    stroke-dasharray: 2 6;
  }
  .head.a {
    fill: var(--voice-a);
  }
  .head.b {
    fill: var(--voice-b);
  }
`;
