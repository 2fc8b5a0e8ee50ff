/** Words of the order list in German: what each line is, what must match, what may vary, what another part would do. */
import { formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import { type LineWords, type OrderSpec, type orderLines, type orderWords, pieceSize } from './order.ts';
import type { Translated } from './spoken.ts';

const DIELECTRIC = {
  polyester: 'Polyesterfolie',
  polypropylene: 'Polypropylenfolie',
  c0g: 'Keramik C0G (NP0)',
  x7r: 'Keramik X7R',
  y5v: 'Keramik Y5V',
  electrolytic: 'Elko',
} as const;

const TYPE = { film: 'Folie', ceramic: 'Keramik', electrolytic: 'Elko' } as const;

const TRIMMER = {
  'single-turn': 'Cermet-Trimmpoti, eine Umdrehung',
  'multi-turn': 'Cermet-Trimmpoti, viele Umdrehungen',
  carbon: 'Kohleschicht-Trimmpoti, eine Umdrehung',
} as const;

const ohm = (ohms: number): string => formatQuantity(ohms, 'Ω');
const farad = (farads: number): string => formatQuantity(farads, 'F');

const WIRE = {
  links: {
    name: 'Draht für Brücken, blank verzinntes Kupfer, Meterware',
    mustMatch: 'massiv, 0,5 bis 0,7 mm dick',
    mayVary: 'Hersteller; für kurze Brücken genügen abgeschnittene Widerstandsbeine',
  },
  leads: {
    name: 'Litze für die Sensoren, isoliert, Meterware',
    mustMatch: 'Litze, denn massiver Draht bricht; etwa 0,14 mm², das blanke Ende passt in ein Loch von 1 mm',
    mayVary: 'Hersteller, Farben; von Zwillingslitze die halbe Länge',
  },
  sleeve: {
    name: 'Schrumpfschlauch, 3 mm, Meterware',
    mustMatch: 'passt über ein gelötetes Bein und schrumpft auf 1,5 mm',
    mayVary: 'Hersteller, Farbe; Isolierschlauch',
  },
} as const;

function line(spec: OrderSpec): LineWords {
  switch (spec.kind) {
    case 'resistor':
      return {
        name: `Widerstand ${ohm(spec.ohms)}, Metallschicht, 1 %, 0,25 W`,
        mustMatch: 'der Wert; 1 %; Körper höchstens 7 mm lang',
        mayVary: 'Hersteller, Farbe des Körpers, 0,25 bis 0,6 W, vier oder fünf Ringe',
      };
    case 'timing capacitor':
      return {
        name: `Kondensator ${farad(spec.farads)}, ${DIELECTRIC[spec.dielectric]}, ±${formatShare(spec.tolerance)}, ab ${formatNumber(spec.volts, 3)} V`,
        mustMatch: 'der Wert und das Dielektrikum, beide bestimmen die Tonhöhe; Rastermaß 5 mm',
        mayVary: 'Hersteller, höhere Spannung, engere Toleranz',
      };
    case 'capacitor':
      return capacitor(spec);
    case 'trimmer':
      return {
        name: `${TRIMMER[spec.part]}, ${ohm(spec.ohms)}, ±${formatShare(spec.tolerance)}`,
        mustMatch: `der Wert; ${spec.turns === 1 ? 'eine Umdrehung' : `${formatNumber(spec.turns, 3)} Umdrehungen`}; Beine im Raster 2,54 mm; linear`,
        mayVary: 'Hersteller, von der Seite oder von oben zu drehen',
      };
    case 'volume':
      return {
        name: `Trimmpoti oder Poti ${ohm(spec.ohms)}, linear oder logarithmisch`,
        mustMatch: 'der Wert',
        mayVary: 'Hersteller, Achse, Kennlinie',
      };
    case 'cell':
      return {
        name: `Fotowiderstand, ${ohm(spec.minOhms)} bis ${ohm(spec.maxOhms)} bei 10 lx, dunkel ab ${ohm(spec.darkOhms)}`,
        mustMatch: `die Sorte bei 10 lx; Steigung nahe ${formatNumber(spec.gamma, 2)}; alle aus einer Lieferung`,
        mayVary: 'Hersteller, Körper ab 5 mm',
      };
    case 'timer':
      return {
        name: `Doppeltimer, Typ 556, ${spec.family === 'cmos' ? 'CMOS' : 'bipolar'}, DIP mit 14 Stiften`,
        mustMatch: `${spec.family === 'cmos' ? 'CMOS' : 'bipolar'}; läuft von ${formatNumber(spec.minVolts, 3)} bis ${formatNumber(spec.maxVolts, 3)} V; Gehäuse DIP`,
        mayVary: 'Hersteller, Buchstaben vor und nach der Nummer',
      };
    case 'comparator':
      return {
        name: `Doppelkomparator, Typ 393, ${spec.family === 'later' ? 'neuerer Chip' : 'klassischer Chip'}, DIP mit 8 Stiften`,
        mustMatch: 'Ausgänge mit offenem Kollektor; Gehäuse DIP; kein Operationsverstärker',
        mayVary: 'Hersteller, Buchstaben vor und nach der Nummer',
      };
    case 'socket':
      return {
        name: `IC-Fassung, ${spec.pins}-polig, 7,62 mm breit`,
        mustMatch: `${spec.pins} Pole, Kerbe bezeichnet`,
        mayVary: 'Hersteller, gedrehte oder gestanzte Kontakte',
      };
    case 'diode':
      return {
        name: 'Schottky-Diode, 1 A, ab 20 V, axial',
        mustMatch: 'Schottky: eine Siliziumdiode nimmt 0,4 V mehr',
        mayVary: 'Hersteller, 0,5 bis 3 A',
      };
    case 'supply':
      return SUPPLY[spec.supply].supply;
    case 'supply lead':
      return SUPPLY[spec.supply].lead;
    case 'jack':
      return {
        name: 'Klinkenbuchse, 6,35 mm oder 3,5 mm, mono, für Platinen',
        mustMatch: 'der Stecker der Kabel; ein Monostecker in einer Stereobuchse schließt den Ring kurz',
        mayVary: 'Hersteller, mit oder ohne Schaltkontakt',
      };
    case 'test pin':
      return {
        name: 'Messstift, 1 mm',
        mustMatch: 'passt in ein Loch von 1 mm',
        mayVary: 'Hersteller, Farbe, Öse oder Stift',
      };
    case 'board':
      return {
        name:
          spec.size === null
            ? 'Streifenrasterplatine, 2,54 mm'
            : `Streifenrasterplatine, 2,54 mm, ${spec.size.strips} Bahnen zu ${spec.size.holes} Löchern`,
        mustMatch:
          spec.size === null
            ? 'Raster 2,54 mm; Leiterbahnen noch nicht getrennt; Größe wie im Platinenplan'
            : `Raster 2,54 mm; Leiterbahnen noch nicht getrennt; ein Stück von mindestens ${pieceSize(spec.size)}`,
        mayVary: 'Hersteller, Hartpapier oder Epoxid; größere Platten zum Zuschneiden',
      };
    case 'wire':
      return WIRE[spec.wire];
  }
}

function capacitor(spec: OrderSpec & { kind: 'capacitor' }): LineWords {
  const name = `Kondensator ${farad(spec.farads)}, ${TYPE[spec.type]}, ab ${formatNumber(spec.volts, 3)} V`;
  if (spec.type === 'electrolytic')
    return {
      name,
      mustMatch: 'radiale Anschlüsse; ein Streifen oder das kürzere Bein bezeichnet minus',
      mayVary: 'Hersteller, höhere Spannung, bis zum doppelten Wert',
    };
  return {
    name,
    mustMatch:
      spec.use === 'coupling'
        ? 'ungepolt; der Wert auf ein Fünftel genau'
        : 'ungepolt; passt über zwei Löcher',
    mayVary:
      spec.use === 'coupling'
        ? 'Hersteller, höhere Spannung'
        : 'Hersteller, Dielektrikum, halber bis doppelter Wert',
  };
}

const SUPPLY: Readonly<
  Record<'block-9v' | 'four-aa' | 'five-volt', { readonly supply: LineWords; readonly lead: LineWords }>
> = {
  'block-9v': {
    supply: {
      name: 'Batterie, 9-V-Block, Alkali (6LR61)',
      mustMatch: 'Alkali: Zink-Kohle gibt ein Zehntel der Stunden',
      mayVary: 'Hersteller',
    },
    lead: {
      name: 'Batterieclip für 9-V-Block, mit Litzen',
      mustMatch: 'rot ist plus, schwarz ist minus',
      mayVary: 'Hersteller',
    },
  },
  'four-aa': {
    supply: {
      name: 'Batterie, AA, Alkali (LR6)',
      mustMatch: 'Alkali; in einem Bausatz ein Hersteller und ein Alter',
      mayVary: 'Hersteller',
    },
    lead: {
      name: 'Batteriehalter für vier AA-Zellen, mit Litzen',
      mustMatch: 'vier in Reihe, 6 V',
      mayVary: 'Hersteller',
    },
  },
  'five-volt': {
    supply: {
      name: 'Netzteil, 5 V stabilisiert, ab 100 mA',
      mustMatch: '5 V, begrenzter Strom, Prüfzeichen für das eigene Land',
      mayVary: 'Hersteller',
    },
    lead: {
      name: 'Versorgungsbuchse oder Leitung, 5 V',
      mustMatch: 'passt zum Netzteil',
      mayVary: 'Hersteller',
    },
  },
};

export const germanOrderLines: Translated<typeof orderLines> = {
  line,
  effect(effect) {
    switch (effect.kind) {
      case 'pitch': {
        const moved = `Stimme ${effect.voice} rückt um ${formatNumber(Math.abs(effect.cents), 3)} Cent nach ${effect.cents < 0 ? 'unten' : 'oben'}`;
        if (Math.abs(effect.cents) < 0.5) return `Stimme ${effect.voice} behält ihre Tonhöhe.`;
        return effect.rotation === null
          ? `${moved}, weiter, als ihr Trimmpoti sie zurückholt.`
          : `${moved}; ihr Trimmpoti holt sie bei ${formatShare(effect.rotation)} seines Wegs zurück.`;
      }
      case 'silent':
        return `Stimme ${effect.voice} würde schweigen: ${
          {
            pitch: 'Ihr Kondensator erreicht den Pegel nie, bei dem er umkehrt.',
            gate: 'Ihr Reset-Stift wird nie losgelassen.',
            light: 'Bei dieser Schwelle löst kein Licht sie aus.',
          }[effect.why]
        }`;
      case 'light':
        return Math.abs(Math.log(effect.ratio)) < 0.005
          ? `Stimme ${effect.voice} schaltet im selben Licht.`
          : `Stimme ${effect.voice} setzt beim ${formatNumber(effect.ratio, 2)}-Fachen des Lichts ein: ihre Schwelle neu einstellen.`;
      case 'level':
        return Math.abs(effect.decibels) < 0.05
          ? 'So laut wie zuvor.'
          : `${formatNumber(Math.abs(effect.decibels), 2)} dB ${effect.decibels < 0 ? 'leiser' : 'lauter'}.`;
      case 'current':
        return `Nimmt ${formatQuantity(effect.amperes, 'A', 3)} auf, wenn beide schweigen.`;
      case 'supply too low':
        return `Läuft nicht an dieser Versorgung: Es braucht ${formatNumber(effect.leastVolts, 3)} V.`;
    }
  },
};

export const germanOrder: Translated<typeof orderWords> = {
  columns: [
    'Teil',
    'Muss stimmen',
    'Darf abweichen',
    'Wofür',
    'Je Bausatz',
    'Bedarf',
    'Mit Reserve',
    'Vorrat',
    'Stück je Packung',
    'Packungen zu kaufen',
    'Preis je Packung',
    'Kosten',
    'Wahrscheinlichkeit, dass es reicht',
    'Stattdessen',
  ],
  total: 'Summe',
  basket: (chance) => `Wahrscheinlichkeit, dass nichts fehlt: ${formatShare(chance, 1)}`,
  noCount: 'Bei dieser Verlustquote ist keine Zahl sicher.',
  partLosses: {
    resistor: 'Widerstände',
    capacitor: 'Kondensatoren',
    chip: 'Chips',
    trimmer: 'Trimmpotis',
    cell: 'Fotowiderstände',
    'battery lead': 'Batterieclips',
    other: 'alles Übrige',
  },
};
