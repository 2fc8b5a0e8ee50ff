import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { instrumentOf } from '../src/circuit/instrument.ts';
import { decodeText, encodeText } from '../src/design/decode.ts';
import type { Design } from '../src/design/design.ts';
import { nearestNote } from '../src/plan/notes.ts';
import { pairOf } from '../src/quantity/units.ts';
import { renderTake } from '../src/sound/render.ts';
import { settingsOf } from '../src/sound/settings.ts';
import { isSilent, levelAt, peakOf } from './ear.ts';

const folder = new URL('../presets/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.json'));

function opened(file: string): Design {
  const decoded = decodeText(readFileSync(new URL(file, folder), 'utf8'));
  if (!decoded.ok) throw new Error(`${file}: ${JSON.stringify(decoded.complaints)}`);
  return decoded.design;
}

it('there are at least six ready designs, one of them the barest build', () => {
  expect(files.length).toBeGreaterThanOrEqual(6);
  const bare = files
    .map(opened)
    .filter(
      ({ output, voices, threshold }) =>
        output.mixOhms === null &&
        voices.A.rbFixedOhms === 0 &&
        voices.B.rbFixedOhms === 0 &&
        threshold.arrangement === 'shared',
    );
  expect(bare.length).toBeGreaterThanOrEqual(1);
});

describe.each(files)('%s', (file) => {
  it('is written as this version writes it', () => {
    expect(encodeText(opened(file))).toBe(readFileSync(new URL(file, folder), 'utf8'));
  });

  it('is wished for in Pitch as it sounds', () => {
    const design = opened(file);
    const { voices } = instrumentOf(design);
    const { notes } = design.pitch.wish;
    expect(notes).toEqual(pairOf((voice) => nearestNote(voices[voice].cycle.frequency).name));
  });

  it('sounds with both voices at 300 lx (in shade: 5 lx), and is silent the other way round', () => {
    const design = opened(file);
    const settings = settingsOf(design, instrumentOf(design));
    // Each voice under the light it sounds in, and then under the other.
    const light = (sounds: boolean, id: 'A' | 'B') =>
      (design.voices[id].polarity === 'light') === sounds ? 300 : 5;
    const lit = renderTake(
      settings,
      { kind: 'steady', lux: { A: light(true, 'A'), B: light(true, 'B') } },
      1,
    );
    expect(lit.gate).toEqual([
      { voice: 'A', time: 0, sounding: true },
      { voice: 'B', time: 0, sounding: true },
    ]);
    expect(levelAt(lit, 0.5)).toBeGreaterThan(0.05);
    expect(peakOf(lit)).toBeLessThanOrEqual(1.25 * settings.jack.boundVolts);
    const dark = renderTake(
      settings,
      { kind: 'steady', lux: { A: light(false, 'A'), B: light(false, 'B') } },
      2,
    );
    expect(isSilent(dark, 1.9)).toBe(true);
  });

  it('plays both voices between 60 Hz and 2 kHz', () => {
    const { voices } = instrumentOf(opened(file));
    for (const { cycle } of [voices.A, voices.B]) {
      expect(cycle.frequency).toBeGreaterThan(60);
      expect(cycle.frequency).toBeLessThan(2000);
    }
  });
});
