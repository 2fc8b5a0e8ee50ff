/** Words of the place Pitch up to the search: the wish, the drawer, what stands in the way. In German. */
import { formatFixed, formatNumber, formatShare, formatSigned } from '../quantity/format.ts';
import { noteIn } from './amounts.ts';
import { typedNumber } from './de-typed.ts';
import {
  type DIELECTRIC_NAMES as ENGLISH_DIELECTRICS,
  type TRIMMER_NAMES as ENGLISH_TRIMMERS,
  hertzText,
  type INTERVAL_WORDS,
  type pitchWords,
} from './en-pitch.ts';
import { excerpt } from './excerpt.ts';
import type { Translated } from './spoken.ts';

const quoted = (text: string): string => `„${excerpt(text, 24)}“`;
const between = (low: number, high: number): string => `${hertzText(low)} bis ${hertzText(high)}`;
const joined = (names: readonly string[]): string => names.join(' und ');

export const dielectricNames: Translated<typeof ENGLISH_DIELECTRICS> = {
  polyester: 'Polyesterfolie',
  polypropylene: 'Polypropylenfolie',
  c0g: 'C0G-Keramik',
  x7r: 'X7R-Keramik',
  y5v: 'Y5V-Keramik',
  electrolytic: 'Elko',
};
export const trimmerNames: Translated<typeof ENGLISH_TRIMMERS> = {
  'single-turn': 'eine Umdrehung',
  'multi-turn': '25 Umdrehungen',
  carbon: 'Kohleschicht',
};

/** Intervals by their English names. */
export const intervalNames: Translated<typeof INTERVAL_WORDS> = {
  unison: 'Einklang',
  'minor second': 'kleine Sekunde',
  'major second': 'große Sekunde',
  'minor third': 'kleine Terz',
  'major third': 'große Terz',
  fourth: 'Quarte',
  tritone: 'Tritonus',
  fifth: 'Quinte',
  'minor sixth': 'kleine Sexte',
  'major sixth': 'große Sexte',
  'minor seventh': 'kleine Septime',
  'major seventh': 'große Septime',
  octave: 'Oktave',
};
const MASCULINE = new Set(['unison', 'tritone']);

/** An interval with its article; just ones say so. */
function intervalText(name: string, temperament: 'equal' | 'just'): string {
  const german = (intervalNames as Readonly<Record<string, string>>)[name] ?? name;
  const article = MASCULINE.has(name) ? 'ein' : 'eine';
  return temperament === 'just' ? `${article} ${german} in reiner Stimmung` : `${article} ${german}`;
}

const MISSING = {
  resistors: 'Widerstände',
  trimmers: 'Trimmpotis',
  capacitors: 'Kondensatoren',
} as const;

export const pitch: Translated<typeof pitchWords> = {
  why: 'Warum',
  question: 'Welche Teile, bevor sie bestellt werden?',

  wanted: {
    notes: (a, b) => `Gewünscht: ${a} und ${b}`,
    sweep: (voice, low, high) => `${voice} von ${low} bis ${high}`,
    sweeps: (a, b) => `Gewünscht: ${a}, ${b}`,
    none: 'Gewünscht: noch nicht klar',
    note: (name, cents) =>
      Math.abs(cents) < 0.5 ? noteIn('de', name) : `${noteIn('de', name)} ${formatSigned(cents)} Cent`,
    between: (cents, name, temperament) =>
      name === null ? `${formatFixed(Math.abs(cents), 0)} Cent auseinander` : intervalText(name, temperament),
    a4: (value) => `Kammerton A4 = ${formatNumber(value, 5)} Hz`,
    kits: (count) => `${count} ${count === 1 ? 'Bausatz' : 'Bausätze'}`,
    have: 'nur, was in der Schublade liegt',
    order: (series) =>
      series.length === 0 ? 'aus der Schublade' : `aus der Schublade oder bestellt aus ${joined(series)}`,
    duty: (least, most) => `Tastverhältnis ${formatShare(least)} bis ${formatShare(most)}`,
    change: 'Wunsch und Schublade',
    compare: 'Nur Kondensatoren vergleichen',
  },

  wish: {
    heading: 'Was gewünscht ist',
    way: 'gewünscht als',
    ways: {
      notes: 'zwei Töne',
      interval: 'ein Intervall und ein Ton',
      frequencies: 'zwei Frequenzen',
      sweep: 'ein Stimmweg',
    },
    kept: 'Was unter den anderen Arten getippt ist, bleibt erhalten.',
    note: (voice) => `Ton von ${voice}`,
    noteHint:
      'Ein Tonname und eine Oktave, etwa C4, Fis3, B3, H3 oder A4 +12 Cent. C4 ist das eingestrichene C.',
    given: 'gegeben ist der Ton',
    givenVoices: { A: 'von A', B: 'von B' },
    interval: 'Intervall',
    direction: (other) => `${other} liegt`,
    directions: { up: 'darüber', down: 'darunter' },
    cents: 'und Cent dazu',
    hertz: (voice) => `Frequenz von ${voice}`,
    low: (voice) => `${voice} von`,
    high: (voice) => `${voice} bis`,
    a4: 'Kammerton A4',
    temperament: 'Intervalle',
    temperaments: { equal: 'gleichstufig', just: 'rein' },
    just: 'Rein: B steht zu A in einem einfachen Verhältnis, etwa 3 : 2.',
    dutyWanted: 'Das Tastverhältnis in Grenzen halten',
    dutyLeast: 'Tastverhältnis mindestens',
    dutyMost: 'Tastverhältnis höchstens',
    polarised: 'Gepolte Zeitkondensatoren sind erlaubt',
    weights: 'Was zählt',
    weightNames: {
      surerReach: 'sicherer Stimmweg',
      easierTuning: 'leichtes Stimmen',
      fewerParts: 'wenige verschiedene Teile',
      cheaper: 'kleiner Preis',
    },
    weightWords: ['zählt nicht', 'zählt wenig', 'zählt viel', 'zählt am meisten'],
    cheaperHint: 'Der Preis zählt nur, wenn eigene Preise in der Schublade stehen.',
    batch: 'Die Serie',
    law: 'Streuung der Teile',
    laws: {
      uniform: 'beliebig in der Toleranz',
      'normal-2': 'glockenförmig, Toleranz = 2 σ',
      'normal-3': 'glockenförmig, Toleranz = 3 σ',
    },
    lawsShort: { uniform: 'gleichverteilt', 'normal-2': '2 σ', 'normal-3': '3 σ' },
    lawHint:
      'Beliebig in der Toleranz ist üblich, wenn man von den Teilen nichts weiß; es ist die vorsichtige Wahl.',
    kits: 'zu bauende Bausätze',
    kitsHint: 'Für so viele muss die Schublade Teile haben; so viele sind im Bild markiert und zu hören.',
    atHand: (notes) => `Der offene Entwurf klingt mit ${notes.A} und ${notes.B}.`,
    takeAtHand: 'Diese Töne wünschen',
    seed: 'Startzahl',
    seedHint: 'Dieselbe Startzahl lost dieselben Bausätze.',
    comesTo: (targets) =>
      (['A', 'B'] as const)
        .map((voice) => {
          const [low, high] = targets[voice];
          return `${voice} ${low === high ? hertzText(low) : between(low, high)}`;
        })
        .join(', '),
    step: (label) => `Wunsch: ${label}`,
  },

  field: {
    unreadable: (read, accepted) =>
      `Gelesen: ${read === '' ? 'nichts' : quoted(read)}; das ist hier keine Zahl. Angenommen wird: ${accepted}.`,
    outside: (read, { min, max }, unit) =>
      `Gelesen: ${quoted(read)}. Angenommen wird: ${formatNumber(min, 7)} bis ${formatNumber(max, 9)}${centsUnit(unit)}.`,
    hertz: '440, 440 Hz oder 1,2 kHz',
    cents: '0, 12 oder −12 Cent',
    whole: 'eine ganze Zahl, etwa 20',
    centsPrinted: (value) => `${typedNumber(value, 5)}\u00A0Cent`,
  },

  problem: {
    heading: 'Was im Weg steht',
    use: 'Übernehmen',
    useStep: 'das Nächste, das geht',
    noteEmpty: (voice) => `Stimme ${voice} hat noch keinen Ton. Buchstabe und Oktave tippen, etwa C4.`,
    noNote: (voice, read, nearest) =>
      `Stimme ${voice}: ${quoted(read)} ist kein Ton.${nearest === null ? ' Angenommen wird ein Buchstabe mit Oktave, etwa C4.' : ` Am nächsten liegt ${nearest}.`}`,
    noOctave: (voice, read, nearest) =>
      `Stimme ${voice}: ${quoted(read)} hat keine Oktave. Mit dem eingestrichenen C beginnt die vierte: ${nearest}.`,
    notTone: (voice, value, nearest) =>
      `Stimme ${voice}: ${hertzText(value)} hört man nicht als Ton. Die nächste hörbare Frequenz: ${hertzText(nearest)}.`,
    emptySweep: (voice, low, high, nearLow, nearHigh) =>
      `Stimme ${voice}: Von ${hertzText(low)} bis ${hertzText(high)} steigt nichts an. Das Nächste, das geht: ${between(nearLow, nearHigh)}.`,
    dutyCrossed: (least, most) =>
      `Das Tastverhältnis kann nicht mindestens ${formatShare(least)} und höchstens ${formatShare(most)} sein. Am nächsten liegt: beide vertauschen.`,
    emptyDrawer: (missing, use) =>
      `Es gibt keine ${MISSING[missing]} zur Wahl. Welche in die Schublade schreiben${use === 'have' ? ' oder Bestellen erlauben' : ' oder eine Reihe zum Bestellen wählen'}.`,
    onlyPolarised:
      'Alle Kondensatoren sind gepolt, und der Wunsch schließt sie aus. Andere in die Schublade schreiben oder gepolte erlauben.',
  },

  drawer: {
    heading: 'Was zur Hand ist',
    use: 'nehmen',
    uses: { have: 'nur, was da ist', order: 'was da ist oder sich bestellen lässt' },
    unlimited: 'Solange bestellt werden darf, begrenzen Stückzahlen nichts.',
    lines: 'Die Schublade, ein Teil je Zeile',
    linesHint:
      'In beliebiger Reihenfolge: Wert, Art, Toleranz, Anzahl, eigener Stückpreis; etwa 4k7 1% x40, 20k trimmer 10% oder 47n film 5% x25 @0,12. Auch eine Tabelle mit Spaltennamen lässt sich einfügen oder eine CSV-Datei öffnen. Die Namen der Arten sind englisch.',
    file: 'CSV-Datei öffnen…',
    save: 'Als CSV speichern',
    apply: 'In die Schublade legen',
    empty: 'Die Schublade ist leer.',
    holds: (resistors, trimmers, capacitors) =>
      `In der Schublade: ${resistors} ${resistors === 1 ? 'Wert' : 'Werte'} von Widerständen, ${trimmers} von Trimmpotis und ${capacitors} von Kondensatoren.`,
    bad: (count) =>
      count === 1
        ? 'Eine Zeile war nicht zu verstehen; der Rest bleibt.'
        : `${count} Zeilen waren nicht zu verstehen; der Rest bleibt.`,
    pending: 'Geändert; noch nicht in der Schublade.',
    more: (count) => `und ${count} weitere`,
    badLine: (line, read, why) => `Zeile ${line}, ${quoted(read)}: ${why}`,
    why: {
      'no value': 'Der Wert fehlt. Angenommen wird: 4k7, 47n oder 20k trimmer.',
      'not a count': (read) => `${quoted(read)} ist keine Anzahl. Angenommen wird: x40.`,
      'not a price': (read) => `${quoted(read)} ist kein Preis. Angenommen wird: @0,12.`,
      'unknown word': (read) =>
        `${quoted(read)} nennt keine Art von Teil. Angenommen wird: resistor (Widerstand), trimmer (Trimmpoti), multi-turn, carbon, film, polypropylene, C0G, X7R, Y5V, electrolytic.`,
      twice: (entry) => `Doppelt angegeben: ${entry}. Ein Teil je Zeile.`,
      'too many': (most) => `Die Schublade fasst höchstens ${most} Werte je Art.`,
    },
    entries: {
      value: 'Wert',
      tolerance: 'Toleranz',
      dielectric: 'Art',
      quantity: 'Anzahl',
      price: 'Preis',
    },
    // A saved drawer is read again by these names, so they stay.
    csvHeads: ['value', 'tolerance', 'kind', 'quantity', 'price'],
    order: 'Was bestellt werden darf',
    resistors: 'Widerstände',
    trimmers: 'Trimmpotis',
    capacitors: 'Kondensatoren',
    nothing: 'nichts',
    series: (name) => `Reihe ${name}`,
    tolerance: 'Toleranz',
    dielectric: 'Dielektrikum',
    step: (label) => `Schublade: ${label}`,
    stepLines: 'Zeilen der Schublade',
    tooLarge: (most) =>
      `Dieser Text ist zu lang für eine Schublade: höchstens ${formatNumber(most, 6)} Zeichen. Er wurde nicht gelesen; die Schublade ist, wie sie war.`,
    fileName: 'schublade',
  },

  search: {
    go: 'Teile suchen',
    again: 'Teile erneut suchen',
    stop: 'Anhalten',
    stale: 'Wunsch oder Schublade haben sich seitdem geändert. „Teile erneut suchen“ drücken.',
    idle: 'Noch nichts gesucht. Sagen, was gewünscht und was zur Hand ist, dann „Teile suchen“ drücken.',
    stages: {
      A: 'Teile für A durchgehen',
      B: 'Teile für B durchgehen',
      pairs: 'beide Stimmen zusammenstellen',
      draws: 'Bausätze der besten auslosen',
      looking: 'die besten fünfzig genau ansehen',
    },
    progress: (stage, share) => `${stage}, ${formatShare(share)}`,
    progressName: 'Fortschritt der Suche',
    anew: 'Ein Fehler brach die Suche ab; sie hat von selbst neu begonnen.',
    stopped:
      'Vor dem Ende angehalten: Gezeigt wird nichts, was nicht mit allem übrigen verglichen ist. „Teile suchen“ beginnt von vorn.',
    failed:
      'Die Suche brach wegen eines Fehlers ab. „Teile suchen“ beginnt von vorn; nichts Getipptes ist verloren.',
    found: (shown, combinations, fitting) =>
      `${formatNumber(combinations, 4)} Kombinationen beider Stimmen berücksichtigt, ${formatNumber(fitting, 4)} davon passen; gezeigt werden die besten ${shown}.`,
    foundNone: (combinations) =>
      `${formatNumber(combinations, 4)} Kombinationen beider Stimmen berücksichtigt; keine passt.`,
    next: 'Andere Werte in die Schublade legen, Bestellen erlauben oder Töne wünschen, die näher beieinander oder näher an diesen liegen; dann erneut suchen.',
    law: (law, kits) => `Prozente: ${formatNumber(kits, 6)} Bausätze gelost, Teile ${law}.`,
    none: (voice) => `Keine Teile der Schublade bringen ${voice} auf ihren Ton. Am nächsten kommen:`,
    nonePairs:
      'Jede Stimme hat passende Teile, aber für beide Stimmen der ganzen Serie liegen zu wenige in der Schublade. Bestellen erlauben oder weniger Bausätze machen.',
  },

  misses: {
    heading: 'Warum andere ausscheiden',
    heads: ['Stimme', 'warum', 'wie viele', 'knappste'],
    kinds: {
      'ra-too-small': 'RA so klein, dass der Entladestift überlastet wird',
      'never-runs': 'der Kondensator erreicht nie beide Pegel',
      polarised: 'ein gepolter Zeitkondensator',
      'rb-near-zero': 'RB am Anschlag fast 0 Ω',
      'resistors-too-large': 'RA und RB so groß, dass Leckströme stören',
      'too-low': 'der höchste Ton liegt zu tief',
      'too-high': 'der tiefste Ton liegt zu hoch',
      duty: 'Tastverhältnis außerhalb der Grenzen',
      'short-stock': 'zu wenige für die Serie vorhanden',
    },
    byCents: (cents) =>
      cents < 0.05
        ? 'um weniger als 0,1 Cent verfehlt'
        : `um ${formatFixed(cents, cents < 10 ? 1 : 0)} Cent verfehlt`,
    byDuty: (share) => `um ${formatShare(share, 1)} Tastverhältnis verfehlt`,
    none: '–',
  },
};

/** Whoever reads a box hands its unit over in English. */
function centsUnit(unit: string): string {
  return unit.replace('cents', 'Cent');
}
