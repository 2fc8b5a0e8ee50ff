/** The stage as a line drawing, seen from the front, to scale sideways: lamp, light, table, sensors, hands. */
import { css, type SVGTemplateResult, svg } from 'lit';
import { HAND_RADIUS } from '../../light/hand.ts';
import { handPlace, STAGE_LIMITS, type Stage, sensorPlace } from '../../light/stage.ts';
import type { Pair, VoiceId } from '../../quantity/units.ts';
import { VOICES } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import { markAt } from '../theme/voice-mark.ts';

/** The drawing's size in its own units, and its scale: units a metre, sideways and for hands above the table. */
export const PICTURE = { width: 480, height: 266 } as const;
const PER_METRE = 560;
const TABLE_Y = 196;
const LAMP_TOP = 18;
const LAMP_SPAN = 78;
/** Hands stand higher than to scale, so that a hand 2 cm up is not drawn inside the table. */
const HAND_BASE = 24;
const HAND_PER_METRE = 330;

/** Sideways place in the drawing of a place on the table. */
const pictureX = (metres: number): number => PICTURE.width / 2 + metres * PER_METRE;
export const metresAt = (x: number): number => (x - PICTURE.width / 2) / PER_METRE;

const lampY = (stage: Stage): number => {
  const { min, max } = STAGE_LIMITS.lampMetres;
  return LAMP_TOP + LAMP_SPAN * (1 - (stage.lampMetres - min) / (max - min));
};
const handY = (stage: Stage): number => TABLE_Y - HAND_BASE - stage.handMetres * HAND_PER_METRE;

export function drawStage(stage: Stage, lux: Pair<number>): SVGTemplateResult {
  const y = lampY(stage);
  return svg`
    ${stage.lampOn ? drawRays(stage, y) : ''}
    <path class="lamp" d="M ${PICTURE.width / 2 - 13} ${y} h 26 l 8 16 h -42 z" />
    <text class="note" x=${PICTURE.width / 2 + 32} y=${y + 12}>${words.light.lampPlace(stage.lampMetres)}</text>
    <line class="table" x1="8" x2=${PICTURE.width - 8} y1=${TABLE_Y} y2=${TABLE_Y} />
    ${VOICES.map((voice) => drawSensor(stage, voice, lux[voice]))}
    ${drawSpacing(stage)}
    ${VOICES.map((voice) => drawHand(stage, voice))}`;
}

/** From the lamp's rim to each sensor, and the hand's shadow where it cuts in. */
function drawRays(stage: Stage, y: number): SVGTemplateResult {
  return svg`${VOICES.map((voice) => {
    const x = pictureX(sensorPlace(stage, voice));
    return svg`<line class="ray" x1=${PICTURE.width / 2 - 18} y1=${y + 18} x2=${x} y2=${TABLE_Y - 4} />
      <line class="ray" x1=${PICTURE.width / 2 + 18} y1=${y + 18} x2=${x} y2=${TABLE_Y - 4} />`;
  })}`;
}

function drawSensor(stage: Stage, voice: VoiceId, lux: number): SVGTemplateResult {
  const x = pictureX(sensorPlace(stage, voice));
  return svg`${markAt(voice, x, TABLE_Y - 1, 8)}
    <text class="sensor ${voice.toLowerCase()}" x=${x} y=${TABLE_Y + 24} text-anchor="middle">${words.axis.needle(voice, lux)}</text>`;
}

function drawSpacing(stage: Stage): SVGTemplateResult {
  const [a, b] = [pictureX(sensorPlace(stage, 'A')), pictureX(sensorPlace(stage, 'B'))];
  const y = TABLE_Y + 34;
  return svg`<path class="measure" d="M ${a} ${y} v 6 H ${b} v -6" />
    <text class="note" x=${(a + b) / 2} y=${y + 25} text-anchor="middle">${words.light.spacing(stage.spacingMetres)}</text>`;
}

/** A flat hand seen from the side, reaching in from its own edge; the fingertips just past its middle. */
function drawHand(stage: Stage, voice: VoiceId): SVGTemplateResult {
  const inward = voice === 'A' ? 1 : -1;
  const middle = pictureX(handPlace(stage, voice));
  const tip = middle + inward * HAND_RADIUS * PER_METRE;
  const y = handY(stage);
  const edge = voice === 'A' ? -20 : PICTURE.width + 20;
  const reach = Math.abs(tip - edge);
  const knuckle = Math.min(reach, 74) * inward;
  const wrist = Math.min(reach, 92) * inward;
  const d = `M ${edge} ${y - 11} H ${tip - wrist} q ${14 * inward} -4 ${(wrist - knuckle) * 0.9} -3
    L ${tip - 8 * inward} ${y - 4} q ${9 * inward} 3 ${1 * inward} 8 L ${tip - knuckle * 0.7} ${y + 8}
    q ${-10 * inward} 5 ${-22 * inward} 5 H ${edge} Z`;
  const thumb = `M ${tip - knuckle * 0.95} ${y + 6} q ${20 * inward} 12 ${34 * inward} 8`;
  return svg`<g class="hand" data-hand=${voice}>
    <path class="grip" d="M ${middle - 44} ${y - 26} h 88 v 52 h -88 z" />
    <path d=${d} /><path class="thumb" d=${thumb} />
    <text class="letter" x=${tip - 46 * inward} y=${y + 5} text-anchor="middle">${voice}</text>
  </g>`;
}

export const pictureStyles = css`
  .lamp,
  .hand path {
    fill: var(--surface);
    stroke: var(--ink);
    stroke-width: var(--stroke-quiet);
    stroke-linejoin: round;
  }
  .hand .grip {
    fill: transparent;
    stroke: none;
  }
  .hand .thumb {
    fill: none;
  }
  .hand {
    cursor: grab;
    touch-action: none;
  }
  .table,
  .measure {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1;
  }
  .table {
    stroke-width: var(--stroke-quiet);
  }
  .ray {
    stroke: var(--control-line);
    stroke-width: 1;
    stroke-dasharray: 2 4;
  }
  /* Sizes are in the drawing's own units: the narrower the drawing, the larger they must be to stay legible. */
  text {
    fill: var(--muted);
    font-size: var(--look-picture-text, var(--picture-text, 16px));
  }
  .sensor {
    font-weight: 600;
  }
  .sensor.a {
    fill: var(--voice-a);
  }
  .sensor.b {
    fill: var(--voice-b);
  }
  .letter {
    font-weight: 600;
    fill: var(--ink);
  }
`;
