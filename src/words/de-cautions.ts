/** The cautions in German, by place and hazard. Their sources are the English ones'. */
export const germanLocalRules = 'Die Regeln bei euch und zugelassene Fachleute gehen immer vor.';

export const germanCautions: Readonly<
  Record<string, { readonly hazard: string; readonly words: string } | undefined>
> = {
  'sound: hearing': {
    hazard: 'Gehör',
    words:
      'Fangt leise an: Rechteckwellen klingen lauter, als man misst. Diese Seite kann nicht wissen, wie laut euer Lautsprecher ist. Als Richtwert vertragen Erwachsene 80 dB(A) 40 Stunden in der Woche, Kinder 75; alle 3 dB mehr halbieren die Zeit.',
  },
  'headphones: headphones': {
    hazard: 'Kopfhörer',
    words:
      'Nehmt die Kopfhörer ab, bevor ihr den Ton einschaltet, und setzt sie auf, wenn ihr den Pegel kennt.',
  },
  'light: flashing light': {
    hazard: 'Blitzendes Licht',
    words:
      'Eine winkende Hand unter einer Lampe oder eine geschlitzte Laterne kann blitzen. Haltet echtes Licht unter 3 Blitzen in der Sekunde: Schnelleres Blitzen kann Anfälle auslösen. Auf dieser Seite blitzt nichts schneller, was der Klang auch tut.',
  },
  'light: lamps': {
    hazard: 'Lampen',
    words:
      'Echte Lampen: für eine Klasse kühle mit kleiner Spannung, nichts öffnen, was am Netz hängt, kein Papier nahe einer Flamme, und nie in eine gebündelte LED oder die Sonne schauen.',
  },
  'camera: privacy': {
    hazard: 'Privatsphäre',
    words:
      'Das Bild bleibt auf diesem Gerät: Aus jedem werden zwei Helligkeiten gelesen, nichts wird gespeichert oder gesendet. Fragt die Leute, bevor eine Kamera sie sieht.',
  },
  'timing capacitor: polarity': {
    hazard: 'Polung',
    words:
      'Ein Elektrolytkondensator hat eine Polung: Das kürzere Bein und der Streifen sind minus. Falsch herum kann er lecken, ausgasen oder platzen. Als Zeitglied taugt er auch sonst wenig: Leckstrom und Toleranz verschieben die Tonhöhe.',
  },
  'output: polarity': {
    hazard: 'Polung',
    words:
      'Ein gepolter Koppelkondensator sitzt mit seinem Plusbein zu den Timern hin. Steckt Kopfhörer nie direkt an Timer-Ausgänge: mindestens 1 kΩ in Reihe, besser 4,7 kΩ oder mehr, und ein Lautstärkeregler.',
  },
  'supply: batteries': {
    hazard: 'Batterien',
    words:
      'Ein 9-V-Block, den Schlüssel oder Stahlwolle kurzschließen, kann ein Feuer entfachen: Lasst die Kappe darauf. Mischt keine alten und neuen Zellen, und ladet Alkalizellen nie auf.',
  },
  'cell: cadmium': {
    hazard: 'Cadmium',
    words:
      'Diese Lichtzellen enthalten Cadmium: nicht schleifen, zerbrechen oder verbrennen, und als Elektroschrott abgeben. Der Verkauf von Bausätzen damit ist in manchen Ländern eingeschränkt.',
  },
  'building: soldering': {
    hazard: 'Löten',
    words:
      'Kolophoniumrauch ist eine häufige Ursache von Berufsasthma: Saugt ihn ab, haltet den Kopf aus der Fahne, schützt die Augen beim Abkneifen, wascht die Hände.',
  },
};
