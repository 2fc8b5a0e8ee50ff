/**
 * What is added to the canvas of the live traces: the trip points as bands, the voices' marks at the line ends, the gate
 * lanes and the time cursor. Places in canvas px (CSS px times the device's ratio); sizes of the look in CSS px.
 */
import type uPlot from 'uplot';
import type { Pair, Seconds, VoiceId, Volts } from '../../quantity/units.ts';
import { spread } from './column.ts';
import type { Sheet } from './sheet.ts';
import { soundingStretches, type TraceWindow } from './trace-ring.ts';
import type { ReferenceBand } from './volt-scale.ts';

/** Colours and sizes (CSS px) of the present look. */
export interface TracePaint {
  readonly ink: string;
  readonly muted: string;
  readonly accent: string;
  readonly ground: string;
  readonly voices: Pair<string>;
  /** Width of a data line. */
  readonly line: number;
  readonly fontSize: number;
  readonly font: string;
  readonly boldFont: string;
}

/** What to draw, read anew at each drawing. */
export interface TraceScene {
  readonly window: TraceWindow;
  readonly span: Seconds;
  readonly max: Volts;
  readonly references: readonly ReferenceBand[];
  /** Seconds ago, negative; null = no cursor. */
  readonly cursor: Seconds | null;
  readonly formatVolts: (volts: Volts) => string;
  readonly formatAgo: (ago: Seconds) => string;
}

export const DASH = [8, 4];

/** Height of one gate lane, CSS px. */
export function laneHeight(paint: TracePaint): number {
  return Math.ceil(paint.fontSize * 1.35);
}

/** Reads the present look; canvas cannot use tokens by itself. */
export function paintOf(sheet: Sheet): TracePaint {
  return {
    ink: sheet.token('--ink'),
    muted: sheet.token('--muted'),
    accent: sheet.token('--accent'),
    ground: sheet.token('--paper'),
    voices: { A: sheet.token('--voice-a'), B: sheet.token('--voice-b') },
    line: sheet.pixels('--stroke-data'),
    fontSize: sheet.fontSize,
    font: sheet.font(),
    boldFont: sheet.font('bold'),
  };
}

function scaled(font: string): string {
  return font.replace(/([0-9.]+)px/, (_, size: string) => `${Number(size) * window.devicePixelRatio}px`);
}

export function drawBands(plot: uPlot, paint: TracePaint, scene: TraceScene): void {
  const { ctx, bbox } = plot;
  const ratio = window.devicePixelRatio;
  for (const band of scene.references) {
    const colour = band.voices === 'both' ? paint.accent : paint.voices[band.voices];
    const high = plot.valToPos(band.high, 'y', true);
    const low = plot.valToPos(band.low, 'y', true);
    ctx.fillStyle = colour;
    ctx.globalAlpha = 0.14;
    ctx.fillRect(bbox.left, high, bbox.width, low - high);
    ctx.globalAlpha = 1;
    ctx.strokeStyle = colour;
    ctx.lineWidth = 1 * ratio;
    ctx.setLineDash(band.voices === 'B' ? DASH.map((length) => length * ratio) : []);
    for (const y of high === low ? [high] : [high, low]) {
      ctx.beginPath();
      ctx.moveTo(bbox.left, y);
      ctx.lineTo(bbox.left + bbox.width, y);
      ctx.stroke();
    }
  }
}

/** The bands' names, last and with ground around the letters, so that no line strikes them out. */
export function nameBands(
  plot: uPlot,
  paint: TracePaint,
  scene: TraceScene,
  wide: (text: string) => number,
): void {
  const { ctx, bbox } = plot;
  const ratio = window.devicePixelRatio;
  const height = paint.fontSize * 1.3 * ratio;
  const shelves = scene.references.map((band) => ({
    wanted: plot.valToPos(band.high, 'y', true) - height / 2,
    height,
  }));
  const middles = spread(shelves, bbox.top, bbox.top + bbox.height);
  ctx.setLineDash([]);
  ctx.lineJoin = 'round';
  ctx.lineWidth = 4 * ratio;
  ctx.strokeStyle = paint.ground;
  ctx.font = scaled(paint.font);
  ctx.textBaseline = 'middle';
  ctx.textAlign = 'left';
  scene.references.forEach((band, index) => {
    if (wide(band.label) * ratio > bbox.width - 12) return;
    ctx.fillStyle = band.voices === 'both' ? paint.accent : paint.voices[band.voices];
    const y = middles[index] ?? bbox.top;
    ctx.strokeText(band.label, bbox.left + 8 * ratio, y);
    ctx.fillText(band.label, bbox.left + 8 * ratio, y);
  });
}

/** The voice's mark and letter at the newest frame, letters pushed apart where the lines meet. */
export function drawEnds(plot: uPlot, paint: TracePaint, trace: TraceWindow): void {
  if (trace.length === 0) return;
  const { ctx, bbox } = plot;
  const ratio = window.devicePixelRatio;
  const last = trace.length - 1;
  const ends = (['A', 'B'] as const).map((voice) => {
    const volts = (voice === 'A' ? trace.voltsA : trace.voltsB)[last] ?? 0;
    const y = plot.valToPos(volts, 'y', true);
    return { voice, y: Math.min(Math.max(y, bbox.top), bbox.top + bbox.height) };
  });
  const height = paint.fontSize * 1.15 * ratio;
  const middles = spread(
    ends.map((end) => ({ wanted: end.y, height })),
    bbox.top - height / 2,
    bbox.top + bbox.height + height / 2,
  );
  const x = bbox.left + bbox.width;
  ctx.font = scaled(paint.boldFont);
  ctx.textBaseline = 'middle';
  ctx.textAlign = 'left';
  ctx.lineWidth = 2 * ratio;
  ctx.setLineDash([]);
  ends.forEach((end, index) => {
    const radius = 4 * ratio;
    ctx.strokeStyle = paint.voices[end.voice];
    ctx.fillStyle = end.voice === 'A' ? paint.voices.A : paint.ground;
    ctx.beginPath();
    if (end.voice === 'A') ctx.arc(x, end.y, radius, 0, Math.PI * 2);
    else ctx.rect(x - radius, end.y - radius, radius * 2, radius * 2);
    ctx.fill();
    ctx.stroke();
    ctx.fillStyle = paint.voices[end.voice];
    ctx.fillText(end.voice, x + radius * 2.2, middles[index] ?? end.y);
  });
}

/** Under the volts: a full bar where A sounds, a dashed outline where B does. */
export function drawLanes(plot: uPlot, paint: TracePaint, trace: TraceWindow): void {
  const { ctx, bbox } = plot;
  const ratio = window.devicePixelRatio;
  const lane = laneHeight(paint) * ratio;
  ctx.font = scaled(paint.boldFont);
  ctx.textBaseline = 'middle';
  ctx.textAlign = 'right';
  ctx.lineWidth = 1.75 * ratio;
  const row = (voice: VoiceId, top: number) => {
    ctx.fillStyle = paint.voices[voice];
    ctx.strokeStyle = paint.voices[voice];
    ctx.fillText(voice, bbox.left - 9 * ratio, top + lane / 2);
    for (const [from, to] of soundingStretches(trace, voice)) {
      const left = Math.max(bbox.left, plot.valToPos(from, 'x', true));
      const right = plot.valToPos(to, 'x', true);
      const inset = lane * 0.22;
      if (voice === 'A') ctx.fillRect(left, top + inset, right - left, lane - 2 * inset);
      else ctx.strokeRect(left, top + inset, right - left, lane - 2 * inset);
    }
  };
  const top = bbox.top + bbox.height + 6 * ratio;
  ctx.setLineDash([]);
  row('A', top);
  ctx.setLineDash([6 * ratio, 3 * ratio]);
  row('B', top + lane);
}

export function drawCursor(plot: uPlot, paint: TracePaint, ago: Seconds | null): void {
  if (ago === null) return;
  const { ctx, bbox } = plot;
  const ratio = window.devicePixelRatio;
  const x = plot.valToPos(ago, 'x', true);
  ctx.strokeStyle = paint.ink;
  ctx.lineWidth = 1.5 * ratio;
  ctx.setLineDash([]);
  ctx.beginPath();
  ctx.moveTo(x, bbox.top);
  ctx.lineTo(x, bbox.top + bbox.height + (laneHeight(paint) * 2 + 6) * ratio);
  ctx.stroke();
}
