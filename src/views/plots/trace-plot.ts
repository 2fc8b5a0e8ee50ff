/**
 * The canvas of the live traces: uPlot draws the axes and the two node lines; bands, line ends, gate lanes and the
 * cursor are added in its hooks by `trace-marks.ts`.
 */
import uPlot from 'uplot';
import type { Seconds } from '../../quantity/units.ts';
import {
  DASH,
  drawBands,
  drawCursor,
  drawEnds,
  drawLanes,
  laneHeight,
  nameBands,
  type TracePaint,
  type TraceScene,
} from './trace-marks.ts';
import type { TraceWindow } from './trace-ring.ts';

export function tracePlot(
  target: HTMLElement,
  size: { readonly width: number; readonly height: number },
  paint: TracePaint,
  scene: () => TraceScene,
  wide: (text: string) => number,
): uPlot {
  const ratio = window.devicePixelRatio;
  const lanes = laneHeight(paint) * 2 + 10;
  const first = scene();
  const room = Math.ceil(wide(first.formatVolts(first.max))) + 16;
  const data = { points: { show: false }, width: paint.line };
  const quiet = { show: false };
  return new uPlot(
    {
      ...size,
      padding: [Math.ceil(paint.fontSize * 0.7), Math.ceil(paint.fontSize * 1.9), 0, 0],
      legend: quiet,
      cursor: quiet,
      scales: {
        x: { time: false, range: () => [-scene().span, 0] },
        y: { range: () => [0, scene().max] },
      },
      series: [
        {},
        { ...data, stroke: paint.voices.A },
        { ...data, stroke: paint.voices.B, dash: DASH.map((length) => length * ratio) },
      ],
      axes: [
        {
          stroke: paint.muted,
          font: paint.font,
          size: lanes + Math.ceil(paint.fontSize * 1.45),
          gap: lanes,
          grid: quiet,
          ticks: quiet,
          border: { show: true, stroke: paint.ink, width: 1.25 },
          splits: () => secondsApart(scene().span),
          values: (_plot, splits) => splits.map((ago) => scene().formatAgo(ago)),
        },
        {
          stroke: paint.muted,
          font: paint.font,
          size: room,
          gap: 4,
          grid: quiet,
          ticks: { show: true, size: 5, stroke: paint.ink, width: 1.25 },
          border: { show: true, stroke: paint.ink, width: 1.25 },
          space: paint.fontSize * 2.4,
          values: (_plot, splits) => splits.map((volts) => scene().formatVolts(volts)),
        },
      ],
      hooks: {
        drawAxes: [(plot) => framed(plot, () => drawBands(plot, paint, scene()))],
        draw: [
          (plot) =>
            framed(plot, () => {
              nameBands(plot, paint, scene(), wide);
              drawEnds(plot, paint, scene().window);
              drawLanes(plot, paint, scene().window);
              drawCursor(plot, paint, scene().cursor);
            }),
        ],
      },
    },
    columnsOf(first.window),
    target,
  );
}

/** The window as uPlot's columns; views on the same memory, nothing copied. */
export function columnsOf(window: TraceWindow): uPlot.AlignedData {
  const { length } = window;
  return [
    window.ago.subarray(0, length),
    window.voltsA.subarray(0, length),
    window.voltsB.subarray(0, length),
  ];
}

function secondsApart(span: Seconds): Seconds[] {
  return Array.from({ length: Math.floor(span) + 1 }, (_, index) => index - Math.floor(span));
}

/** uPlot remembers the context's state; whatever a hook changes must be put back. */
function framed(plot: uPlot, draw: () => void): void {
  plot.ctx.save();
  draw();
  plot.ctx.restore();
}
