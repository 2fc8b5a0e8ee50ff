/** Words of the place Kit in German: its sheets, the order, marks on parts, the connection list, why there is no plan. */
import { formatFixed, formatNumber, formatShare } from '../quantity/format.ts';
import { kitBench } from './de-kit-bench.ts';
import { kitBoard } from './de-kit-board.ts';
import { count, kitsText } from './de-kit-counts.ts';
import type { kitViewWords } from './en-kit.ts';
import { legible } from './excerpt.ts';
import type { Translated } from './spoken.ts';

const HELPS = 'Kleinste Änderung, die hilft:';
const TYPES: Readonly<Record<string, string>> = { film: 'Folie', electrolytic: 'Elko' };

export const germanKit: Translated<typeof kitViewWords> = {
  why: 'Warum',
  sheets: 'Blätter',
  sheetNames: {
    order: 'Bestellliste',
    connections: 'Verbindungsliste',
    board: 'Platinenplan',
    cards: 'Aufbaukarten',
    slip: 'Prüfzettel',
    faults: 'Fehlersuche',
    whatif: 'Was wäre, wenn',
    sound: 'Klangprobe',
    log: 'Protokoll',
  },
  print: 'Dieses Blatt drucken',
  printHint:
    'Mit 100 % drucken, nicht „an Seite anpassen“: Wo es auf Maße ankommt, zeigt es ein Balken von 100 mm.',
  printed: (name, date) => `${name === '' ? 'Ohne Namen' : legible(name)} · ${date}`,
  qr: 'Der Code öffnet Instrument und Platine, ohne Vorrat, Preise, Protokoll und Messungen: eine Kamera davorhalten.',
  noCode: 'Dieser Entwurf ist zu lang für einen Code: seine Datei weitergeben.',
  checkBar: 'Dieser Balken ist 100 mm lang. Wenn nicht, mit 100 % drucken.',
  workFailed: 'Das kam nicht zu Ende: Die Arbeit dahinter brach ab. Nichts Eingegebenes ist verloren.',
  accept: {
    whole: 'eine ganze Zahl, etwa 30',
    price: 'ein Preis, etwa 1,90',
    none: 'nichts',
  },

  order: {
    heading: (kits) => `Bestellliste für ${kitsText(kits)}`,
    why: [
      'Was zu kaufen ist, und wie viel davon, damit niemand ohne Teil dasitzt.',
      'Teile gehen verloren, verbiegen und brechen. Die Reserve folgt aus den Verlustquoten: Der ganze Korb reicht mit einer Wahrscheinlichkeit von mindestens 99 %.',
      'Eintragen, was vorhanden ist, was eine Packung enthält und was sie kostet; alles Weitere folgt.',
    ],
    kits: 'zu bauende Bausätze',
    region: 'ausgegeben in',
    regions: {
      eu: 'der Europäischen Union',
      uk: 'dem Vereinigten Königreich',
      elsewhere: 'einem anderen Land',
    },
    sockets: 'Chips in Fassungen',
    losses: 'Was verloren geht oder verdirbt',
    lossHint: 'Geschätzt, nicht gemessen: nach der ersten Klasse die eigenen Zahlen eintragen.',
    csv: 'Als CSV sichern',
    csvName: (name) => `${name} Bestellliste`,
    caption:
      'Ersatzteile wurden in diesen Entwurf eingesetzt und das Modell neu befragt. Die Wahrscheinlichkeit einer Zeile gilt für sie allein.',
    wire: (ends, lead, sleeve, waste) =>
      `Draht zählt nach Metern: jede Brücke so lang wie im Platinenplan und ${ends} für ihre beiden Enden; für jede Leitung eines Fotowiderstands ${lead} und ${sleeve} Schlauch; dazu ${formatShare(waste)} für Abschnitte. Nicht mitgezählt: Lötzinn.`,
    plan: {
      working: 'Der Draht der Brücken und die Größe der Platine folgen, sobald die Platine geplant ist.',
      none: 'Es gibt keinen Platinenplan (das Blatt Platinenplan sagt, warum): Der Draht der Brücken ist nicht gezählt und die Größe der Platine nicht bekannt.',
    },
    metres: (length) => `${formatNumber(length, 3)}\u00A0m`,
    heads: [
      'Teil',
      'Je Bausatz',
      'Bedarf',
      'Mit Reserve',
      'Vorrat',
      'Stück je Packung',
      'Packungen zu kaufen',
      'Preis je Packung',
      'Kosten',
    ],
    used: (uses) => `Für: ${uses}.`,
    match: (text) => `Muss stimmen: ${text}.`,
    vary: (text) => `Darf abweichen: ${text}.`,
    stock: (name) => `Vorrat: ${name}`,
    pack: (name) => `Stück je Packung: ${name}`,
    price: (name) => `Preis je Packung: ${name}`,
    step: (what) => `Bestellung: ${what}`,
    more: (name) => `Genauer ansehen: ${name}`,
    moreShort: 'Genauer ansehen',
    enough: (chance) => `Wahrscheinlichkeit, dass es reicht: ${formatShare(chance, 2)}.`,
    hopeless: 'Bei dieser Verlustquote ist keine Zahl sicher: die Quote senken.',
    alternates: 'Stattdessen',
    noAlternates: 'Für diese Zeile ist kein Ersatz berechnet.',
    basket: (chance) => `Wahrscheinlichkeit, dass gar nichts fehlt: ${formatShare(chance, 1)}`,
    total: (cost) => `Summe: ${formatFixed(cost, 2)}`,
    unpriced: (lines) => `${count(lines, 'Zeile', 'Zeilen')} ohne Preis`,
    noPrices: 'Noch keine Preise eingetragen.',
    cautions: 'Vor dem Bestellen',
  },

  check: {
    bandsFive: 'fünf Ringe, 1 %',
    bandsFour: 'vier Ringe, 5 %',
    bandsSix: 'sechs Ringe, 1 % und 50 ppm/K',
    bandsLabel: (words, bands) => `${words}: ${bands}`,
    notOnFour: 'Mit vier Ringen ist dieser Wert nicht darzustellen.',
    typedBands: 'Gesehene Ringe, einer nach dem anderen',
    typedBandsHint: 'Etwa „braun rot schwarz rot braun“. Dann die Eingabetaste drücken.',
    code: (code) => `Aufdruck: ${code}.`,
    codeHint: 'Was aufgedruckt ist, etwa 683K, 104 oder 47n. Dann die Eingabetaste drücken.',
    typedCode: 'Gesehener Aufdruck',
    noCode: (read) => `„${read}“ ist kein lesbarer Kondensatoraufdruck.`,
    polarity: {
      electrolytic: 'Auf die Polung achten: Der Streifen und das kürzere Bein sind minus.',
      diode: 'Auf die Polung achten: Der Ring ist die Kathode, das Ende, aus dem der Strom fließt.',
      chip: 'Die Kerbe oder der Punkt zeigt das Ende mit Stift 1. Verkehrt herum wird er sofort heiß.',
      lead: 'Rot ist plus, schwarz ist minus. Vor dem Anschließen zweimal hinsehen.',
      none: 'Passt in beiden Richtungen.',
    },
  },

  connections: {
    why: [
      'Jede Verbindung der Schaltung, nach Stift des Chips und Bein des Teils.',
      'Der Platinenplan wird mit dieser Liste verglichen, bevor er gezeigt wird; mit einem Durchgangsprüfer geht das auch an der Platine.',
    ],
    nets: 'Was womit verbunden ist',
    netHeads: ['Netz', 'Verbindet'],
    parts: 'Teile',
    partHeads: ['Teil', 'Wert', 'Wofür', 'Beine und ihre Netze'],
    points: 'Messstifte',
    pointHeads: ['Stift', 'Netz'],
    save: 'Als Text sichern',
    saveName: (name) => `${name} Verbindungsliste`,
    count: (nets, joints, parts) =>
      `${count(nets, 'Netz', 'Netze')}, ${count(joints, 'Bein', 'Beine')}, ${count(parts, 'Teil', 'Teile')}.`,
  },

  ...kitBoard,
  ...kitBench,

  refusal: {
    heading: 'Kein Platinenplan',
    'part missing': (ref) => `${ref} gibt es mit diesem Wert und in dieser Art nicht mit Beinen.`,
    'board too small': (needs, has) => `Der Plan braucht ${needs}; die Platine hat ${has}.`,
    'in the way': (ref) => `Die frei gehaltenen Löcher lassen keinen Platz für ${ref}.`,
    'net impossible': (names) => `Keine gefundene Anordnung verbindet ${names}.`,
    'not proved':
      'Der gefundene Plan ergibt beim Zurücklesen nicht die Verbindungsliste, darum wird er nicht gezeigt.',
    change: {
      board: (size) => `${HELPS} eine Platine mit ${size}.`,
      capacitor: (ref, to) => `${HELPS} ${ref} als ${TYPES[to] ?? to}.`,
      'free hole': (hole) => `${HELPS} ${hole} zur Verwendung freigeben.`,
      effort: `${HELPS} mehr Anordnungen versuchen.`,
    },
    take: {
      board: 'Diese Platine nehmen',
      'free hole': 'Freigeben',
      effort: 'Mehr versuchen',
    },
  },

  body: {
    chip: (pins) => `${formatNumber(pins, 3)} Stifte`,
    cell: 'Fotowiderstand',
    jack: 'Buchse',
    diode: 'Schottky',
  },
  voice: (voice) => `Stimme ${voice}`,
};
