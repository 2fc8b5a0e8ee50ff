/** Words of the place Pitch from the search on: candidates and the look at one of them. In German. */
import { formatFixed, formatNumber, formatQuantity, formatShare, formatSigned } from '../quantity/format.ts';
import { noteIn } from './amounts.ts';
import { dielectricNames, trimmerNames } from './de-pitch.ts';
import { pitchAfter } from './de-pitch-after.ts';
import { hertzText, toleranceText } from './en-pitch.ts';
import type { foundWords } from './en-pitch-found.ts';
import type { Translated } from './spoken.ts';

type Found = typeof foundWords;
type Parts = Parameters<Found['shortParts']>[0];

const ohms = (value: number): string => (value === 0 ? 'ohne' : formatQuantity(value, 'Ω', 3));
/** The fixed resistor beside a trimmer: the whole of RB may be the trimmer. */
const fixedText = (value: number): string => (value === 0 ? 'ohne festes RB' : `festes RB ${ohms(value)}`);
const farads = (value: number): string => formatQuantity(value, 'F', 3);
const cents = (value: number): string =>
  `${value < 0 ? '−' : ''}${formatFixed(Math.abs(value), Math.abs(value) < 10 ? 1 : 0)}`;
const numberOf = (hertz: number): string => formatFixed(hertz, hertz < 99.95 ? 1 : 0);
/** Per cent of kits: 99.6 % is not yet all of them. */
const share = (value: number): string =>
  value > 0.995 && value < 1 ? formatShare(Math.min(value, 0.999), 1) : formatShare(value);
const span = (low: number, high: number): string => `${numberOf(low)} bis ${numberOf(high)}\u00A0Hz`;
const turned = (middle: number, low: number, high: number): string =>
  `${formatShare(middle)} (${formatFixed(low * 100, 0)} bis ${formatFixed(high * 100, 0)})`;
const capacitor = ({ farads: value, dielectric, tolerance }: Parts['capacitor']): string =>
  `${farads(value)} ${dielectricNames[dielectric]} ${toleranceText(tolerance)}`;

export const pitchFound: Translated<Found> = {
  share,
  ohms,
  farads,
  numberOf,
  span,
  noteAt: (note, hertz) => `${note}, ${hertzText(hertz)}`,
  capacitor,
  shortParts: ({ ra, rbFixed, trimmer, capacitor: c }) =>
    `${ohms(ra.ohms)} · ${ohms(rbFixed.ohms)} · ${ohms(trimmer.ohms)} · ${farads(c.farads)}`,
  partsOf: (voice, { ra, rbFixed, trimmer, capacitor: c }) =>
    `${voice === 'both' ? 'A und B gleich' : voice}: RA ${ohms(ra.ohms)}, ${fixedText(rbFixed.ohms)}, Trimmpoti ${ohms(trimmer.ohms)} ${trimmerNames[trimmer.part]} ${toleranceText(trimmer.tolerance)}, C ${capacitor(c)}`,

  name: (place, a, b) => {
    const [one, other] = [farads(a.capacitor.farads), farads(b.capacitor.farads)];
    const caps = one === other ? one : `${one} und ${other}`;
    return place === null ? caps : `Nr. ${place} (${caps})`;
  },

  ruler: {
    heading: 'Der Stimmweg der Vorschläge',
    bar: (voice, place, name) => `${place}${voice === 'both' ? '' : voice} · ${name}`,
    target: (voice, note) => `${voice} soll auf ${note}`,
    targetSpan: (voice, low, high) => `${voice} soll von ${low} bis ${high}`,
    caption: (law, kits) =>
      `Breit: was die Werte von Anschlag zu Anschlag versprechen; schmal: was 99 von 100 Bausätzen mit dem Trimmpoti bei 10 bis 90 % erreichen (Teile ${law}). Kleine Marken: ${kits} Bausätze des gewählten Vorschlags vor dem Stimmen, rund A, eckig B.`,
    summary: (count, best, reach) =>
      `Stimmwege von ${count} Vorschlägen auf einer Linie der Tonhöhen. Der beste, ${best}, bringt ${reach} der Bausätze auf beide Töne.`,
    all: (count) => `Alle ${count} als Balken zeigen`,
    fewer: 'Nur die ersten als Balken zeigen',
    table: 'Tabelle der Balken',
    heads: ['Vorschlag', 'Stimme', 'Nennwert von', 'Nennwert bis', '99 % von', '99 % bis'],
    nothing: 'nichts gemeinsam',
    svg: 'SVG',
    csv: 'CSV',
    fileName: 'stimmweg',
  },

  table: {
    heading: 'Die Vorschläge',
    caption: (law, kits) =>
      `Gezählt sind Bausätze, die mit den Trimmpotis zwischen 10 und 90 % des Drehwegs auf beide Töne kommen: ${formatNumber(kits, 6)} Bausätze je Zeile gelost, Teile ${law}. In der Zelle jeder Stimme: RA, festes RB, Trimmpoti, C.`,
    heads: [
      '',
      'A',
      'B',
      'erreicht beide',
      'gedreht auf, A',
      'gedreht auf, B',
      'Cent je Grad',
      'warmer Raum +10 °C',
      'schadet am meisten',
      'verschiedene Teile',
      'Preis je Bausatz',
    ],
    choose: (place) => `Vorschlag ${place}`,
    same: 'ebenso',
    turned,
    pair: (a, b) => `${cents(a)} / ${cents(b)}`,
    range: (low, high) => `${formatSigned(low)} bis ${formatSigned(high)}`,
    price: (value) => (value === null ? '–' : formatFixed(value, 2)),
    sensitivity: (of, value) => `${of} ${toleranceText(value)}`,
    csvHeads: [
      'Platz',
      'erreicht beide, 10 bis 90 %',
      'erreicht beide, ganzer Drehweg',
      'verschiedene Teile',
      'Preis',
    ],
    csvVoiceHeads: [
      'Ziel unten Hz',
      'Ziel oben Hz',
      'RA Ohm',
      'festes RB Ohm',
      'Trimmpoti Ohm',
      'Art des Trimmpotis',
      'C Farad',
      'Dielektrikum',
      'Toleranz von C',
      'erreicht, 10 bis 90 %',
      '99 % der Bausätze ab Hz',
      '99 % der Bausätze bis Hz',
      'Drehung',
      'Drehung, 5 % der Bausätze darunter',
      'Drehung, 5 % der Bausätze darüber',
      'Cent je Grad',
      'warmer Raum, wenigste Cent',
      'warmer Raum, meiste Cent',
    ],
    csv: 'Tabelle als CSV speichern',
    fileName: 'vorschlaege',
    keys: 'Pfeil auf und ab wählen einen anderen Vorschlag.',
  },

  sensitivity: {
    capacitor: 'C',
    ra: 'RA',
    rbFixed: 'festes RB',
    trimmer: 'Trimmpoti',
    timer: 'Timer',
  },

  detail: {
    heading: (name) => `Vorschlag ${name}`,
    reach: (easy, full, kits, law) =>
      `${share(easy)} der Bausätze erreichen beide Töne mit den Trimmpotis zwischen 10 und 90 %, ${share(full)} auf dem ganzen Drehweg (${formatNumber(kits, 6)} Bausätze gelost, Teile ${law}).`,
    voice: (voice, easy, full) =>
      `${voice} allein: ${share(easy)} der Bausätze zwischen 10 und 90 %, ${share(full)} auf dem ganzen Drehweg.`,
    heads: ['', 'A', 'B'],
    rows: {
      target: 'Ziel',
      nominal: 'Nennwerte, Anschlag zu Anschlag',
      easyNominal: 'Nennwerte, 10 bis 90 %',
      promised: '99 % der Bausätze, Anschlag zu Anschlag',
      easyPromised: '99 % der Bausätze, 10 bis 90 %',
      reached: 'Bausätze, die es erreichen, 10 bis 90 %',
      rotation: 'gedreht auf (5 bis 95 % der Bausätze)',
      degree: 'Cent je Grad dort',
      settable: 'einstellbar auf',
      duty: 'Tastverhältnis dort',
      untuned: 'vor dem Stimmen, 99 von 100 Bausätzen',
      worst: 'ungünstigste Teile, ungestimmt',
    },
    withLaw: (label, law) => `${label} (${law})`,
    none: 'nichts gemeinsam',
    settable: (value) => `±${cents(value)} Cent`,
    degree: (value) => `${cents(value)} Cent`,
    turned,
    table: 'Stimmweg und Stimmen',
    driftTable: 'Wohin der Ton danach wandert, Cent',
    driftHeads: ['', 'A', 'B'],
    drifts: {
      warmRoom: 'ein warmer Raum, +10 °C',
      coldVan: 'ein kalter Transporter, −20 °C',
      thumb: 'ein Daumen auf dem Kondensator',
      year: 'das erste Jahr',
      battery: 'Batterie von frisch bis leer',
    },
    battery: (from, to) => `Batterie, ${formatFixed(from, 1)} bis ${formatFixed(to, 1)} V`,
    regulated: 'geregelte Versorgung: keine Drift',
    hurts: 'Welche Toleranz am meisten schadet',
    hurtsHeads: ['Teil', 'verschiebt A um', 'verschiebt B um'],
    hurtsBy: toleranceText,
    hurtsBasis: 'Erste Ordnung: was jede Toleranz allein, an ihrer Grenze, mit der Periodendauer macht.',
    changes: 'Was sich ändern lässt',
    noChanges: (voice) => `${voice}: Kein anderes einzelnes Teil hilft mehr als eine Spur.`,
    change: (voice, what, before, after) =>
      `${voice}: ${what} bringt den Anteil, der den Ton erreicht, von ${share(before)} auf ${share(after)} (erste Ordnung).`,
    changeKinds: {
      'closer capacitor': (tolerance) => `ein Kondensator mit ${toleranceText(tolerance)}`,
      'other capacitor': (value) => `ein Kondensator von ${farads(value)}`,
      'closer trimmer': (tolerance) => `ein Trimmpoti mit ${toleranceText(tolerance)}`,
      'other trimmer': (value) => `ein Trimmpoti von ${ohms(value)}`,
      'other fixed part': (value) => (value === 0 ? 'kein festes RB' : `ein festes RB von ${ohms(value)}`),
    },
    lock: (upper, lower, apart, within, dip) =>
      `Die Stimmen liegen ${cents(apart)} Cent neben ${upper} : ${lower} und können einrasten: Ein gemeinsamer Einbruch von ${formatQuantity(dip, 'V', 2)} bei jeder Flanke zieht sie innerhalb von etwa ${cents(within)} Cent zusammen (erste Ordnung). Abblockkondensatoren an beiden Chips helfen, oder Töne, die weiter auseinanderliegen.`,
    noLock:
      'Die Stimmen liegen weit genug von jedem einfachen Verhältnis oder sind gut genug abgeblockt, um nicht einzurasten (erste Ordnung).',
    beats: (upper, lower, apart, beats) =>
      beats < 0.05
        ? `Ihr Intervall ist bis auf eine Spur ${upper} : ${lower}: keine Schwebung.`
        : `Ihr Intervall liegt ${formatSigned(apart)} Cent neben ${upper} : ${lower}: ${formatFixed(beats, beats < 10 ? 1 : 0)} Schwebungen in der Sekunde (${formatFixed(beats, 2)} Hz).`,
    noBeats: 'Ihr Intervall liegt nahe keinem Verhältnis kleiner Zahlen: keine nennenswerte Schwebung.',
    keep: 'Auf die Merkliste',
    kept: 'Auf der Merkliste',
    full: 'Die Merkliste ist voll: erst einen Eintrag streichen.',
    take: 'In den Entwurf übernehmen',
    taken: 'Der Entwurf hat jetzt diese Werte. „Rückgängig“ bringt die alten zurück.',
    takeStep: 'Teile aus „Tonhöhe“',
    keepStep: 'auf die Merkliste setzen',
    impossible:
      'Mit dieser Steuerspannung erreicht der Kondensator nie beide Pegel; versprechen lässt sich nichts.',
  },

  curve: {
    heading: 'Trimmpoti und Tonhöhe',
    summary: (text) =>
      `Tonhöhe über der Drehung jedes Trimmpotis, darunter, wie viele Cent ein Grad ausmacht. ${text}`,
    caption:
      'Oben: Drehung und Tonhöhe, A durchgezogen, B gestrichelt, Punkte an den Zielen; unten: Cent je Grad.',
    cursor: 'Drehung der Trimmpotis',
    cursorHint: 'Pfeil links und rechts drehen sie.',
    at: (rotation) => `bei ${formatShare(rotation)}`,
    voice: (voice, note, away, hertz, degree) =>
      `${voice} ${noteIn('de', note)} ${formatSigned(away)} Cent, ${hertzText(hertz)}, ${cents(degree)} Cent je Grad`,
    degrees: 'Cent je Grad',
    table: 'Tabelle der Kurve',
    heads: ['gedreht', 'A, Hz', 'A, Cent je Grad', 'B, Hz', 'B, Cent je Grad'],
    row: (hertz) => formatFixed(hertz, 1),
    degree: (value) => formatFixed(value, 1),
    fileName: 'stimmkurve',
  },

  ...pitchAfter,

  why: {
    before: [
      'Auf dem Papier erreichbar heißt nicht in der Serie erreichbar: Kondensator und Trimmpoti liegen jeder irgendwo in ihrer Toleranz.',
      'Sagen, welche Töne gewünscht sind und was zur Hand ist. Dann wird jede Kombination berücksichtigt, und die besten werden als Bausätze gelost.',
    ],
    bars: 'Der breite Balken ist, was die Werte versprechen. Der schmale darin ist, was 99 von 100 Bausätzen mit dem Trimmpoti zwischen 10 und 90 % erreichen.',
    wins: (name, reach, a, b) =>
      `${name} steht vorn: ${share(reach)} der Bausätze erreichen beide Töne, und ein Grad am Trimmpoti verschiebt A um ${cents(a)} und B um ${cents(b)} Cent.`,
    rival: (name, reasons) => `Mit anderen Kondensatoren folgt ${name}: ${reasons.join(', ')}.`,
    rivalReasons: {
      reach: (value) => `${share(value)} der Bausätze erreichen beide Töne`,
      tuning: (a, b) => `${cents(Math.max(a, b))} Cent je Grad am schlechteren Trimmpoti`,
      parts: (count) => `${count} verschiedene Teile`,
      price: (value) => `${formatFixed(value, 2)} je Bausatz`,
      close: 'fast ebenso gut',
    },
    hurts: (voice, of, value) =>
      `Am meisten verschiebt ${voice} dieses Teil: ${of}, um ${toleranceText(value)} an seiner Grenze.`,
    allHere: 'Fast jeder Bausatz lässt sich leicht stimmen.',
    some: (inTwenty) =>
      `Von zwanzig Bausätzen erreichen etwa ${formatFixed(inTwenty, 0)} nicht beide Töne mit dem Trimmpoti zwischen 10 und 90 %.`,
  },
};
