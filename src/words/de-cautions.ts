/** The cautions in German, in the order of the English ones. */
import type { CautionWords } from './cautions.ts';

export const germanCautions: CautionWords = {
  localRules: 'Die Regeln bei euch und zugelassene Fachleute gehen immer vor.',
  all: [
    {
      hazard: 'Gehör',
      place: 'sound',
      words:
        'Fangt leise an: Rechteckwellen klingen lauter, als man misst. Diese Seite kann nicht wissen, wie laut euer Lautsprecher ist. Als Richtwert vertragen Erwachsene 80 dB(A) 40 Stunden in der Woche, Kinder 75; alle 3 dB mehr halbieren die Zeit.',
      source: 'ITU-T H.870; WHO und ITU, Safe listening devices and systems (2019)',
    },
    {
      hazard: 'Kopfhörer',
      place: 'headphones',
      words:
        'Nehmt die Kopfhörer ab, bevor ihr den Ton einschaltet, und setzt sie auf, wenn ihr den Pegel kennt.',
      source: 'gängige Praxis',
    },
    {
      hazard: 'Blitzendes Licht',
      place: 'light',
      words:
        'Eine winkende Hand unter einer Lampe oder eine geschlitzte Laterne kann blitzen. Haltet echtes Licht unter 3 Blitzen in der Sekunde: Schnelleres Blitzen kann Anfälle auslösen. Auf dieser Seite blitzt nichts schneller, was der Klang auch tut.',
      source: 'WCAG 2.2, 2.3.1; Epilepsy Society (UK)',
    },
    {
      hazard: 'Lampen',
      place: 'light',
      words:
        'Echte Lampen: für eine Klasse kühle mit kleiner Spannung, nichts öffnen, was am Netz hängt, kein Papier nahe einer Flamme, und nie in eine gebündelte LED oder die Sonne schauen.',
      source: 'gängige Praxis',
    },
    {
      hazard: 'Privatsphäre',
      place: 'camera',
      words:
        'Das Bild bleibt auf diesem Gerät: Aus jedem werden zwei Helligkeiten gelesen, nichts wird gespeichert oder gesendet. Fragt die Leute, bevor eine Kamera sie sieht.',
      source: 'gängige Praxis',
    },
    {
      hazard: 'Polung',
      place: 'timing capacitor',
      words:
        'Ein Elektrolytkondensator hat eine Polung: Das kürzere Bein und der Streifen sind minus. Falsch herum kann er lecken, ausgasen oder platzen. Als Zeitglied taugt er auch sonst wenig: Leckstrom und Toleranz verschieben die Tonhöhe.',
      source: 'Rubycon und Elna, Hinweise zu Aluminium-Elektrolytkondensatoren',
    },
    {
      hazard: 'Polung',
      place: 'output',
      words:
        'Ein gepolter Koppelkondensator sitzt mit seinem Plusbein zu den Timern hin. Steckt Kopfhörer nie direkt an Timer-Ausgänge: mindestens 1 kΩ in Reihe, besser 4,7 kΩ oder mehr, und ein Lautstärkeregler.',
      source: 'gerechnet aus 9 V an 32 Ω bei 100 dB/mW; gängige Praxis',
    },
    {
      hazard: 'Batterien',
      place: 'supply',
      words:
        'Ein 9-V-Block, den Schlüssel oder Stahlwolle kurzschließen, kann ein Feuer entfachen: Lasst die Kappe darauf. Mischt keine alten und neuen Zellen, und ladet Alkalizellen nie auf.',
      source: 'NFPA, Lagerung von 9-V-Batterien; Energizer-FAQ',
    },
    {
      hazard: 'Cadmium',
      place: 'cell',
      words:
        'Diese Lichtzellen enthalten Cadmium: nicht schleifen, zerbrechen oder verbrennen, und als Elektroschrott abgeben. Der Verkauf von Bausätzen damit ist in manchen Ländern eingeschränkt.',
      source: 'RoHS-Richtlinie der EU; gängige Praxis',
    },
    {
      hazard: 'Löten',
      place: 'building',
      words:
        'Kolophoniumrauch ist eine häufige Ursache von Berufsasthma: Saugt ihn ab, haltet den Kopf aus der Fahne, schützt die Augen beim Abkneifen, wascht die Hände.',
      source: 'HSE (UK), INDG248 und Hinweise zu Asthma beim Löten',
    },
  ],
};
