/** Words of the place Kit in German, at the bench: test slip, fault finder, what if, sound check and twin, kit log. */
import { formatShare } from '../quantity/format.ts';
import { count, kitsText, minutesText } from './de-kit-counts.ts';
import type { kitViewWords } from './en-kit.ts';
import type { Translated } from './spoken.ts';

const LIGHT = {
  lit: 'beide Sensoren im Licht',
  'A shaded': 'Sensor A beschattet',
  'B shaded': 'Sensor B beschattet',
} as const;
const HEARINGS = { sounds: 'klingt', silent: 'schweigt' } as const;

type Bench = Pick<typeof kitViewWords, 'slip' | 'faults' | 'whatif' | 'sound' | 'log'>;

export const kitBench: Translated<Bench> = {
  slip: {
    heading: 'Prüfzettel',
    why: [
      'Was ein Messgerät an genau diesem Entwurf zeigen soll, und wie weit eine gesunde Platine danebenliegen darf.',
      'Schwarze Messspitze an TP0, rote an den Punkt. Tippen, was abgelesen wird: Es wird sofort beurteilt und ins Protokoll dieses Bausatzes geschrieben.',
      'Ist die Schiene eingetippt, gilt alles Weitere für diese Schiene.',
    ],
    kit: 'Bausatznummer',
    lit: 'Licht am freien Sensor',
    shaded: 'am beschatteten Sensor',
    lux: 'lx',
    rail: (volts) => `Gilt für eine Schiene von ${volts}.`,
    hole: (name) => `Loch ${name}`,
    paper: (kit, lit, shaded) =>
      `Bausatz ${kit}. Ein freier Sensor bei ${lit} lx, ein beschatteter bei ${shaded} lx.`,
    black: (hole) => `Schwarze Messspitze an TP0, ${hole}; rote an den Punkt.`,
    caption: 'Messungen dieser Platine',
    heads: ['Wo', 'Soll', 'Gesund zwischen', 'Abgelesen', 'Urteil'],
    reading: (where) => `Messung: ${where}`,
    step: (where) => `Messung an ${where}`,
    unread: (read) =>
      `Gelesen: „${read}“, das ist kein Messwert. Angenommen: 1,54, 1.54 V, 760 mV, 15 mA oder 220 Hz; OL für einen Strom über dem Bereich des Messgeräts.`,
    good: (good, all) => `${good} von ${all} bisher abgelesenen sind gut.`,
    none: 'Noch nichts abgelesen.',
    clear: 'Alle Messungen dieses Bausatzes löschen',
  },

  faults: {
    heading: 'Fehlersuche',
    why: [
      'Eine Platine, die nicht geht: angeben, was zu hören ist, dann messen, wonach gefragt wird.',
      'Jeder Fehler ist für genau diesen Entwurf berechnet. Die nächste Messung ist die, die den kleinsten Zweifel lässt.',
      'Wird etwas warm, oder ist der Strom viel zu hoch: zuerst den Strom trennen.',
    ],
    kit: (kit) => `Bausatz ${kit}`,
    working: 'Jeder Fehler dieses Entwurfs wird berechnet; das dauert einige Sekunden …',
    reworking: 'Wird abgewogen …',
    hear: 'Was ist zu hören?',
    hearHint: 'Drei Lichter, jede Stimme. Was nicht versucht ist, weglassen.',
    heard: (voice, light) => `Stimme ${voice}, ${light}`,
    notTried: 'nicht versucht',
    hearings: HEARINGS,
    pitch: (voice) => `Tonhöhe von ${voice}`,
    sweep: (voice) => `${voice}, während das Licht langsam zunimmt`,
    start: 'Eine Stimme, wenn die andere einsetzt',
    next: 'Als Nächstes messen',
    healthy: (value) => `Eine gesunde Platine zeigt etwa ${value}.`,
    nextHint: (left) => {
      const few = Math.max(1, Math.round(left));
      return `Danach ${few === 1 ? 'bleibt' : 'bleiben'} etwa ${count(few, 'möglicher Fehler', 'mögliche Fehler')}.`;
    },
    noNext:
      'Keine weitere Messung würde diese unterscheiden: den ersten Fehler beheben, dann die Probe machen.',
    oneLeft: 'Einer bleibt: beheben, dann bestätigen.',
    sayFirst: 'Zuerst sagen, was zu hören ist, oder messen: Die Rangfolge kommt mit der ersten Antwort.',
    others: 'Die übrigen, jetzt kaum wahrscheinlich',
    where: (point) => `Rote Messspitze an ${point}, schwarze an TP0.`,
    current:
      'Ein Messgerät in der Versorgungsleitung, im größten mA-Bereich. Zeigt es OL oder die Grenze des Netzteils, das tippen.',
    inHole: (name, hole) => `${name} in Loch ${hole}`,
    plus: (voice) => `Komparator, +-Eingang ${voice}`,
    light: LIGHT,
    reading: 'Abgelesen',
    taken: 'Bisherige Messungen',
    takeAway: (what) => `Wegnehmen: ${what}`,
    other: 'Andere Platine: von vorn',
    ranking: 'Wahrscheinlichste Fehler',
    left: (left, all) =>
      left < 1.5
        ? 'Ein möglicher Fehler ist übrig.'
        : `Etwa ${Math.round(left)} von ${all} möglichen Fehlern sind übrig.`,
    sure: (share) => `Wahrscheinlichkeit: ${share}`,
    place: 'Wo',
    partIn: (name, holes) => `${name} (${holes})`,
    cutAt: (hole) => `Trennstelle ${hole}`,
    linkAt: (name, from, to) => `Drahtbrücke ${name} von ${from} bis ${to}`,
    mend: 'Beheben',
    confirm: 'Probe',
    log: (kit) => `Ins Protokoll von Bausatz ${kit} schreiben`,
    logged: (kit) => `Steht im Protokoll von Bausatz ${kit}.`,
    step: (kit) => `Fehler von Bausatz ${kit}`,
    contradicts: 'Vom ersten nicht erklärt:',
    pictureLabel: 'Wo die Messspitze hingehört',
  },

  whatif: {
    heading: 'Was wäre, wenn etwas schiefgeht?',
    why: [
      'Einen Fehler auf dem Plan wählen, bevor ihn jemand macht: eine vergessene Trennstelle oder Drahtbrücke, eine Lötbrücke, eine kalte Lötstelle.',
      'Die Schaltung wird mit diesem Fehler berechnet. Die Schwellen stehen wie für das Licht am Arbeitsplatz.',
    ],
    mistake: 'Fehler',
    mistakes: {
      cut: 'Trennstelle vergessen',
      link: 'Drahtbrücke vergessen',
      bridge: 'Lötbrücke zwischen Leiterbahnen',
      joint: 'kalte Lötstelle',
    },
    place: 'Wo',
    cut: (hole, one, other) => `${hole}: ${one} verbindet sich mit ${other}`,
    link: (name, from, to, net) => `${name}, ${from} bis ${to}: ${net}`,
    bridge: (above, below, one, other) => `${above} zu ${below}: ${one} verbindet sich mit ${other}`,
    working: 'Die Schaltung wird mit diesem Fehler berechnet …',
    heard: 'Was zu hören ist',
    voice: (voice, light, hears) => `${voice}, ${light}: ${hears}`,
    hears: HEARINGS,
    pitchSame: (voice) => `${voice} behält ihre Tonhöhe.`,
    pitch: (voice, hertz, cents) => `${voice} klingt mit ${hertz}, ${cents} Cent neben ihrer Tonhöhe.`,
    notComputed:
      'Nicht berechnet: Die Schaltung mit diesem Fehler kommt in manchem Licht zu keinem Ergebnis.',
    measured: 'Was ein Messgerät zeigt',
    measuredHeads: ['Wo', 'Gesund', 'Mit diesem Fehler'],
    same: 'Jede Messung bleibt, wie sie sein soll: Am Messgerät zeigt sich dieser Fehler nicht.',
    none: 'nicht berechnet',
    hear: 'Anhören, beide Sensoren im Licht',
    hearHint: 'Die berechnete Spannung an der Buchse, nie lauter als eingestellt.',
    stop: 'Anhalten',
    nothingToHear: 'Mit beiden Sensoren im Licht klingt nichts, also gibt es nichts anzuhören.',
    hot: (current) => `Die Platine nähme ${current} auf: sofort den Strom trennen.`,
    noPlaces: 'Eine solche Stelle gibt es auf diesem Plan nicht.',
    untold:
      'Diese Lötstelle bewirkt in der berechneten Schaltung nichts: ein Messstift, die Buchse oder ein Bein, das sonst nirgends hinführt.',
  },

  sound: {
    heading: 'Klangprobe und Zwilling',
    why: [
      'Das Mikrofon an den Lautsprecher halten oder einen Line-Eingang nehmen: Die Tonhöhe sagt, wie weit das Trimmpoti zu drehen ist.',
      'Die Tonhöhen an beiden Anschlägen des Trimmpotis und das Licht, in dem die Stimme gerade einsetzt, verraten, woraus diese Platine wirklich besteht. Dann kann die Seite genau diese Platine spielen.',
    ],
    voice: 'Stimme',
    microphone:
      'Das Mikrofon ist nur offen, während ein Knopf zuhört, etwa eine Sekunde lang. Nichts wird behalten oder gesendet. Eine Aufnahme lässt sich auch neben ihrem Feld ablegen.',
    listen: (what) => `Zuhören: ${what}`,
    listenShort: 'Zuhören',
    fileShort: 'Aus Aufnahme …',
    file: (what) => `Aus Aufnahme … ${what}`,
    listening: 'Hört zu … das Mikrofon ist an.',
    points: {
      now: 'Tonhöhe, wie sie steht',
      low: 'Tonhöhe am Rechtsanschlag',
      high: 'Tonhöhe am Linksanschlag',
    },
    refused: {
      denied:
        'Das Mikrofon wurde nicht erlaubt. In der Adresszeile des Browsers erlauben, oder eine Aufnahme nehmen.',
      absent: 'Es gibt kein Mikrofon. Eines einstecken, oder eine Aufnahme nehmen.',
      insecure:
        'Ein Mikrofon gibt es nur an einer sicheren Adresse (https oder localhost). Eine Aufnahme geht auch so.',
      busy: 'Ein anderes Programm oder ein anderer Tab hält das Mikrofon. Dort schließen und noch einmal zuhören, oder eine Aufnahme nehmen.',
      unplugged:
        'Das Mikrofon wurde beim Zuhören ausgesteckt. Einstecken und noch einmal zuhören, oder eine Aufnahme nehmen.',
      failed: 'Das Mikrofon ging nicht an. Aus- und wieder einstecken, oder eine Aufnahme nehmen.',
    },
    tooLong: 'Diese Aufnahme ist zu lang. Wenige Sekunden genügen: kürzen oder neu aufnehmen.',
    unreadable:
      'Diese Datei ist kein Klang, den der Browser lesen kann. Eine Aufnahme als WAV, MP3 oder Ogg geht.',
    target: (hertz, cents) => `${cents} Cent neben dem Ziel von ${hertz}.`,
    capacitor: (farads, percent) => `Ein Kondensator von ${farads} erklärt das, ${percent} seines Nennwerts.`,
    check: 'Gegen das Ziel',
    twin: 'Die eigenen Teile dieser Platine',
    partHeads: ['Teil', 'Im Entwurf', 'Auf dieser Platine', 'Genau auf'],
    parts: {
      farads: 'Zeitkondensator',
      trimmer: 'Tonhöhen-Trimmpoti',
      r10: 'Fotowiderstand bei 10 lx',
    },
    justOn: 'Licht, in dem sie gerade einsetzt',
    reference: 'Referenz (TP3) dabei',
    needs:
      'Die Tonhöhen an beiden Anschlägen des Trimmpotis eingeben, oder das Licht und die Referenz, und die Teile dieser Platine folgen.',
    impossible: {
      'ends exchanged': 'Am Rechtsanschlag muss die tiefere Tonhöhe liegen: die beiden tauschen.',
      'range too small':
        'Die beiden Tonhöhen liegen für dieses Trimmpoti zu nahe beieinander: War es an beiden Anschlägen?',
      'range too large':
        'Die beiden Tonhöhen liegen für dieses Trimmpoti zu weit auseinander: Hat die andere Stimme geschwiegen?',
      'no light': 'Das Licht mit mehr als 0 lx eingeben.',
      'reference out of reach':
        'Diese Referenz kann das Schwellen-Trimmpoti nicht geben: noch einmal messen.',
      'never trips': 'Mit dieser Referenz löst kein Licht die Stimme aus: noch einmal messen.',
    },
    become: 'Die Seite zu dieser Platine machen',
    becomeStep: (voice) => `Zwilling einer Platine, Stimme ${voice}`,
    became: 'Rückgängig bringt den Entwurf zurück, wie er war.',
    rings: {
      heading: 'Papierringe für die Trimmpotis',
      how: 'Mit 100 % drucken. Einen Ring an seinen gestrichelten Linien ausschneiden, um sein Trimmpoti legen, das Trimmpoti an den Linksanschlag drehen, und den Ring drehen, bis seine linke Anschlaglinie vor dem Schlitz der Schraube liegt. Einen Ton nach Gehör stimmen, bevor man den anderen traut.',
      howStraight:
        'Ein Trimmpoti mit vielen Umdrehungen hat eine gerade Skala: nach links drehen, bis es klickt, dann die Umdrehungen zählen.',
      cents:
        'Striche teilen jeden Halbton gleichmäßig, in Cent: 1 Strich zwischen zwei Tönen heißt 50, bei 3 sind es je 25, bei 9 je 10, bei 19 je 5.',
      angle: {
        'single-turn': 'Drehweg 240°, nominell, nach dem Datenblatt des Bourns 3362.',
        'multi-turn': 'Drehweg 25 Umdrehungen, nominell, nach dem Datenblatt des Bourns 3296.',
        carbon:
          'Drehweg 220° ± 20° innerhalb von 235° ± 5° von Anschlag zu Anschlag, nach dem Datenblatt des Piher PT-10.',
      },
      stop: 'Anschlag',
      pitch: (voice, ref) => `Tonhöhe ${voice}, ${ref}.`,
      threshold: (voice, ref) =>
        `Schwelle${voice === null ? ' beider Stimmen' : ` ${voice}`}, ${ref}, in Volt.`,
      pitchNow: (note) => `Die Marke: ${note}.`,
      thresholdNow: (volts, starts) => `Die Marke: ${volts}; ${starts}.`,
      starts: (voice, lux) =>
        lux === null ? `kein Licht lässt ${voice} einsetzen` : `${voice} setzt bei ${lux} ein`,
      print: 'Mit den Ringen drucken',
    },
  },

  log: {
    heading: 'Bausatz-Protokoll',
    why: [
      'Was mit jedem Bausatz war, nach der Nummer auf seiner Tüte. Bitte keine Namen von Menschen.',
      'Die nächste Bestellung lernt daraus: Was wirklich verloren ging, verschiebt die Verlustquoten.',
    ],
    kit: 'Bausatznummer',
    fault: 'gefundener Fehler',
    noFault: 'keiner',
    minutes: 'Minuten gebraucht',
    lost: (kind) => `verloren: ${kind}`,
    entry: (kit) => `Bausatz ${kit}`,
    heads: ['Bausatz', 'Gefundener Fehler', 'Minuten', 'Messungen', 'Verloren oder verdorben'],
    table: 'Bisherige Bausätze',
    empty: 'Noch steht nichts darin. Die Nummer eines Bausatzes tippen, und was mit ihm war.',
    readings: (readings) => count(readings, 'Messung', 'Messungen'),
    summary: (kits) => `${kitsText(kits)} im Protokoll.`,
    right: (share) => `${formatShare(share)} brauchten keine Reparatur.`,
    median: (minutes) => `Die Hälfte brauchte bis zu ${minutesText(minutes)}.`,
    commonest: (fault, times) => `Am häufigsten: ${fault} (${kitsText(times)}).`,
    csv: 'Als CSV sichern',
    csvName: (name) => `${name} Bausatz-Protokoll`,
    open: 'CSV-Datei lesen …',
    learn: 'Verlustquoten aus diesem Protokoll übernehmen',
    learned: 'Verlustquoten aus dem Protokoll',
    opened: 'Bausatz-Protokoll gelesen',
    step: (kit, what) => `Bausatz ${kit}: ${what}`,
  },
};
