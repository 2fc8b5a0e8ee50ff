/** Kit in German where words are more than read: typed, saved, told apart, written into a drawing. */
import { afterEach, expect, test } from 'vitest';
import type { KitEntry } from '../../src/design/batch.ts';
import { BANDS, bandsOf, readBands } from '../../src/kit/codes.ts';
import { csvRows } from '../../src/kit/csv.ts';
import { logCsv, readLogCsv } from '../../src/kit/kit-log.ts';
import { orderOf } from '../../src/kit/order.ts';
import { orderCsv } from '../../src/kit/order-table.ts';
import { readMeter } from '../../src/kit/slip.ts';
import { formatDay } from '../../src/quantity/format.ts';
import { ringSheet } from '../../src/views/kit/ring-sheet.ts';
import { numberField } from '../../src/views/pitch/readers.ts';
import {
  type BandColour,
  bandTroubleWords,
  bandWords,
  colourWords,
  measured,
  slipPointWords,
  verdictWords,
} from '../../src/words/bench.ts';
import { germanLists } from '../../src/words/de.ts';
import { shortValue } from '../../src/words/en-kit.ts';
import { faultWords } from '../../src/words/faults.ts';
import { leadName, netName, netOrPart, partName } from '../../src/words/kit.ts';
import { speak } from '../../src/words/spoken.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

afterEach(() => speak('en'));
const german = (): void => speak('de', germanLists);

test('rings are read out in German, and read in German, English and the spellings without umlauts', () => {
  german();
  const bands = bandsOf(4700, 4, 0.05);
  expect(bands.ok && bandWords(bands.bands)).toBe('gelb violett rot gold');
  for (const typed of ['gelb violett rot gold', 'Gelb Lila Rot Gold', 'yellow violet red gold'])
    expect(readBands(typed), typed).toMatchObject({ ok: true, value: { ohms: 4700, tolerance: 0.05 } });
  expect(readBands('gruen weiss schwarz gold')).toEqual(readBands('grün weiß schwarz gold'));
  const trouble = (text: string) => {
    const reading = readBands(text);
    return reading.ok ? '' : bandTroubleWords(reading.problem);
  };
  expect(trouble('mauve rot rot')).toMatch(/„mauve“.*Rosa/);
  expect(trouble('gold rot rot')).toContain('Ring 1 kann nicht gold sein');
});

test.each(['en', 'de'] as const)('no two colours, nets or leads share a name (%s)', (language) => {
  speak(language, language === 'de' ? germanLists : undefined);
  const colours = (Object.keys(BANDS) as BandColour[]).map((colour) => colourWords[colour]);
  expect(new Set(colours).size).toBe(colours.length);
  const nets = (
    [
      'rail',
      'ground',
      'supply',
      'mix',
      'volume',
      'jack',
      'reference',
      'above threshold',
      'below threshold',
    ] as const
  ).map(netName);
  const own = (['discharge', 'between', 'capacitor', 'control', 'gate', 'out', 'node', 'plus'] as const).map(
    (net) => netName(`${net} A`),
  );
  expect(new Set([...nets, ...own]).size).toBe(nets.length + own.length);
  const leads = ['plus', 'minus', 'anode', 'cathode', 'wiper', 'tip', 'sleeve', '1', '2'];
  expect(new Set(leads.map((lead) => leadName('R1', lead, false))).size).toBe(leads.length);
});

test('parts, nets and leads go by their German names', () => {
  german();
  expect([partName('Jack'), partName('Supply'), partName('R3')]).toEqual(['Buchse', 'Quelle', 'R3']);
  expect(['above threshold B', 'capacitor A', 'VR1', 'LDR A', 'Jack'].map(netOrPart)).toEqual([
    'REF OBEN B',
    'KOND A',
    'VR1',
    'LDR A',
    'Buchse',
  ]);
  expect(leadName('U1', '4', false)).toBe('U1 Stift 4');
  expect(leadName('Jack', 'tip', false)).toBe('Buchse Spitze');
  expect(slipPointWords('capacitor', 'B', 'A shaded')).toBe(
    'TP5 Zeitkondensator B, im Mittel, Sensor A beschattet',
  );
  expect(faultWords('cell open', 'A', 9).name).toBe(
    'Fotowiderstand unterbrochen oder eine Leitung ab (Stimme A)',
  );
  expect(faultWords(null, null, 9).mend).toBe('Nichts zu reparieren.');
  expect(verdictWords({ kind: 'off', way: 'low' })).toBe('Zu niedrig.');
  expect(faultWords('battery flat', null, 9).confirm).toBe(
    'TP1 zeigt etwa 9\u00A0V, während beide Stimmen klingen.',
  );
});

test('the German order has a heading for every cell, and its words are German', () => {
  german();
  const [head, ...rows] = csvRows(orderCsv(orderOf(BENCH_DESIGN, BENCH_DESIGN.batch)));
  expect(head).toContain('Je Bausatz');
  expect(new Set(rows.map(({ length }) => length))).toEqual(new Set([head!.length]));
  expect(rows.map(([name]) => name)).toContain('Widerstand 3,9\u00A0kΩ, Metallschicht, 1 %, 0,25 W');
  expect(rows.at(-1)![0]).toBe('Summe');
  // Numbers stay numbers in every spreadsheet.
  for (const row of rows.slice(0, -1)) expect(row[5]).toMatch(/^\d+$/);
});

test('a log saved in one language is read in the other', () => {
  const entry: KitEntry = {
    kit: 3,
    readings: [{ point: 'node A, lit', value: 0.76 }],
    fault: 'cell open A',
    minutes: 12.5,
    lost: [{ kind: 'cell', count: 2 }],
  };
  german();
  const saved = logCsv([entry]);
  speak('en');
  expect(saved).toBe(logCsv([entry]));
  expect(readLogCsv(saved)).toEqual({ ok: true, log: [entry] });
  german();
  expect(readLogCsv(saved)).toEqual({ ok: true, log: [entry] });
});

test('readings and numbers are printed with a comma, and read back as printed', () => {
  german();
  const plain = (text: string) => text.replaceAll('\u00A0', ' ');
  expect(plain(measured(0.762, 'V'))).toBe('0,76 V');
  expect(plain(measured(-0.0201, 'V'))).toBe('−0,02 V');
  expect(plain(measured(-0.001, 'V'))).toBe('0,00 V');
  for (const [value, unit] of [
    [0.76, 'V'],
    [-1.25, 'V'],
    [0.0185, 'A'],
    [394.2, 'Hz'],
  ] as const) {
    const read = readMeter(measured(value, unit), unit);
    expect(read.ok && read.value, measured(value, unit)).toBeCloseTo(value, 9);
  }
  expect(numberField(1.07, 3)).toBe('1,07');
  expect(numberField(12_345, 5)).toBe('12345');
  expect([shortValue(3900), shortValue(4.7), shortValue(6.8e-8)]).toEqual(['3k9', '4,7', '68n']);
  expect(formatDay(new Date(2026, 5, 21))).toBe('21. Juni 2026');
  speak('en');
  expect(formatDay(new Date(2026, 5, 21))).toBe('21 June 2026');
});

/** All words of a template, those within it too. */
function said(template: unknown): string {
  if (typeof template === 'string') return template;
  if (Array.isArray(template)) return template.map(said).join(' ');
  return typeof template === 'object' && template !== null && 'values' in template
    ? said(template.values)
    : '';
}

test('a trimmer’s paper ring names its note once, as German has it', () => {
  german();
  // Against a deeper chamber tone the voice of 210 Hz is an A sharp: B in German, not H.
  const { pitch } = BENCH_DESIGN;
  const deep = { ...BENCH_DESIGN, pitch: { ...pitch, wish: { ...pitch.wish, a4Hertz: 396 } } };
  expect(said(ringSheet(deep, () => ({ values: [] }) as never))).toMatch(/Die Marke: B3 /);
});
