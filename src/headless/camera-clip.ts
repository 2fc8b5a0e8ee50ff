/**
 * A picture for the browser's make-believe camera: 320 × 240 at 30 frames a second, whose left and right halves
 * step through given levels. Written as raw YUV 4:2:0 (y4m), so that no compression disturbs the levels.
 */
import { createHash } from 'node:crypto';
import { closeSync, existsSync, mkdirSync, openSync, renameSync, writeSync } from 'node:fs';
import path from 'node:path';

const width = 320;
const height = 240;
const framesPerSecond = 30;
const neutralChroma = 128;

/** Seconds, then the luma Y of the left and of the right half: video range, 16 black to 235 white. */
export type CameraLevel = readonly [seconds: number, leftLuma: number, rightLuma: number];

/**
 * Writes the clip under node_modules/.cache unless it is there already, and gives its full path. The browser
 * plays it over and over from the start of the camera. One second takes 3.5 MB.
 */
export function cameraClip(levels: readonly CameraLevel[]): string {
  const folder = path.resolve('node_modules/.cache/lampnote-camera');
  const name = createHash('sha256').update(JSON.stringify(levels)).digest('hex').slice(0, 16);
  const clip = path.join(folder, `${name}.y4m`);
  if (existsSync(clip)) return clip;
  mkdirSync(folder, { recursive: true });
  const draft = `${clip}.${process.pid}`;
  const file = openSync(draft, 'w');
  try {
    writeSync(file, `YUV4MPEG2 W${width} H${height} F${framesPerSecond}:1 Ip A1:1 C420jpeg\n`);
    for (const [seconds, leftLuma, rightLuma] of levels) {
      const frame = frameOf(leftLuma, rightLuma);
      const count = Math.round(seconds * framesPerSecond);
      for (let index = 0; index < count; index += 1) writeSync(file, frame);
    }
  } finally {
    closeSync(file);
  }
  renameSync(draft, clip);
  return clip;
}

/** The grey, 0 to 255, that a page reads from a clip's luma: video range stretched to full range. */
export function greyOfLuma(luma: number): number {
  return Math.round(((luma - 16) * 255) / 219);
}

function frameOf(leftLuma: number, rightLuma: number): Uint8Array {
  const row = new Uint8Array(width).fill(leftLuma, 0, width / 2).fill(rightLuma, width / 2);
  const head = new TextEncoder().encode('FRAME\n');
  const frame = new Uint8Array(head.length + width * height * 1.5).fill(neutralChroma);
  frame.set(head);
  for (let y = 0; y < height; y += 1) frame.set(row, head.length + y * width);
  return frame;
}
