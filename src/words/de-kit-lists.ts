/** Words of the connection list, the board plan and the bench in German: nets, parts, leads, colours, test points. */
import { formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import {
  type BandColour,
  type benchWords,
  type logWords,
  measured,
  type SlipLight,
  type SlipPoint,
  type soundCheckWords,
} from './bench.ts';
import type { CommonNet, kitWords, PartRole, VoiceNet } from './kit.ts';
import type { Translated } from './spoken.ts';

/** Pins of the timer keep the names of its data sheet. */
export const germanNets: Readonly<Record<CommonNet | VoiceNet, string>> = {
  rail: 'V+',
  ground: '0 V',
  supply: 'QUELLE +',
  mix: 'MISCH',
  volume: 'LAUT',
  jack: 'BUCHSE',
  reference: 'REF',
  'above threshold': 'REF OBEN',
  'below threshold': 'REF UNTEN',
  discharge: 'DIS',
  between: 'ZWISCHEN',
  capacitor: 'KOND',
  control: 'CONT',
  gate: 'GATE',
  out: 'OUT',
  node: 'KNOTEN',
  plus: 'PLUS',
};

export const germanPartNames: Readonly<Record<string, string>> = { Supply: 'Quelle', Jack: 'Buchse' };

export const germanRoles: Readonly<Record<PartRole, string>> = {
  timer: 'Doppeltimer, 14 Stifte',
  comparator: 'Doppelkomparator, 8 Stifte',
  charge: 'RA, lädt den Kondensator',
  'fixed rb': 'RB, fester Teil',
  pitch: 'Tonhöhen-Trimmpoti',
  timing: 'Zeitkondensator',
  'control bypass': 'beruhigt den Steuerstift',
  'control lead': 'Leitung zur eigenen Steuerspannung',
  cell: 'Fotowiderstand an Litzen',
  divider: 'Teilerwiderstand des Fotowiderstands',
  'above threshold': 'Endwiderstand über dem Schwellen-Trimmpoti',
  threshold: 'Schwellen-Trimmpoti',
  'below threshold': 'Endwiderstand unter dem Schwellen-Trimmpoti',
  input: 'in Reihe mit dem +-Eingang',
  hysteresis: 'Hysteresewiderstand',
  'pull-up': 'zieht das Gate hoch',
  mixing: 'Mischwiderstand',
  shunt: 'vom Mischpunkt nach 0 V',
  volume: 'Lautstärke-Trimmpoti',
  coupling: 'Koppelkondensator zur Buchse',
  jack: 'Klinkenbuchse',
  diode: 'Diode gegen Verpolung',
  reservoir: 'Pufferkondensator an der Schiene',
  'timer bypass': 'Stützkondensator am Timer',
  'comparator bypass': 'Stützkondensator am Komparator',
  supply: 'Leitungen zur Versorgung',
  'test pin': 'Messstift',
};

export const germanLeads: Readonly<Record<string, string>> = {
  plus: '+',
  minus: '−',
  anode: 'Anode',
  cathode: 'Kathode (Ring)',
  wiper: 'Schleifer',
  tip: 'Spitze',
  sleeve: 'Schaft',
};

export const germanKitLists: Translated<typeof kitWords> = {
  pin: (ref, pin) => `${ref} Stift ${pin}`,
  connectionList: 'Verbindungsliste',
  parts: 'Teile',
  nets: 'Netze',
  underChip: (ref) => `unter ${ref}`,
  betweenNets: (left, right) => `zwischen ${left} und ${right}`,
  cutList: 'Liste der Trennstellen',
  linkList: 'Liste der Drahtbrücken',
  linkLength: (millimetres) => `${millimetres}, blanker Draht`,
};

export const germanColours: Readonly<Record<BandColour, string>> = {
  black: 'schwarz',
  brown: 'braun',
  red: 'rot',
  orange: 'orange',
  yellow: 'gelb',
  green: 'grün',
  blue: 'blau',
  violet: 'violett',
  grey: 'grau',
  white: 'weiß',
  gold: 'gold',
  silver: 'silber',
  pink: 'rosa',
};

export const germanUses: Readonly<Record<string, string>> = {
  charge: 'RA',
  'fixed rb': 'fester Teil von RB',
  pitch: 'Tonhöhe',
  timing: 'Zeitkondensator',
  'control bypass': 'Steuerstift',
  cell: 'Sensor',
  divider: 'Teiler',
  input: 'Komparatoreingang',
  hysteresis: 'Hysterese',
  'pull-up': 'Pull-up',
  'above threshold': 'über der Schwelle',
  threshold: 'Schwelle',
  'below threshold': 'unter der Schwelle',
  mixing: 'Mischung',
  shunt: 'Mischpunkt nach 0 V',
  volume: 'Lautstärke',
  coupling: 'Kopplung',
  jack: 'Buchse',
  supply: 'Versorgung',
  diode: 'gegen Verpolung',
  reservoir: 'Puffer am Timer',
  'timer bypass': 'Stützkondensator am Timer',
  'comparator bypass': 'Stützkondensator am Komparator',
  timer: 'Timer',
  comparator: 'Komparator',
  board: 'Platine',
  'test pin': 'Messpunkte',
  links: 'Brücken',
  'sensor leads': 'Leitungen des Fotowiderstands',
};

export const germanSlipPoints: Readonly<Record<SlipPoint, string>> = {
  rail: 'TP1 Schiene',
  node: 'TP2 Sensorknoten',
  reference: 'TP3 Referenz',
  gate: 'TP4 Gate',
  capacitor: 'TP5 Zeitkondensator, im Mittel',
  control: 'Steuerstift',
  out: 'TP6 Timerausgang, im Mittel',
  mix: 'TP7 Mischpunkt, im Mittel',
  'jack dc': 'TP8 Buchse, Gleichspannung',
  'jack ac': 'TP8 Buchse, Wechselspannung',
  current: 'Versorgungsstrom',
  'pitch at low end': 'Tonhöhe, Trimmpoti am Rechtsanschlag',
  'pitch at high end': 'Tonhöhe, Trimmpoti am Linksanschlag',
  'pitch at target': 'Tonhöhe, gestimmt',
};

export const germanSlipLights: Readonly<Record<SlipLight, string>> = {
  any: '',
  lit: 'beide Sensoren im Licht',
  shade: 'beide Sensoren beschattet',
  'A shaded': 'Sensor A beschattet',
  'B shaded': 'Sensor B beschattet',
  unplugged: 'eine Leitung des Sensors ab',
};

export const germanBench: Translated<typeof benchWords> = {
  bandTrouble(problem) {
    switch (problem.kind) {
      case 'not a colour':
        return `„${problem.read}“ ist keine Ringfarbe; es gibt Schwarz, Braun, Rot, Orange, Gelb, Grün, Blau, Violett, Grau, Weiß, Gold, Silber und Rosa.`;
      case 'band count':
        return `Ein Widerstand hat drei bis sechs Ringe; gelesen: ${problem.count}.`;
      case 'misplaced':
        return `Ring ${problem.place} kann nicht ${germanColours[problem.colour]} sein: vom anderen Ende her lesen.`;
    }
  },
  valueVerdict(verdict) {
    switch (verdict.kind) {
      case 'matches':
        return 'Das richtige Teil.';
      case 'other end':
        return `Vom anderen Ende gelesen sind es ${formatQuantity(verdict.ohms, 'Ω')}, das richtige Teil: zur Sicherheit nachmessen.`;
      case 'decades':
        return `Um den Faktor ${formatNumber(10 ** Math.abs(verdict.decades), 3)} zu ${verdict.decades < 0 ? 'klein' : 'groß'}: die häufigste Verwechslung. Nicht einbauen.`;
      case 'other value':
        return `Ein anderer Wert, das ${formatNumber(verdict.ratio, 3)}-Fache des richtigen. Nicht einbauen.`;
    }
  },
  range: (least, most, unit) => `${measured(least, unit)} bis ${measured(most, unit)}`,
  sureness: (share) =>
    share >= 0.995 ? 'so gut wie sicher' : share < 0.005 ? 'sehr unwahrscheinlich' : formatShare(share),
  slipVerdict(verdict) {
    switch (verdict.kind) {
      case 'good':
        return 'Gut.';
      case 'off':
        return verdict.way === 'low' ? 'Zu niedrig.' : 'Zu hoch.';
      case 'impossible':
        return {
          negative: 'Negativ: die Messspitzen tauschen, schwarz an 0 V, und noch einmal messen.',
          'above the supply':
            'Mehr, als die Versorgung gibt: Messbereich und Einheit prüfen und noch einmal messen.',
          'not a number': 'Keine Zahl gelesen: noch einmal tippen.',
          'too large':
            'Das kann keine Platine zeigen: Messbereich und Einheit prüfen und noch einmal messen.',
        }[verdict.why];
    }
  },
};

/** The columns are those of the file, the same in every language. */
export const germanKitLog: Translated<typeof logWords> = {
  columns: ['kit', 'fault', 'minutes', 'readings', 'lost'],
  noNames: 'Nur Bausatznummern: bitte keine Namen.',
  tooLong: (most) =>
    `Die Datei enthält mehr als ${formatNumber(most, 6)} Bausätze; mehr fasst kein Protokoll. Aus dieser Datei wurde nichts übernommen.`,
  refused: (line, column, read) =>
    column === null
      ? `Die erste Zeile sollte kit,fault,minutes,readings,lost sein; gelesen: „${read}“.`
      : `Zeile ${line}, Spalte ${column}: „${read}“ ist nicht zu lesen. Aus dieser Datei wurde nichts übernommen.`,
};

export const germanSoundCheck: Translated<typeof soundCheckWords> = {
  oneVoice: 'Immer nur eine Stimme: den anderen Sensor beschatten oder beleuchten, bis er schweigt.',
  none: {
    'too short': 'Die Aufnahme ist zu kurz: mindestens eine Viertelsekunde, besser zwei Sekunden.',
    silent: 'In der Aufnahme ist nichts zu hören: Eingang und Pegel prüfen.',
    'no steady pitch': 'Es ist keine einzelne, stetige Tonhöhe zu finden: Schweigt die andere Stimme?',
  },
  turn: (turn, degrees) => {
    if (turn === null) return 'Das Ziel liegt außerhalb dessen, was dieses Trimmpoti erreicht.';
    const way = turn > 0 ? 'im Uhrzeigersinn' : 'gegen den Uhrzeigersinn';
    return Math.abs(turn) < 0.001
      ? 'Das Trimmpoti so lassen.'
      : `Um ${formatNumber(Math.abs(turn) * degrees, 2)}° ${way} drehen.`;
  },
};
