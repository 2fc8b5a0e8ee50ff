/** Words for describing a room in the place Room: readings, lamps, daylight, the recording, events. In German. */
import { formatFixed, formatNumber, formatShare } from '../quantity/format.ts';
import { clock, lux, oClock } from './de-room-words.ts';
import { typedNumber } from './de-typed.ts';
import type { describeWords } from './en-room.ts';
import type { Translated } from './spoken.ts';

const SPACE = '\u00A0';
/** A share with a decimal where it is small. */
const fineShare = (share: number): string => formatShare(share, share < 0.1 ? 1 : 0);

/** A length in its box: metres, or millimetres below one. */
const metres = (value: number): string =>
  Math.abs(value) >= 1 || value === 0
    ? `${typedNumber(value, 4)}${SPACE}m`
    : `${typedNumber(value * 1000, 4)}${SPACE}mm`;

export const room: Translated<typeof describeWords> = {
  heading: 'Den Raum beschreiben',
  step: (label) => `Raum: ${label}`,
  noNames: 'Keine Namen von Leuten: Art und Stunden des Raums genügen.',

  readings: {
    heading: 'Messungen',
    hint: 'Ein Luxmeter oder ein Telefon flach am Platz des Sensors, in dessen Blickrichtung. Eine Zeile genügt; Zeilen zu anderen Stunden und eine ohne Lampen trennen Lampen und Tageslicht.',
    none: 'Noch ist kein Licht gemessen.',
    add: 'Messung hinzufügen',
    addStep: 'Messung',
    full: 'Mehr Messungen werden nicht behalten.',
    remove: (hour) => `Messung von ${oClock(hour)} entfernen`,
    removeShort: 'Entfernen',
    row: (hour) => `Messung von ${oClock(hour)}`,
    hour: 'Uhrzeit',
    level: {
      lit: (voice) => `${voice} im Licht`,
      shaded: (voice) => `${voice} im Schatten`,
      dark: (voice) => `${voice} ohne Lampen`,
    },
    type: 'Raumart',
    noType: 'nicht gewählt',
    types: {
      'entrance-hall': 'Eingangshalle',
      corridor: 'Flur',
      stairs: 'Treppe',
      'lecture-hall': 'Hörsaal',
      canteen: 'Kantine',
      cloakroom: 'Garderobe',
      classroom: 'Klassenzimmer',
      'art-room': 'Zeichensaal',
      workshop: 'Werkstatt',
      'technical-drawing': 'technisches Zeichnen',
      'electronics-assembly': 'Elektronikplatz',
      'dressing-room': 'Künstlergarderobe',
      'rehearsal-room': 'Proberaum',
      foyer: 'Foyer, Empfang',
      'gallery-sensitive': 'Ausstellung, empfindliche Stücke',
      'gallery-moderate': 'Ausstellung',
      'living-room-evening': 'Wohnzimmer, abends',
      'escape-lighting': 'nur Notbeleuchtung',
    },
    typical: (value, source, fromMemory) =>
      `Üblich sind ${lux(value)} mit eingeschalteten Lampen (${source}${fromMemory ? ', aus dem Gedächtnis' : ''}). Neue Lampen geben etwa ein Viertel mehr.`,
    are: 'sie sind',
    kinds: { measured: 'in Lux gemessen', guessed: 'geschätzt (Kamera, Telefon)' },
    opens: 'offen von',
    closes: 'bis',
    spacing: 'Abstand der Sensoren',
  },

  lamps: {
    heading: 'Lampen',
    none: 'Keine Lampe am Netz: Licht ohne Welligkeit.',
    mains: 'Netz',
    mainsNames: { 50: `50${SPACE}Hz`, 60: `60${SPACE}Hz` },
    lamp: 'Lampe',
    names: {
      incandescent: 'Glühlampe',
      halogen: 'Halogenlampe',
      'fluorescent-magnetic': 'Leuchtstoffröhre, Drossel',
      'compact-magnetic': 'Kompaktleuchtstofflampe, Drossel',
      'compact-electronic': 'Kompaktleuchtstofflampe, elektronisch',
      'metal-halide': 'Halogen-Metalldampflampe',
      'sodium-high-pressure': 'Natriumdampf-Hochdrucklampe',
      'led-smooth': 'LED, gleichmäßig',
      'led-poor': 'LED, schlechtes Netzteil oder mit Pulsen gedimmt',
      'led-rectified': 'LED, direkt am gleichgerichteten Netz',
    },
    share: 'Anteil am Lampenlicht',
    add: 'Lampe hinzufügen',
    remove: 'Entfernen',
    removeLamp: (name) => `${name} entfernen`,
    full: 'Vier Arten von Lampen genügen.',
    ripple: (hertz, depth, index) =>
      `Zusammen: Welligkeit mit ${formatFixed(hertz, 0)}${SPACE}Hz, ${formatShare(depth)} tief${index}.`,
    index: (min, max) =>
      `, Flimmerindex ${min === max ? formatNumber(min, 2) : `${formatNumber(min, 2)} bis ${formatNumber(max, 2)}`}`,
    verdict: {
      'no effect':
        'Leute bemerken das nach heutigem Wissen nicht (IEEE 1789-2015); der Komparator vielleicht schon.',
      'low risk': 'Geringes Risiko für Leute (IEEE 1789-2015).',
      'above both':
        'Mehr, als IEEE 1789-2015 für Leute als geringes Risiko zählt: nach den Lampen sehen, nicht nur nach der Schwelle.',
    },
  },

  daylight: {
    heading: 'Tageslicht',
    comes: 'Tageslicht fällt herein',
    latitude: 'geografische Breite',
    longitude: 'geografische Länge',
    placeHint: 'Grad, Nord und Ost positiv; Süd und West mit Minus. Auf ein halbes Grad genau reicht.',
    noPlace: 'Beides tippen, dann ist die Sonne bekannt.',
    date: 'Datum',
    offset: 'Uhr vor UTC',
    zone: (zone, offset) => `Hier (${zone}) sind das an diesem Tag ${offset}.`,
    useZone: 'Übernehmen',
    sky: 'Himmel',
    skies: { clear: 'klar', partly: 'wolkig', overcast: 'bedeckt', measured: 'gemessen' },
    outdoor: 'draußen, im Freien',
    outdoorHour: 'gemessen um',
    factor: 'Tageslichtquotient',
    factorKinds: { typed: 'bekannt', window: 'aus dem Fenster' },
    share: 'innen zu außen',
    shareHint: 'Eine Messung am Sensor geteilt durch eine im Freien, bei bedecktem Himmel und ohne Lampen.',
    glassArea: 'Glasfläche',
    transmittance: 'das Glas lässt durch',
    maintenance: 'für Schmutz und Rahmen',
    skyAngle: 'Winkel des sichtbaren Himmels',
    length: 'Länge des Raums',
    width: 'Breite des Raums',
    height: 'Höhe des Raums',
    reflectance: 'mittlerer Reflexionsgrad',
    comesTo: (share) =>
      `Das sind im Mittel ${fineShare(share)} (BS 8206-2, Wortlaut aus dem Gedächtnis). Am Fenster ist es ein Mehrfaches, hinten weniger.`,
    sun: (rise, noon, set) =>
      `Sonnenaufgang ${oClock(rise)}, höchster Stand ${oClock(noon)}, Sonnenuntergang ${oClock(set)}.`,
    altitude: (degrees) => `Am höchsten steht sie ${formatFixed(degrees, 0)}° hoch.`,
    band: 'Ein Himmelsmodell ist ein Mittel: Ein Augenblick kann halb oder doppelt so hell sein, darum zeigt das Bild dieses Band.',
    narrowed: (darker, brighter) =>
      `Die Aufzeichnung verengt das Band auf das ${formatNumber(darker, 2)}- bis ${formatNumber(brighter, 2)}-Fache.`,
  },

  log: {
    heading: 'Ein aufgezeichneter Tag',
    hint: 'Die Aufzeichnung eines wirklichen Tages verengt das Band des Tageslichts, zählt die richtigen Minuten und die ungewollten Töne. Sie spielt auch unter „Hören“.',
    start: 'erste Zeile um',
    known: (hour) => `Die Uhr der Aufzeichnung beginnt um ${oClock(hour)}.`,
    unknown: 'Die Aufzeichnung nennt keine Uhrzeit: den Beginn tippen.',
    take: 'Messungen daraus nehmen',
    takeHint: 'Eine Zeile für jede offene Stunde darin, anstelle der Messungen oben.',
    takeStep: 'Messungen aus der Aufzeichnung',
    share: (right, minutes, known) =>
      `Richtig in ${formatShare(right, 1)} von ${formatNumber(known, 5)} aufgezeichneten Minuten (${formatNumber(minutes, 5)} sind offen).`,
    phantoms: (a, b) =>
      `Wechsel, die das Licht des Raums selbst auslöste: A ${formatNumber(a, 2)}, B ${formatNumber(b, 2)} in der Stunde.`,
    chatter: (a, b) =>
      `So lange ratterte es unter den Lampen: A ${formatNumber(a, 3)}${SPACE}s, B ${formatNumber(b, 3)}${SPACE}s.`,
  },

  event: {
    heading: 'Was schalten soll',
    is: 'Ereignis',
    kinds: {
      hand: 'eine Hand über dem Sensor',
      person: 'jemand geht vorbei',
      card: 'eine Schlitzkarte wird vorbeigezogen',
      lantern: 'eine drehende Papierlaterne',
      lid: 'ein Deckel geht auf',
    },
    leaves: (share) => `Es lässt an der tiefsten Stelle ${fineShare(share)} des Lichts übrig.`,
    fromReadings: (voice, share) =>
      `Sensor ${voice}: Die Messungen sagen ${fineShare(share)}, und sie gelten.`,
    tube: 'Ein Rohr um jeden Sensor',
    bore: 'Innenradius',
    depth: 'Tiefe',
    phantoms: 'Was nicht schalten darf',
    phantomsHint: 'Schatten, die dort den ganzen Tag fallen: Sie müssen die Stimmen lassen, wie sie sind.',
    add: 'Eins hinzufügen',
    remove: (name) => `${name} entfernen`,
    removeShort: 'Entfernen',
    which: (number) => `Nummer ${number}`,
    none: 'Sonst kommt den Sensoren nichts nahe.',
    full: 'Sechs genügen.',
    values: {
      heightMetres: 'Höhe der Hand',
      roundShare: 'Licht von ringsum',
      lampDiameterMetres: 'Durchmesser der Lampe',
      lampDistanceMetres: 'Lampe bis Sensor',
      crossSeconds: 'Dauer des Vorbeigehens',
      left: 'Licht, das bleibt',
      shadowMetres: 'Breite des Schattens',
      softMetres: 'weicher Rand',
      metresPerSecond: 'Tempo',
      slots: 'Schlitze',
      slotMetres: 'Schlitz',
      gapMetres: 'Steg dazwischen',
      apertureMetres: 'Öffnung des Sensors',
      slotDegrees: 'Schlitz, Grad',
      rpm: 'Umdrehungen je Minute',
      drumMetres: 'Radius der Trommel',
      sensorMetres: 'Sensor von der Achse',
      filamentMetres: 'Glühfaden',
      apartDegrees: 'Sensor auseinander, Grad',
      openSeconds: 'Dauer des Öffnens',
    },
  },

  field: {
    hour: (read) => `Gelesen: „${read}“. Eine Uhrzeit tippt man als 14:30 oder 14,5.`,
    date: (read) => `Gelesen: „${read}“. Ein Datum tippt man als 2026-06-21.`,
    clock,
    seconds: (value) => `${typedNumber(value, 4)}${SPACE}s`,
    degrees: (value) => `${typedNumber(value, 6)}°`,
    pace: (value) => `${typedNumber(value, 4)}${SPACE}m/s`,
    area: (value) => `${typedNumber(value, 4)}${SPACE}m²`,
    metres,
    hours: (value) => `${typedNumber(value, 4)}${SPACE}h`,
    share: (value) => `${typedNumber(value * 100, 4)}${SPACE}%`,
    plain: (value) => typedNumber(value, 6),
    lux,
  },
};
