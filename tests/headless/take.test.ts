/** A take: its files against the model, and what it does when it cannot. */
import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { cycleOf } from '../../src/circuit/astable.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { encodeText } from '../../src/design/decode.ts';
import type { Design } from '../../src/design/design.ts';
import { readRows } from '../../src/headless/light-rows.ts';
import type { TakeReport } from '../../src/headless/report.ts';
import { main } from '../../src/headless/take.ts';
import { renderTake } from '../../src/sound/render.ts';
import { designWith } from '../circuit/building.ts';
import { crossings, frequencyOf, partOf } from '../ear.ts';
import { settingsFrom } from '../sound/playing.ts';
import { readWav } from '../sound/wav-reader.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'lampnote-take-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const LIGHT = 'time_s,lux_a,lux_b\n0,300,2\n0.5,300,2\n0.55,2,2\n1,2,300\n1.2,300,300\n';
const file = (name: string) => path.join(folder, name);
const FILES = ['--design', 'd.json', '--light', 'l.csv', '--out', 'o.wav', '--report', 'r.json'];

function prepared(design: Design, light = LIGHT): void {
  writeFileSync(file('d.json'), encodeText(design));
  writeFileSync(file('l.csv'), light);
}

/** Runs the program in the folder: its exit code and what it said. */
function run(...args: string[]): { code: number; said: string; complaint: string } {
  let said = '';
  let complaint = '';
  const code = main(args, {
    folder,
    say: (text) => {
      said += text;
    },
    complain: (text) => {
      complaint += text;
    },
  });
  return { code, said, complaint };
}

const report = (): TakeReport => JSON.parse(readFileSync(file('r.json'), 'utf8')) as TakeReport;
const wav = () => readWav(readFileSync(file('o.wav')));

describe('a take', () => {
  test.each([48_000, 22_050])('at %d samples a second is the engine’s own sound, in volts', (rate) => {
    const design = designWith({ noise: { voltsRms: 0.001, seed: 3 } });
    prepared(design);
    expect(run(...FILES, '--seconds', '1.5', '--rate', String(rate))).toEqual({
      code: 0,
      said: '',
      complaint: '',
    });
    const light = readRows(LIGHT);
    if (!light.ok) throw new Error(light.sentence);
    const own = renderTake(settingsFrom(design), light.program, 1.5, rate);
    const { samples, sampleRate, channels, formatTag } = wav();
    expect([sampleRate, channels, formatTag, samples.length]).toEqual([rate, 1, 3, Math.round(1.5 * rate)]);
    const { fullScaleVolts, voices, output } = report();
    const worst = samples.reduce(
      (most, sample, i) => Math.max(most, Math.abs(sample * fullScaleVolts - own.samples[i]!)),
      0,
    );
    expect(worst).toBeLessThan(1e-6 * fullScaleVolts);
    for (const { id, gate } of voices)
      expect(gate).toEqual(
        own.gate.filter(({ voice }) => voice === id).map(({ time, sounding }) => ({ time, on: sounding })),
      );
    const volts = [...own.samples];
    expect(output.peak).toBe(Math.max(...volts.map(Math.abs)));
    expect(output.dc).toBeCloseTo(volts.reduce((sum, v) => sum + v, 0) / volts.length, 9);
    expect(output.rms).toBeCloseTo(Math.sqrt(volts.reduce((sum, v) => sum + v * v, 0) / volts.length), 9);
  });

  test('reports what the model says of each voice, and what is heard agrees', () => {
    const design = designWith({ output: { coupling: null } });
    prepared(design);
    run(...FILES, '--seconds', '1.5', '--rate', '192000');
    const { voices } = report();
    const instrument = instrumentOf(design);
    expect(voices.map(({ id }) => id)).toEqual(['A', 'B']);
    for (const { id, frequency, dutyCycle, tripLux } of voices) {
      const { cycle } = instrument.voices[id];
      expect([frequency, dutyCycle]).toEqual([cycle.frequency, cycle.dutyCycle]);
      expect(tripLux).toEqual(instrument.voices[id].tripLux);
      expect(tripLux.on!).toBeGreaterThan(tripLux.off!);
    }
    const [a, b] = voices as [TakeReport['voices'][0], TakeReport['voices'][0]];
    expect(a.gate.map(({ on }) => on)).toEqual([true, false, true]);
    expect(b.gate.map(({ on }) => on)).toEqual([false, true]);
    expect([a.gate[0]!.time, b.gate[0]!.time]).toEqual([0, 0]);
    // A alone until its light goes.
    const heard = wav();
    const middle =
      (Math.max(...heard.samples.subarray(0, 1000)) + Math.min(...heard.samples.subarray(1000, 20_000))) / 2;
    expect(frequencyOf(partOf(heard, 0.02, 0.5), middle) / a.frequency!).toBeCloseTo(1, 6);
    // A begins with an empty capacitor: its first high is that of the file.
    const down = crossings(heard, middle).find(({ up }) => !up)!;
    expect(Math.abs(down.time - a.firstHigh!)).toBeLessThan(1e-6);
    // B's capacitor has long settled when its light comes.
    expect(b.firstHigh! / cycleOf(instrument.astables.B).firstHighSeconds).toBeCloseTo(1, 12);
  });

  test('is the same every time, and --noise 0 takes the noise away', () => {
    const design = designWith({ voices: { hysteresisOhms: null }, noise: { voltsRms: 0.002, seed: 8 } });
    const trip = instrumentOf(design).voices.A.tripLux.on!;
    prepared(design, `time_s,lux_a,lux_b\n0,${trip * 1.05},2\n2,${trip * 0.95},2\n`);
    run(...FILES, '--seconds', '2');
    const first = [readFileSync(file('o.wav')), readFileSync(file('r.json'))];
    run(...FILES, '--seconds', '2');
    expect([readFileSync(file('o.wav')), readFileSync(file('r.json'))]).toEqual(first);
    expect(report().voices[0]!.gate.length).toBeGreaterThan(10);
    run(...FILES, '--seconds', '2', '--noise', '0');
    expect(report().voices[0]!.gate.length).toBe(2);
  });

  test('keeps its level: the same design half as loud gives half the volts over the same full scale rule', () => {
    const loud = designWith({ output: { volume: { ohms: 10_000, rotation: 1 } } });
    const soft = designWith({ output: { volume: { ohms: 10_000, rotation: 0.2 } } });
    const peaks = [loud, soft].map((design) => {
      prepared(design);
      run(...FILES, '--seconds', '0.3');
      const { output, fullScaleVolts } = report();
      const sample = wav().samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
      expect(sample * fullScaleVolts).toBeCloseTo(output.peak, 5);
      return output.peak;
    });
    expect(peaks[1]!).toBeLessThan(0.5 * peaks[0]!);
  });

  test('of a voice that never swings has nulls and a warning with a reason and a remedy', () => {
    // A control voltage that the capacitor cannot charge to.
    const design = designWith({ A: { controlVolts: 10 } });
    prepared(design);
    expect(run(...FILES, '--seconds', '0.2').code).toBe(0);
    const { voices, warnings } = report();
    expect(voices[0]).toMatchObject({ id: 'A', frequency: null, dutyCycle: null, firstHigh: null });
    expect(voices[1]!.frequency).toBeGreaterThan(0);
    expect(warnings.some(({ voice, id }) => voice === 'A' && id === 'no-pitch')).toBe(true);
    for (const { reason, remedy } of warnings) {
      expect(reason).toMatch(/\.$/);
      expect(remedy).toMatch(/\.$/);
    }
  });

  test('of a gate that its pull-up starves has no trip points', () => {
    prepared(designWith({ A: { pullUpOhms: 1e6 } }));
    run(...FILES, '--seconds', '0.2');
    expect(report().voices[0]!.tripLux).toEqual({ on: null, off: null });
    expect(report().voices[1]!.tripLux.on).toBeGreaterThan(0);
  });

  test('replaces files of an earlier take', () => {
    prepared(designWith());
    writeFileSync(file('o.wav'), 'old');
    run(...FILES, '--seconds', '0.2');
    expect(wav().samples.length).toBe(9600);
    expect(readdirSync(folder).sort()).toEqual(['d.json', 'l.csv', 'o.wav', 'r.json']);
  });
});

describe('wrong input ends with exit code 2, one sentence, and no file', () => {
  beforeEach(() => prepared(designWith()));

  test.each<[string, readonly string[], () => void]>([
    ['no arguments', [], () => {}],
    ['a design that is not there', FILES, () => rmSync(file('d.json'))],
    ['light that is not there', FILES, () => rmSync(file('l.csv'))],
    ['a design that is no JSON', FILES, () => writeFileSync(file('d.json'), '{"format":')],
    ['a design that is something else', FILES, () => writeFileSync(file('d.json'), '{}')],
    [
      'a design with a value out of range',
      FILES,
      () => writeFileSync(file('d.json'), encodeText(designWith({ A: { raOhms: -1 } }))),
    ],
    [
      'a design of a later version',
      FILES,
      () => writeFileSync(file('d.json'), JSON.stringify({ ...designWith(), version: 99 })),
    ],
    ['a design file far too large', FILES, () => writeFileSync(file('d.json'), ' '.repeat(300_000))],
    ['a row that is no light', FILES, () => writeFileSync(file('l.csv'), 'time_s,lux_a,lux_b\n0,x,1\n')],
    [
      'a folder for a design',
      FILES,
      () => {
        rmSync(file('d.json'));
        mkdirSync(file('d.json'));
      },
    ],
    ['a folder in place of the sound', FILES, () => mkdirSync(file('o.wav'))],
    ['a folder in place of the report', FILES, () => mkdirSync(file('r.json'))],
    ['a report in a folder that is not there', [...FILES.slice(0, 7), 'no/r.json'], () => {}],
    ['sound in a folder that is not there', [...FILES.slice(0, 5), 'no/o.wav', ...FILES.slice(6)], () => {}],
    ['one file for sound and report', [...FILES.slice(0, 7), 'o.wav'], () => {}],
    ['sound over the design', [...FILES.slice(0, 5), './d.json', ...FILES.slice(6)], () => {}],
  ])('%s', (_title, args, spoil) => {
    spoil();
    const before = readdirSync(folder).sort();
    const { code, said, complaint } = run(...args, ...(args.length > 0 ? ['--seconds', '0.2'] : []));
    expect(code).toBe(2);
    expect(said).toBe('');
    expect(complaint).toMatch(/^[^\n]+[^\n.]\.\n$/);
    expect(readdirSync(folder).sort()).toEqual(before);
  });

  test('files of an earlier take stay as they are', () => {
    writeFileSync(file('o.wav'), 'earlier');
    writeFileSync(file('l.csv'), 'nothing');
    expect(run(...FILES, '--seconds', '1').code).toBe(2);
    expect(readFileSync(file('o.wav'), 'utf8')).toBe('earlier');
  });
});

test('help goes to the usual output', () => {
  const { code, said, complaint } = run('--help');
  expect([code, complaint]).toEqual([0, '']);
  for (const option of ['--design', '--light', '--seconds', '--out', '--report', '--rate', '--noise'])
    expect(said).toContain(option);
});

describe('the command itself', () => {
  const command = (...args: string[]) =>
    promisify(execFile)(process.execPath, [path.resolve('src/headless/run.js'), 'take', ...args], {
      cwd: folder,
    }).then(
      ({ stdout, stderr }) => ({ code: 0, stdout, stderr }),
      ({ code, stdout, stderr }: { code: number; stdout: string; stderr: string }) => ({
        code,
        stdout,
        stderr,
      }),
    );

  test('writes both files beside where it is called', { timeout: 60_000 }, async () => {
    prepared(designWith());
    expect(await command(...FILES, '--seconds', '0.25')).toEqual({ code: 0, stdout: '', stderr: '' });
    expect(wav().samples.length).toBe(12_000);
    expect(report().voices.length).toBe(2);
  });

  test('ends with 2 and one sentence when something is wrong', { timeout: 60_000 }, async () => {
    const { code, stdout, stderr } = await command('--design', 'nowhere.json');
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^[^\n]+\.\n$/);
  });
});
