/** German for light that plays by itself: scenes, lamps, recordings, taking the light down, links. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import type { lampWords, logWords, sceneWords, takeWords } from './en-scenes.ts';
import { excerpt } from './excerpt.ts';
import type { LogColumn, LogProblem, LogRefusal, lightLogWords } from './light-log.ts';
import type { linkWords } from './link.ts';
import type { Translated } from './spoken.ts';

const lux = (value: number): string => `${formatNumber(value, value < 10 ? 2 : 3)}\u00A0lx`;
const seconds = (value: number): string => formatFixed(value, 1, 's');
const centimetres = (value: number): string => formatFixed(value * 100, 1, 'cm');
const millimetres = (value: number): string => formatFixed(value * 1000, 0, 'mm');

export const germanScenes: Translated<typeof sceneWords> = {
  kind: 'Szene',
  kinds: {
    'hand-wave': 'eine Hand winkt über den Sensoren',
    'passer-by': 'Leute gehen vorbei',
    'slotted-card': 'eine geschlitzte Karte wird vorbeigezogen',
    lantern: 'eine Papierlaterne dreht sich',
  },
  parameters: {
    everySeconds: { label: 'eine alle', print: seconds },
    crossSeconds: { label: 'ein Winken dauert', print: seconds },
    handMetres: { label: 'Handhöhe', print: centimetres },
    lampMetres: { label: 'Lampenhöhe', print: (value) => formatFixed(value, 2, 'm') },
    lampLux: { label: 'Lampe', print: lux },
    roomLux: { label: 'Raumlicht', print: lux },
    spacingMetres: { label: 'Sensorabstand', print: centimetres },
    irregular: { label: 'Unregelmäßigkeit', print: (value) => formatShare(value) },
    seed: { label: 'Startzahl', print: (value) => formatFixed(value, 0) },
    metresPerSecond: {
      label: 'Tempo',
      print: (value) =>
        value < 0.3 ? `${formatFixed(value * 100, 1)} cm/s` : `${formatFixed(value, 2)} m/s`,
    },
    shadowMetres: { label: 'Schatten', print: centimetres },
    softMetres: { label: 'weicher Rand', print: centimetres },
    litLux: { label: 'beleuchtet', print: lux },
    shadeLux: { label: 'beschattet', print: lux },
    slots: { label: 'Schlitze', print: (value) => formatFixed(value, 0) },
    slotMetres: { label: 'Schlitz', print: millimetres },
    gapMetres: { label: 'Steg', print: millimetres },
    apertureMetres: { label: 'Sensoröffnung', print: millimetres },
    slotDegrees: { label: 'Schlitzwinkel', print: (value) => `${formatFixed(value, 0)}°` },
    rpm: { label: 'Umdrehungen je Minute', print: (value) => formatFixed(value, 1) },
    drumMetres: { label: 'Trommelradius', print: millimetres },
    sensorMetres: { label: 'Sensor von der Achse', print: centimetres },
    filamentMetres: { label: 'Lampengröße', print: millimetres },
    apartDegrees: { label: 'Sensorabstand', print: (value) => `${formatFixed(value, 0)}°` },
  },
  again: 'Von vorn',
  repeats: 'Dieselbe Startzahl ergibt jedes Mal dieselbe Szene.',
  place: (value) => `seit ${formatFixed(value, 1)} s`,
  flicker:
    'Diese Szene ändert das Licht schnell. Hier hört das nur das Ohr; auf dem Bildschirm blitzt nichts.',
};

export const germanLamps: Translated<typeof lampWords> = {
  lamp: 'Licht von',
  none: 'gleichmäßiger Lampe oder Tageslicht',
  lamps: {
    incandescent: 'Glühlampe',
    halogen: 'Netz-Halogenlampe',
    'fluorescent-magnetic': 'Leuchtstoffröhre, magnetisches Vorschaltgerät',
    'compact-magnetic': 'Kompaktleuchtstofflampe, magnetisches Vorschaltgerät',
    'compact-electronic': 'Kompaktleuchtstofflampe, elektronisches Vorschaltgerät',
    'metal-halide': 'Halogen-Metalldampflampe',
    'sodium-high-pressure': 'Natrium-Hochdrucklampe',
    'led-smooth': 'LED-Lampe, glatter Treiber',
    'led-poor': 'LED-Lampe, schlechter Treiber',
    'led-rectified': 'LED-Lampe an gleichgerichtetem Netz',
  },
  mains: 'Netz',
  mainsHertz: { '50': '50 Hz', '60': '60 Hz' },
  says: (depth, hertz, verdict) =>
    `Flimmert um ${formatShare(depth)} mit ${formatFixed(hertz, 0)} Hz. ${
      {
        'no effect': 'Weniger, als Menschen bemerken (IEEE 1789-2015).',
        'low risk': 'Innerhalb der Grenze geringen Risikos für Menschen (IEEE 1789-2015).',
        'above both': 'Über der Grenze geringen Risikos für Menschen (IEEE 1789-2015).',
      }[verdict]
    }`,
};

export const germanLogs: Translated<typeof logWords> = {
  open: 'Lichtaufzeichnung öffnen …',
  drop: 'Oder die Datei irgendwo auf der Seite fallen lassen. CSV, wie es Telefon-Messgeräte und Logger schreiben: Zeit und eine oder zwei Spalten Lux.',
  none: 'Noch ist keine Lichtaufzeichnung offen.',
  name: (name) => `Spielt „${name}“.`,
  unplayed: (name) => `„${name}“ ist offen, wird aber nicht gespielt.`,
  how: 'Wie sie gelesen wird (geraten; hier zu berichtigen)',
  delimiter: 'Spalten durch',
  delimiters: { ',': 'Komma', ';': 'Strichpunkt', '\t': 'Tabulator' },
  decimal: 'Dezimalen durch',
  decimals: { '.': 'Punkt', ',': 'Komma' },
  header: 'Kopfzeile',
  noHeader: 'keine',
  time: 'Zeit',
  luxA: 'Licht an A',
  luxB: 'Licht an B',
  sameAsA: 'wie A',
  column: (n, name) => (name ? `${n}: ${name}` : `Spalte ${n}`),
  timeFormat: 'Zeit ist',
  timeFormats: {
    seconds: 'Sekunden',
    milliseconds: 'Millisekunden',
    minutes: 'Minuten',
    clock: 'h:mm:ss',
    stopwatch: 'm:ss',
    iso: 'Jahr-Monat-Tag, h:mm:ss',
    'day-first': 'Tag.Monat.Jahr, h:mm:ss',
    'month-first': 'Monat/Tag/Jahr, h:mm:ss',
  },
  unit: 'Licht in',
  units: { lx: 'Lux', klx: 'Kilolux', footcandle: 'Foot-candle' },
  preview: 'Erste Zeilen',
  row: 'Zeile',
  place: 'Stelle',
  placeText: (at, of) => `${formatFixed(at, 1)} von ${formatFixed(of, 1)} s`,
  loop: 'Immer wieder',
  problems: 'Ausgelassene Zeilen',
};

export const germanTakes: Translated<typeof takeWords> = {
  heading: 'Mitschreiben',
  explain:
    'Schreibt das Licht an beiden Sensoren mit, während gespielt wird. Danach lässt es sich als Lichtaufzeichnung sichern, oder als der Ton, den dieser Entwurf daraus macht, lückenlos neu gerechnet.',
  record: 'Licht mitschreiben',
  stop: 'Anhalten',
  running: (value) => `Schreibt mit: ${formatFixed(value, 1)} s`,
  done: (value) => `${formatFixed(value, 1)} s Licht mitgeschrieben.`,
  none: 'Noch nichts mitgeschrieben.',
  replay: 'Abspielen',
  saveLog: 'Licht sichern (CSV)',
  saveSound: 'Ton sichern (WAV)',
  rendering: 'Rechnet den Ton …',
  fullScale: (volts) =>
    `WAV: mono, 48 kHz, 32 Bit Gleitkomma; Vollaussteuerung ist ${formatQuantity(volts, 'V', 3)} an der Buchse. Das kann viel lauter sein als diese Seite.`,
  fileName: 'lichtaufzeichnung',
};

const IS_MISSING: Readonly<Record<LogColumn, string>> = {
  time: 'Die Zeit fehlt',
  luxA: 'Das Licht an A fehlt',
  luxB: 'Das Licht an B fehlt',
};
const COLUMN: Readonly<Record<LogColumn, string>> = { time: 'Zeit', luxA: 'Licht an A', luxB: 'Licht an B' };

const whole = (value: number): string => formatNumber(value, 6);

function problem({ row, column, read, reason }: LogProblem): string {
  const shown = `„${read}“`;
  const where = `Zeile ${whole(row)}`;
  switch (reason) {
    case 'missing':
      return `${where}: ${IS_MISSING[column]}.`;
    case 'unreadable':
      return column === 'time'
        ? `${where}: gelesen ${shown}; das ist keine Zeit der gewählten Art.`
        : `${where}: gelesen ${shown} als ${COLUMN[column]}; das ist keine Zahl in Lux.`;
    case 'negative':
      return `${where}: gelesen ${shown} als ${COLUMN[column]}. Licht ist nie unter 0 lx.`;
    case 'too bright':
      return `${where}: gelesen ${shown} als ${COLUMN[column]}. Die hellste Sonne gibt etwa 130 000 lx.`;
    case 'same time':
      return `${where}: Die Zeit ${shown} ist die der Zeile davor. Zeiten müssen steigen.`;
    case 'earlier':
      return `${where}: Die Zeit ${shown} ist früher als die der Zeile davor. Zeiten müssen steigen.`;
    case 'ahead':
      return `${where}: Die Zeit ${shown} ist später als die der folgenden Zeilen. Zeiten müssen steigen.`;
  }
}

export const germanLightLog: Translated<typeof lightLogWords> = {
  problem,
  refusal(refusal: LogRefusal): string {
    switch (refusal.kind) {
      case 'too large':
        return `Die Aufzeichnung hat mehr als ${whole(refusal.most)} Zeichen. Bitte in Stücke teilen.`;
      case 'too many rows':
        return `Die Aufzeichnung hat mehr als ${whole(refusal.most)} Zeilen. In Stücke teilen oder nur jede zweite Zeile behalten.`;
      case 'empty':
        return 'Die Aufzeichnung ist leer.';
      case 'no columns':
        return 'Keine Zeiten mit Licht daneben gefunden. Gebraucht werden eine Spalte mit Zeiten und eine oder zwei mit Lux, etwa time_s,lux_a,lux_b.';
      case 'no rows':
        return refusal.first === null
          ? 'Die Aufzeichnung hat unter ihrer Kopfzeile keine Zeilen.'
          : `Keine einzige Zeile war zu lesen. ${problem(refusal.first)}`;
    }
  },
  kept: (kept, dropped) =>
    dropped === 0
      ? `Alle ${whole(kept)} Zeilen gelesen.`
      : `${whole(kept)} ${kept === 1 ? 'Zeile' : 'Zeilen'} gelesen, ${whole(dropped)} ausgelassen.`,
  more: (count) => `Und ${whole(count)} weitere.`,
};

export const germanLink: Translated<typeof linkWords> = {
  refused: 'Der Entwurf in diesem Link wurde nicht geöffnet; der eigene Entwurf ist, wie er war.',
  place: (place) => `Der Link nennt „${excerpt(place, 24)}“; das ist kein Ort dieser Seite.`,
  damaged:
    'Der Link ist beschädigt oder abgeschnitten: Seine Prüfsumme stimmt nicht. Ganz kopieren, vom # bis zum letzten Buchstaben, und noch einmal versuchen.',
  empty: 'Der Link enthält nach „d=“ keinen Entwurf. Ganz kopieren und noch einmal versuchen.',
  later: 'Der Link stammt von einem späteren Lampnote. Dort öffnen oder das spätere holen.',
  tooLarge: 'Der Link enthält weit mehr als einen Entwurf. Er wurde nicht geöffnet.',
  tooLong:
    'Dieser Entwurf mit seinem Bausatzprotokoll ist zu viel für einen Link. Stattdessen als Datei sichern; das Protokoll allein lässt sich unter Bausatz sichern.',
  notDesign: 'Der Link enthält etwas anderes als einen Entwurf, den diese Version kennt.',
  cannotPack:
    'Dieser Browser kann Links weder packen noch auspacken. Den Entwurf stattdessen als Datei sichern.',
};
