/** Faults of a board in German: what it is, how to mend it, how to confirm it; what the ear is asked; the finder. */
import type { earWords, FaultKind, FaultWords, finderWords } from './faults.ts';
import type { Translated } from './spoken.ts';

const uncut = (chip: string, one: number, other: number): FaultWords => ({
  name: `Leiterbahn unter dem ${chip} zwischen den Stiften ${one} und ${other} nicht getrennt`,
  mend: `Die Leiterbahn zwischen den Stiften ${one} und ${other} trennen; die Rille auskratzen, bis das Messgerät keinen Durchgang mehr zeigt.`,
  confirm: `Ohne Chip: kein Piepton zwischen den Stiften ${one} und ${other}.`,
});

const BOTH_ENDS = 'Einbauen oder beide Enden nachlöten.';
const BANDS = 'Die Farbringe lesen; das richtige Teil einbauen.';
const TO_MEASURE = 'Ohne Strom: nachmessen.';
const TURN = 'Drehen, bis die Stimme im gewünschten Licht gerade schaltet.';
const MOVES = 'TP3 bewegt sich mit der Schraube.';
const BLADE = 'Zwischen den beiden Leiterbahnen mit einer Klinge durchziehen.';
const NO_BEEP = 'Ohne Strom: kein Piepton zwischen den beiden Stiften.';
const REVERSED = 'Strom weg. Umdrehen, Kerbe zur Marke; er kann zerstört sein, also einen anderen versuchen.';
const COOL = 'Versorgungsstrom wie auf dem Prüfzettel, Chip kühl.';

export const germanFaults: Readonly<Record<FaultKind, FaultWords>> = {
  'battery flat': {
    name: 'Batterie leer',
    mend: 'Eine frische Alkalibatterie einsetzen.',
    confirm: 'TP1 zeigt etwa {rail}, während beide Stimmen klingen.',
  },
  'no supply': {
    name: 'Keine Versorgung: Clip, Leitung oder Polung',
    mend: 'Nach dem Clip, seinen Lötstellen und Rot an Plus sehen; die Lötstelle neu machen.',
    confirm: 'TP1 zeigt die Volt der Batterie.',
  },
  'timer unpowered': {
    name: 'Timer ohne Versorgung: Stift 14 oder 7',
    mend: 'Die Stifte 14 und 7 nachlöten und nach einer fehlenden Drahtbrücke sehen.',
    confirm: 'An den Steuerstiften stehen zwei Drittel der Schiene.',
  },
  'comparator pin 8 open': {
    name: 'Komparator ohne Versorgung: Stift 8',
    mend: 'Stift 8 nachlöten und nach seiner Drahtbrücke sehen.',
    confirm: 'Stift 8 zeigt die Schiene.',
  },
  'comparator pin 4 open': {
    name: 'Komparator ohne Masse: Stift 4',
    mend: 'Stift 4 nachlöten und nach seiner Drahtbrücke sehen.',
    confirm: 'Stift 4 zeigt 0 V, nicht mehr.',
  },
  'cell open': {
    name: 'Fotowiderstand unterbrochen oder eine Leitung ab',
    mend: 'Seine Lötstellen und seine Leitung neu machen.',
    confirm: 'Ohne Strom: Er zeigt Kiloohm, die im Licht sinken.',
  },
  'cell shorted': {
    name: 'Fotowiderstand kurzgeschlossen',
    mend: 'Seine Beine trennen; Isolierschlauch darüber.',
    confirm: 'Ohne Strom, eine Leitung abgelötet: Er zeigt Kiloohm, die im Licht sinken.',
  },
  'cells exchanged': {
    name: 'Die beiden Fotowiderstände sind vertauscht',
    mend: 'Ihre Leitungen an der Platine vertauschen.',
    confirm: 'A beschatten: Nur A ändert sich.',
  },
  'cell of another grade': {
    name: 'Fotowiderstand einer anderen Sorte',
    mend: 'Die Schwelle drehen oder die Sorte der Bestellliste einbauen.',
    confirm: 'Ohne Strom, bei 10 lx: Er liegt in seiner Sorte.',
  },
  'divider open': {
    name: 'Teilerwiderstand mit kalter Lötstelle, oder er fehlt',
    mend: 'Beide Enden nachlöten.',
    confirm: 'Der Knoten bewegt sich, wenn der Sensor beschattet wird.',
  },
  'divider a tenth': {
    name: 'Teilerwiderstand mit einem Zehntel seines Werts',
    mend: BANDS,
    confirm: TO_MEASURE,
  },
  'divider ten times': {
    name: 'Teilerwiderstand mit dem Zehnfachen seines Werts',
    mend: BANDS,
    confirm: TO_MEASURE,
  },
  'threshold at one end': {
    name: 'Schwellen-Trimmpoti am oberen Anschlag',
    mend: TURN,
    confirm: MOVES,
  },
  'threshold at the other end': {
    name: 'Schwellen-Trimmpoti am unteren Anschlag',
    mend: TURN,
    confirm: MOVES,
  },
  'wiper open': {
    name: 'Schleifer des Schwellen-Trimmpotis nicht verbunden',
    mend: 'Das mittlere Bein nachlöten; nachsehen, welches Bein welches ist.',
    confirm: MOVES,
  },
  'above threshold open': {
    name: 'Weg von der Schiene zum Schwellen-Trimmpoti unterbrochen',
    mend: 'Den Widerstand darüber und das obere Bein nachlöten.',
    confirm: 'Das obere Bein zeigt mehr als TP3.',
  },
  'below threshold open': {
    name: 'Weg vom Schwellen-Trimmpoti nach 0 V unterbrochen',
    mend: 'Den Widerstand darunter und das untere Bein nachlöten.',
    confirm: 'TP3 sinkt weit unter die Schiene.',
  },
  'polarity crossed': {
    name: 'Knoten und Referenz an den Eingängen des Komparators vertauscht',
    mend: 'Nachsehen, was zum Plus- und was zum Minus-Eingang führt, und mit dem Plan vergleichen; beides tauschen.',
    confirm: 'Die Stimme klingt in dem Licht, in dem sie soll.',
  },
  'pull-up missing': {
    name: 'Pull-up fehlt oder hat eine kalte Lötstelle',
    mend: BOTH_ENDS,
    confirm: 'TP4 steigt bis nahe an die Schiene.',
  },
  'pull-up a tenth': {
    name: 'Pull-up mit einem Zehntel seines Werts',
    mend: BANDS,
    confirm: 'TP4 sinkt unter 0,3 V, wenn es soll.',
  },
  'pull-up ten times': {
    name: 'Pull-up mit dem Zehnfachen seines Werts',
    mend: BANDS,
    confirm: 'TP4 steigt bis nahe an die Schiene.',
  },
  'reset joint open': {
    name: 'Reset-Stift des Timers nicht verbunden',
    mend: 'Den Stift nachlöten; nach einem verbogenen sehen.',
    confirm: 'Der Ton folgt TP4.',
  },
  'bridge comparator output to input': {
    name: 'Lötbrücke zwischen Ausgang und −-Eingang des Komparators',
    mend: BLADE,
    confirm: NO_BEEP,
  },
  'bridge reset to output': {
    name: 'Lötbrücke zwischen Reset- und Ausgangsstift des Timers',
    mend: BLADE,
    confirm: NO_BEEP,
  },
  'bridge output to trigger': {
    name: 'Lötbrücke zwischen Ausgangs- und Triggerstift des Timers',
    mend: BLADE,
    confirm: NO_BEEP,
  },
  'bridge discharge to threshold': {
    name: 'Lötbrücke zwischen Entlade- und Schwellenstift des Timers',
    mend: BLADE,
    confirm: 'Das Tonhöhen-Trimmpoti ändert wieder die Tonhöhe.',
  },
  'uncut 556 1–14': uncut('Timer', 1, 14),
  'uncut 556 2–13': uncut('Timer', 2, 13),
  'uncut 556 3–12': uncut('Timer', 3, 12),
  'uncut 556 4–11': uncut('Timer', 4, 11),
  'uncut 556 5–10': uncut('Timer', 5, 10),
  'uncut 556 6–9': uncut('Timer', 6, 9),
  'uncut 556 7–8': uncut('Timer', 7, 8),
  'uncut 393 1–8': uncut('Komparator', 1, 8),
  'uncut 393 2–7': uncut('Komparator', 2, 7),
  'uncut 393 3–6': uncut('Komparator', 3, 6),
  'uncut 393 4–5': uncut('Komparator', 4, 5),
  'capacitor open': {
    name: 'Zeitkondensator mit kalter Lötstelle, oder er fehlt',
    mend: BOTH_ENDS,
    confirm: 'Ein Finger am Triggerstift ändert den Klang nicht mehr.',
  },
  'capacitor a tenth': {
    name: 'Zeitkondensator mit einem Zehntel seines Werts',
    mend: 'Den Aufdruck lesen; das richtige Teil einbauen.',
    confirm: 'Die Tonhöhe ist ein Zehntel der vorigen.',
  },
  'capacitor ten times': {
    name: 'Zeitkondensator mit dem Zehnfachen seines Werts',
    mend: 'Den Aufdruck lesen; das richtige Teil einbauen.',
    confirm: 'Die Tonhöhe ist das Zehnfache der vorigen.',
  },
  'charge resistor open': {
    name: 'RA mit kalter Lötstelle, oder er fehlt',
    mend: BOTH_ENDS,
    confirm: 'Der Entladestift steigt zeitweise bis zur Schiene.',
  },
  'rb open': {
    name: 'RB unterbrochen: sein fester Widerstand oder das Tonhöhen-Trimmpoti',
    mend: 'Den Widerstand und die Beine des Trimmpotis nachlöten.',
    confirm: 'Ohne Strom: RB zeigt die Summe.',
  },
  'rb zero': {
    name: 'Kein fester Teil in RB, Trimmpoti am Anschlag',
    mend: 'Den festen Widerstand einbauen; das Trimmpoti aufdrehen.',
    confirm: 'Drehen am Trimmpoti macht den Ton tiefer.',
  },
  'timer reversed': { name: 'Timer verkehrt herum', mend: REVERSED, confirm: COOL },
  'comparator reversed': { name: 'Komparator verkehrt herum', mend: REVERSED, confirm: COOL },
  'mixing resistor open': {
    name: 'Mischwiderstand mit kalter Lötstelle, oder er fehlt',
    mend: BOTH_ENDS,
    confirm: 'Die Stimme ist an der Buchse zu hören.',
  },
  'output open': {
    name: 'Nichts erreicht die Buchse: Koppelkondensator, Buchse oder Kabel',
    mend: 'Ein anderes Kabel versuchen; den Kondensator und die Lötfahnen der Buchse nachlöten.',
    confirm: 'Beide Stimmen sind an der Buchse zu hören.',
  },
  'no decoupling': {
    name: 'Stützkondensatoren fehlen oder sind nicht verbunden',
    mend: 'Neben den Chips einbauen; nachlöten.',
    confirm: 'Die Tonhöhe von A bleibt, wenn B einsetzt.',
  },
  'timer dead': {
    name: 'Eine Hälfte des Timers zerstört',
    mend: 'Zuerst seine Stifte nachlöten, dann einen anderen Timer versuchen.',
    confirm: 'Der Ausgang schwingt.',
  },
  'hysteresis a tenth': {
    name: 'Hysteresewiderstand mit einem Zehntel seines Werts',
    mend: BANDS,
    confirm: 'Eine kleine Änderung des Lichts schaltet die Stimme in beide Richtungen.',
  },
  'hysteresis missing': {
    name: 'Hysteresewiderstand fehlt oder hat eine kalte Lötstelle',
    mend: BOTH_ENDS,
    confirm: 'Kein Stottern, wenn das Licht langsam vorbeigeht.',
  },
  'hum on the lead': {
    name: 'Netzbrumm oder Lampenwelligkeit am Sensor',
    mend: 'Die Leitung kürzen oder verdrillen, von Netzleitungen wegführen oder die Lampe wechseln.',
    confirm: 'Am Schaltpunkt kein Schnarren bei Tageslicht oder Taschenlampe.',
  },
  'link missing': {
    name: 'Drahtbrücke {link} fehlt oder hat ein kaltes Ende',
    mend: BOTH_ENDS,
    confirm: 'Ohne Strom: ein Piepton von Ende zu Ende.',
  },
};

export const germanEar: Translated<typeof earWords> = {
  lights: {
    lit: 'beide Sensoren im Licht',
    'A shaded': 'Sensor A beschattet',
    'B shaded': 'Sensor B beschattet',
  },
  pitch: {
    right: 'stimmt ungefähr',
    lower: 'zu tief',
    higher: 'zu hoch',
    'far lower': 'viel zu tief, ein Rattern',
    'far higher': 'viel zu hoch, ein Pfeifen',
    none: 'nie zu hören',
  },
  sweep: {
    clean: 'schaltet einmal, sauber',
    stutters: 'stottert am Schaltpunkt',
    rough: 'schnarrt am Schaltpunkt, wie Netzbrumm',
    wide: 'braucht zum Einsetzen viel mehr Licht als zum Aufhören',
    none: 'schaltet nie',
  },
  start: {
    steady: 'hält ihre Tonhöhe',
    jumps: 'springt in der Tonhöhe',
  },
};

export const germanFinder: Translated<typeof finderWords> = {
  nothing: {
    name: 'Kein Fehler, der sich zeigt',
    mend: 'Nichts zu reparieren.',
    confirm: 'Mit dem Prüfzettel vergleichen.',
  },
  ofVoice: (fault, voice) => `${fault} (Stimme ${voice})`,
  cutPower:
    'Jetzt den Strom trennen: Die Platine nimmt viel mehr auf, als sie soll. Den Fehler ohne Batterie suchen.',
  contradictory:
    'Diese Messungen passen zu keinem einzelnen Fehler. Die bezeichneten noch einmal messen, oder es sind zwei Fehler.',
  notComputed: 'Nicht berechnet',
};
