/** Chips, output and supply in German. */
import { formatFixed, formatNumber, formatQuantity } from '../quantity/format.ts';
import { trimmerNames } from './de-pitch.ts';
import type { words } from './en.ts';
import type { Translated } from './spoken.ts';

const minus = (text: string): string => text.replace('-', '−');
const hertz = (value: number): string =>
  value >= 10_000 ? formatQuantity(value, 'Hz', 3) : formatFixed(value, value < 100 ? 2 : 1, 'Hz');

export const germanBoard: Translated<(typeof words)['board']> = {
  heading: 'Chips, Ausgang und Versorgung',
  timer: 'Timer',
  timers: { bipolar: 'bipolar', cmos: 'CMOS' },
  comparator: 'Komparator',
  comparators: { classic: 'klassisch', later: 'neuerer Chip' },
  supply: 'Versorgung',
  supplies: { 'block-9v': '9-V-Block', 'four-aa': '4 × AA', 'five-volt': '5 V' },
  volts: 'Volt',
  mixing: 'Ausgänge',
  mixings: { resistors: 'Mischwiderstände', joined: 'direkt verbunden' },
  mix: (voice) => `von ${voice}`,
  shunt: 'nach 0 V',
  coupling: 'Koppel-C',
  couplingKind: 'seine Art',
  couplingKinds: { film: 'Folie', ceramic: 'Keramik', electrolytic: 'Elko' },
  volume: 'Lautstärke-Trimmpoti',
  volumeTurn: 'gedreht',
  source: 'Widerstand der Quelle',
  diode: 'Diode gegen Verpolung',
  decoupled: 'Stützkondensatoren an beiden Chips',
  dip: 'gemeinsamer Einbruch (erste Näherung)',
  seed: 'Startzahl des Rauschens',
  levelHead: 'Pegel an der Buchse',
  levels: ['', 'Spitze-Spitze', 'effektiv', 'dBV', 'dBu'],
  levelOf: (voice) => (voice === 'both' ? 'beide' : `Stimme ${voice}`),
  decibels: (value) => (value === null ? 'keiner' : minus(formatFixed(value, 1))),
  dc: (held) =>
    held === null
      ? 'Kein Koppelkondensator: Die Buchse führt Gleichspannung.'
      : `${formatFixed(Math.abs(held), 2, 'V')} Gleichspannung stehen am Koppelkondensator; ein gepolter hat sein Plusbein zu ${held >= 0 ? 'den Timern' : 'der Buchse'} hin.`,
  thump: (peak, time) =>
    `Eine Stimme, die einsetzt oder aufhört, stößt die Buchse um ${formatQuantity(peak, 'V', 2)}; nach ${formatQuantity(time, 's', 2)} ist das auf ein Drittel abgeklungen.`,
  headphones: (watts, decibels) =>
    `Als Kopfhörer: ${formatQuantity(watts, 'W', 2)} in der Last, ${decibels === null ? 'kein Ton' : `etwa ${formatFixed(decibels, 0)} dB`} bei einem Paar, das aus 1 mW 100 dB macht. Nur grob: Die Modelle unterscheiden sich um ±12 dB.`,
  powerHead: 'Versorgungsstrom',
  powers: ['', 'Strom', 'Schiene', 'Einbruch', 'Batterie hält'],
  playStates: { both: 'beide klingen', onlyA: 'nur A', onlyB: 'nur B', none: 'beide schweigen' },
  hours: (value) => (value === null ? 'keine Batterie' : `${formatNumber(value, 2)} h`),
  amperes: (value) => formatQuantity(value, 'A', 3),
  milliVolts: (value) => formatQuantity(value, 'V', 2),
  load: 'Last',
  noise: 'Rauschen am Knoten',
  trimmerParts: trimmerNames,
  trimmerPart: 'Trimmpoti-Art',
  jack: (peak, corner) =>
    `An der Buchse: bis ${formatQuantity(peak, 'V', 3)} Spitze${corner === null ? ', ohne Koppelkondensator' : `, Grenzfrequenz ${hertz(corner)}`}.`,
  clash: (amperes, rated) =>
    `Verbundene Ausgänge arbeiten mit etwa ${formatQuantity(amperes, 'A', 2)} gegeneinander, solange einer hoch und der andere tief ist${amperes > rated ? ` (zulässig ${formatQuantity(rated, 'A', 2)})` : ''}; zu hören ist der stärkere von beiden.`,
  notes: 'Notizen (bitte keine Namen von Menschen)',
  notesLabel: 'Notizen',
};
