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
  'order in the eu: cadmium': {
    hazard: 'Cadmium',
    words:
      'In der Europäischen Union dürfen Lichtzellen mit Cadmium in neuen Geräten nicht mehr verkauft werden: Die Ausnahme endete am 31. Dezember 2013. Fragt nach, bevor ihr Bausätze verkauft oder verschenkt; üblich ist stattdessen ein Fototransistor mit einem eigenen Teiler.',
  },
  'order in the uk: cadmium': {
    hazard: 'Cadmium',
    words:
      'Im Vereinigten Königreich gilt dieselbe Grenze für Cadmium wie in der Europäischen Union: Fragt nach, bevor ihr Bausätze mit diesen Lichtzellen verkauft oder verschenkt.',
  },
  'order elsewhere: cadmium': {
    hazard: 'Cadmium',
    words:
      'Diese Lichtzellen enthalten Cadmium. Die Regeln sind von Land zu Land verschieden: Fragt nach, bevor ihr Bausätze verkauft oder über eine Grenze tragt.',
  },
  'battery transport: batteries': {
    hazard: 'Batterien',
    words:
      'Tragt Batterien in ihrer Packung oder mit abgedeckten Kontakten, 9-V-Blöcke einzeln; nie lose in einer Tasche mit Clips oder Draht. Paketdienste haben eigene Regeln für Batterien: Fragt nach.',
  },
  'first power-up: first power-up': {
    hazard: 'Erstes Einschalten',
    words:
      'Schaltet zuerst ohne die Chips ein, über ein auf 50 mA begrenztes Netzteil oder mit einem Messgerät in der Leitung. Mehr als 35 mA, oder etwas wird warm: Strom weg, dann nachsehen.',
  },
  'building: soldering': {
    hazard: 'Löten',
    words:
      'Kolophoniumrauch ist eine häufige Ursache von Berufsasthma: Saugt ihn ab, haltet den Kopf aus der Fahne, schützt die Augen beim Abkneifen, wascht die Hände.',
  },
};
