import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { instrumentOf } from '../src/circuit/instrument.ts';
import { decodeText, encodeText } from '../src/design/decode.ts';
import type { Design } from '../src/design/design.ts';
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

it('there are at least two ready designs, one of them the barest build', () => {
  expect(files.length).toBeGreaterThanOrEqual(2);
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

  it('sounds with both voices in a lit room of 300 lx, and is silent under two hands', () => {
    const design = opened(file);
    const settings = settingsOf(design, instrumentOf(design));
    const shade = design.voices.A.polarity === 'shade';
    const [heard, unheard] = shade ? [5, 300] : [300, 5];
    const lit = renderTake(settings, { kind: 'steady', lux: { A: heard, B: heard } }, 1);
    expect(lit.gate).toEqual([
      { voice: 'A', time: 0, sounding: true },
      { voice: 'B', time: 0, sounding: true },
    ]);
    expect(levelAt(lit, 0.5)).toBeGreaterThan(0.05);
    expect(peakOf(lit)).toBeLessThanOrEqual(1.25 * settings.jack.boundVolts);
    const dark = renderTake(settings, { kind: 'steady', lux: { A: unheard, B: unheard } }, 2);
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
