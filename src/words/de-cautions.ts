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
        'Diese Fotowiderstände enthalten Cadmium: nicht schleifen, zerbrechen oder verbrennen, und als Elektroschrott abgeben. Der Verkauf von Bausätzen damit ist in manchen Ländern eingeschränkt.',
      source: 'RoHS-Richtlinie der EU; gängige Praxis',
    },
    {
      hazard: 'Cadmium',
      place: 'order in the eu',
      words:
        'In der Europäischen Union dürfen Fotowiderstände mit Cadmium in neuen Geräten nicht mehr verkauft werden: Die Ausnahme endete am 31. Dezember 2013. Fragt nach, bevor ihr Bausätze verkauft oder verschenkt; üblich ist stattdessen ein Fototransistor mit einem eigenen Teiler.',
      source: 'EU-RoHS-Richtlinie 2011/65/EU, Anhang III; Mitteilung eines Händlers zum Ende der Ausnahme',
    },
    {
      hazard: 'Cadmium',
      place: 'order in the uk',
      words:
        'Im Vereinigten Königreich gilt dieselbe Grenze für Cadmium wie in der Europäischen Union: Fragt nach, bevor ihr Bausätze mit diesen Fotowiderständen verkauft oder verschenkt.',
      source: 'UK RoHS Regulations 2012; aus dem Gedächtnis',
    },
    {
      hazard: 'Cadmium',
      place: 'order elsewhere',
      words:
        'Diese Fotowiderstände enthalten Cadmium. Die Regeln sind von Land zu Land verschieden: Fragt nach, bevor ihr Bausätze verkauft oder über eine Grenze tragt.',
      source: 'gängige Praxis',
    },
    {
      hazard: 'Batterien',
      place: 'battery transport',
      words:
        'Tragt Batterien in ihrer Packung oder mit abgedeckten Kontakten, 9-V-Blöcke einzeln; nie lose in einer Tasche mit Clips oder Draht. Paketdienste haben eigene Regeln für Batterien: Fragt nach.',
      source: 'NFPA, Lagerung von 9-V-Batterien; gängige Praxis',
    },
    {
      hazard: 'Erstes Einschalten',
      place: 'first power-up',
      words:
        'Schaltet zuerst ohne die Chips ein, über ein auf 50 mA begrenztes Netzteil oder mit einem Messgerät in der Leitung. Mehr als 35 mA, oder etwas wird warm: Strom weg, dann nachsehen.',
      source: 'gängige Praxis',
    },
    {
      hazard: 'Kupfersplitter',
      place: 'cutting',
      words:
        'Beim Trennen der Streifen fliegen feine Kupfersplitter: Schützt die Augen, bürstet den Staub ab, statt zu blasen, wascht die Hände.',
      source: 'gängige Praxis',
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
