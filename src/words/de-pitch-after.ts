/** Words of the place Pitch for what is done with candidates: hearing, telling apart, keeping, comparing. In German. */
import { formatQuantity, formatShare } from '../quantity/format.ts';
import { hertzText } from './en-pitch.ts';
import type { foundWords } from './en-pitch-found.ts';
import type { Translated } from './spoken.ts';

const ohms = (value: number): string => (value === 0 ? 'ohne' : formatQuantity(value, 'Ω', 3));
const kitsText = (count: number): string => `${count} ${count === 1 ? 'Bausatz' : 'Bausätze'}`;

export const pitchAfter: Translated<Pick<typeof foundWords, 'hear' | 'abx' | 'shortlist' | 'compare'>> = {
  hear: {
    heading: 'Anhören',
    target: 'Am Ziel',
    sweep: 'Von Anschlag zu Anschlag',
    worst: 'Ungünstigste Teile',
    worstHint: 'tiefster, gemeinter, höchster',
    turns: (kits) => `${kitsText(kits)} nacheinander`,
    together: (kits) => `${kitsText(kits)} zusammen`,
    stop: 'Anhalten',
    voices: 'hören',
    voiceNames: { both: 'beide Stimmen', A: 'A allein', B: 'B allein' },
    reference: 'Vergleichston daneben',
    references: 'Ton',
    referenceOf: (voice, hertz) => `Ziel von ${voice}, ${hertzText(hertz)}`,
    playing: (name, step, of) => (of > 1 ? `${name}: ${step} von ${of}` : `${name}: klingt.`),
    making: (step, of) => `Der Klang entsteht: ${step} von ${of} Bausätzen.`,
    loudness:
      'Alle gleich laut, bei jedem Licht. Die Bausätze sind mit der Startzahl des Wunsches gelost und ungestimmt, die Trimmpotis stehen, wo Teile mit Nennwert sie brauchen.',
  },

  abx: {
    heading: 'Zwei gegeneinander hören',
    first: 'erster',
    second: 'zweiter',
    hearFirst: 'Den ersten hören',
    hearSecond: 'Den zweiten hören',
    hearX: 'X hören',
    blind: 'Blind: X ist einer der beiden, jedes Mal neu gelost',
    isFirst: 'X ist der erste',
    isSecond: 'X ist der zweite',
    explain: 'Den ersten, den zweiten und X beliebig oft anhören, dann sagen, welcher X ist.',
    none: 'Mindestens zwei Vorschläge suchen oder merken; dann lassen sie sich gegeneinander hören.',
    score: (right, of) => `${right} von ${of} richtig.`,
    chance: (chance) =>
      chance > 0.05
        ? `Raten ist in ${formatShare(chance)} der Fälle ebenso gut oder besser: Noch ist kein Unterschied gezeigt.`
        : `Raten ist nur in ${formatShare(chance, 1)} der Fälle ebenso gut oder besser: Der Unterschied ist hörbar.`,
    right: 'Richtig.',
    wrong: 'Falsch.',
    again: 'Von vorn',
    same: 'Zwei verschiedene Vorschläge wählen.',
  },

  shortlist: {
    heading: 'Merkliste',
    keptName: (name) => `gemerkt, ${name}`,
    empty:
      'Noch nichts gemerkt. Einen Vorschlag wählen und „Auf die Merkliste“ drücken; er bleibt im Entwurf, in seiner Datei und seinem Link.',
    hear: (name) => `${name} hören`,
    look: (name) => `${name} ansehen`,
    remove: (name) => `${name} streichen`,
    removeStep: 'von der Merkliste streichen',
    row: (a, b) => (a === b ? `A und B: ${a}` : `A: ${a}; B: ${b}`),
    targets: (a, b) => `für ${a} und ${b}`,
  },

  compare: {
    heading: 'Kondensatoren vergleichen',
    explain:
      'Zwei bis sechs Kondensatoren mit denselben Widerständen und demselben Trimmpoti: welchen Stimmweg jeder hat und wie er driftet.',
    base: 'Widerstände von',
    bases: {
      A: 'Stimme A des Entwurfs',
      B: 'Stimme B des Entwurfs',
      found: 'A des gewählten Vorschlags',
    },
    with: (parts) => `Mit ${parts}.`,
    resistors: (ra, rb, trimmer) =>
      `RA ${ohms(ra)}, ${rb === 0 ? 'ohne festes RB' : `festes RB ${ohms(rb)}`}, Trimmpoti ${ohms(trimmer)}`,
    value: (n) => `Kondensator ${n}`,
    dielectric: 'Dielektrikum',
    tolerance: 'Toleranz',
    add: 'Kondensator hinzufügen',
    remove: (n) => `Kondensator ${n} entfernen`,
    removeShort: 'Entfernen',
    hear: (name) => `${name} hören`,
    sweep: (name) => `${name} durchstimmen`,
    caption: (law) =>
      `Breit: Nennwerte, Anschlag zu Anschlag; schmal: was 99 von 100 Bausätzen mit dem Trimmpoti bei 10 bis 90 % erreichen (Teile ${law}).`,
    summary: (names) => `Stimmweg von ${names.join(', ')} mit denselben Widerständen.`,
    table: 'Tabelle der Kondensatoren',
    heads: [
      'Kondensator',
      'Nennwert von',
      'Nennwert bis',
      '99 % von',
      '99 % bis',
      'in der Mitte',
      'ungünstigste Teile dort',
      'warmer Raum +10 °C, Cent',
      'Daumen, Cent',
      'erstes Jahr, Cent',
    ],
    never: 'Mit dieser Steuerspannung schwingt die Stimme nie; vergleichen lässt sich nichts.',
    fileName: 'kondensatoren',
  },
};
