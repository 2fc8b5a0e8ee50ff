/** Every sentence of the page in German; the same shape as the English list. */
import { formatFixed, formatNumber, formatQuantity, formatShare, formatSigned } from '../quantity/format.ts';
import type { Limits, QuantityKind, ReadProblem } from '../quantity/parse.ts';
import { germanBoard } from './de-board.ts';
import { englishNote, germanNote } from './de-notes.ts';
import { dielectricNames } from './de-pitch.ts';
import type { words } from './en.ts';
import { excerpt } from './excerpt.ts';
import type { Translated } from './spoken.ts';

const UNIT: Readonly<Record<QuantityKind, string>> = {
  resistance: 'Ω',
  capacitance: 'F',
  voltage: 'V',
  illuminance: 'lx',
  length: 'm',
  share: '%',
  number: '',
};

const NOT_A: Readonly<Record<QuantityKind, string>> = {
  resistance: 'kein Widerstand',
  capacitance: 'keine Kapazität',
  voltage: 'keine Spannung',
  illuminance: 'keine Beleuchtungsstärke',
  length: 'keine Länge',
  share: 'kein Anteil',
  number: 'keine Zahl',
};

const NO_UNIT_OF: Readonly<Record<QuantityKind, string>> = {
  resistance: 'keine Einheit des Widerstands',
  capacitance: 'keine Einheit der Kapazität',
  voltage: 'keine Einheit der Spannung',
  illuminance: 'keine Einheit der Beleuchtungsstärke',
  length: 'keine Einheit der Länge',
  share: 'keine Einheit eines Anteils',
  number: 'keine Einheit einer Zahl',
};

const ACCEPTED: Readonly<Record<QuantityKind, string>> = {
  resistance: '4k7, 4,7k, 4,7 kΩ oder 4700',
  capacitance: '100n, 0µ1, 100 nF oder der Aufdruck 104',
  voltage: '1,54 V, 1V54 oder 1540 mV',
  illuminance: '300, 300 lx oder 1,2 klx',
  length: '0,6 m oder 60 cm',
  share: '47 %',
  number: '0,7',
};

const amount = (value: number, quantity: QuantityKind): string => {
  if (quantity === 'share') return formatShare(value, 0);
  if (quantity === 'number') return formatNumber(value, 4);
  if (quantity === 'illuminance') return lux(value);
  return formatQuantity(value, UNIT[quantity]);
};

const span = ({ min, max }: Limits, quantity: QuantityKind): string =>
  `${amount(min, quantity)} bis ${amount(max, quantity)}`;

const luxNumber = (value: number): string => formatNumber(value, value < 10 ? 2 : 3);
const lux = (value: number): string => `${luxNumber(value)}\u00A0lx`;
const volts = (value: number): string => formatFixed(value, 2, 'V');
const hertz = (value: number): string =>
  value >= 10_000 ? formatQuantity(value, 'Hz', 3) : formatFixed(value, value < 100 ? 2 : 1, 'Hz');
const minus = (text: string): string => text.replace('-', '−');

export const germanPage: Translated<typeof words> = {
  product: 'Lampnote',
  oneFile: 'Die Seite als eine Datei sichern',
  lux,
  luxNumber,
  volts,
  hertz,

  notes: { shown: germanNote, typed: englishNote },

  places: {
    heading: 'Orte',
    names: {
      listen: 'Hören',
      pitch: 'Tonhöhe',
      room: 'Raum',
      class: 'Klasse',
      kit: 'Bausatz',
      about: 'Über diese Seite',
    },
    title: (place) => `${place} – Lampnote`,
    coming: (place) => `${place} kommt gleich.`,
    missing: (place) =>
      `${place} wurde nicht geladen. Bitte nachsehen, ob die Seite noch ausgeliefert wird; nichts von der Arbeit ist verloren.`,
    again: 'Noch einmal versuchen',
    partMissing:
      'Ein Teil dieser Seite wurde nicht geladen. Bitte nachsehen, ob die Seite noch ausgeliefert wird; nichts von der Arbeit ist verloren.',
    notServed:
      'Noch nicht da: Die Seite wird gerade nicht ausgeliefert, oder das Netz ist weg. Was geladen ist, arbeitet weiter.',
  },
  bar: {
    name: 'Name dieses Entwurfs (bitte keine Namen von Menschen)',
    soundOn: 'Ton an',
    soundOff: 'Ton aus',
    soundStarting: 'Startet … (aus)',
    volume: 'Lautstärke',
    volumeText: (db) => `höchstens ${formatFixed(Math.abs(db), 0)} dB unter Vollaussteuerung`,
    volumeShort: (db) => `${db < 0 ? '−' : ''}${formatFixed(Math.abs(db), 0)} dB`,
    undo: 'Rückgängig',
    redo: 'Wiederholen',
    undoWhat: (label) => (label ? `Rückgängig: ${label}` : 'Nichts rückgängig zu machen'),
    redoWhat: (label) => (label ? `Wiederholen: ${label}` : 'Nichts zu wiederholen'),
    open: 'Öffnen …',
    save: 'Sichern',
    copyLink: 'Link kopieren',
    designs: 'Fertige Entwürfe',
    look: 'Seite',
    looks: { light: 'hell', dark: 'dunkel', projector: 'Projektor' },
    language: 'Sprache',
    languages: { en: 'English', de: 'Deutsch' },
    soundByLink: {
      off: 'Der Link, der diese Seite geöffnet hat, lässt den Ton aus. Die Gates folgen dem Licht trotzdem, in Worten und Bildern.',
      on: 'Der erste Druck irgendwohin schaltet den Ton ein, wie es der Link will.',
    },
    more: 'Mehr',
    moreOf: 'Mehr: Entwurf, Seite, Sprache',
    shortcuts:
      'Umschalt+Escape schaltet den Ton von überall aus. Strg+Z nimmt eine Änderung zurück, Strg+Umschalt+Z bringt sie wieder.',
  },

  labels: {
    opened: (name) => `${name} öffnen`,
    link: 'Link öffnen',
    rename: 'Name',
    turned: (voice) => `Tonhöhe von ${voice}`,
    part: (voice, part) => `${part} von ${voice}`,
    threshold: 'Schwelle',
  },

  strip: {
    heading: 'Jetzt',
    sounding: 'klingt',
    silent: 'schweigt',
    chattering: (perSecond) => `rattert, ${perSecond}-mal in der Sekunde`,
    voice: (note, cents, frequency) =>
      `${germanNote(note)} ${formatSigned(cents)} Cent · ${hertz(frequency)}`,
    duty: (duty) => `Tastverhältnis ${formatShare(duty)}`,
    noPitch: 'keine Tonhöhe: Der Kondensator erreicht seine Pegel nie',
    level: (db) => (db > -90 ? `jetzt bei ${minus(formatFixed(db, 0))} dB` : ''),
    announce: (states) => `A ${states.A}, B ${states.B}.`,
  },

  sound: {
    off: 'Der Ton ist aus: Was A und B tun, ist hier zu lesen, nicht zu hören.',
    faded:
      'Nach 20 Sekunden ohne Änderung ausgeblendet. Etwas bewegen oder eine Taste drücken bringt den Ton zurück.',
    hint: 'Nichts zu hören? Lautstärke hier und am Computer prüfen, Lautsprecher oder Kabel, und am Telefon den Stummschalter.',
    exhibition: 'Gleichbleibende Töne weiterklingen lassen (Ausstellung)',
    trouble: {
      unsupported:
        'Dieser Browser kann den Ton nicht erzeugen: Ihm fehlt das Audio-Worklet. Ein aktueller Firefox, Chrome, Edge oder Safari hat es.',
      insecure:
        'An dieser Adresse erlaubt der Browser weder Ton noch Kamera noch Mikrofon: Sie ist nicht sicher (https oder localhost). Alles andere geht; die Seite als eine Datei, von der Platte geöffnet, klingt.',
      'no device':
        'Der Browser hat kein Tongerät geöffnet. Nachsehen, ob Lautsprecher oder Kopfhörer angeschlossen sind und kein anderes Programm sie belegt, dann noch einmal „Ton an“ drücken.',
      module:
        'Das Tonmodul wurde nicht geladen. Nachsehen, ob die Seite noch ausgeliefert wird, dann noch einmal versuchen.',
      processor:
        'Der Ton hielt wegen eines Fehlers im Tonmodul an. Eine Taste drücken oder irgendwohin klicken startet ihn neu.',
      suspended:
        'Der Browser hält den Ton zurück. Eine Taste drücken oder irgendwohin klicken lässt ihn weitergehen.',
      interrupted:
        'Etwas anderes hat den Ton übernommen (ein Anruf, eine Bildschirmsperre). Irgendwohin klicken holt ihn zurück.',
      closed: 'Der Browser hat den Ton beendet. Eine Taste drücken oder irgendwohin klicken startet ihn neu.',
      stalled:
        'Das Tongerät steht still. Nachsehen, ob es eingesteckt ist, dann eine Taste drücken oder irgendwohin klicken.',
    },
  },

  notice: {
    opened: (name) => `„${name}“ ist geöffnet. Rückgängig bringt den letzten Entwurf zurück.`,
    noWords: (language) =>
      `Die Worte für ${language} wurden nicht geladen. Nachsehen, ob die Seite noch ausgeliefert wird, dann noch einmal versuchen.`,
    refused: (name) => `„${name}“ wurde nicht geöffnet; der eigene Entwurf ist, wie er war.`,
    unread: (name) =>
      `„${name}“ wurde nicht geöffnet: Der Browser konnte es nicht lesen. Vielleicht ist es ein Ordner oder liegt auf einem Laufwerk, das fort ist. Angenommen wird eine einzelne Datei, die noch zu erreichen ist.`,
    refusedLog: (name) =>
      `„${name}“ wurde als Lichtaufzeichnung gelesen, da es kein Entwurf (JSON) ist, und nicht geöffnet; das Licht ist, wie es war.`,
    logInLesson: (name) =>
      `„${name}“ wurde nicht geöffnet: In einer Lektion gilt deren Licht. Die Lektion verlassen, dann die Lichtaufzeichnung öffnen.`,
    leftLesson: 'Die Lektion wurde dafür verlassen; wieder begonnen, geht sie weiter, wo sie war.',
    linkCopied: 'Der Link ist kopiert. Er enthält den ganzen Entwurf; nichts liegt anderswo.',
    linkShown: 'Dieser Browser lässt die Seite nicht kopieren. Hier ist der Link; bitte ganz kopieren:',
    dismiss: 'Diesen Hinweis schließen',
    tooLarge: (most) => `Die Datei hat mehr als ${formatQuantity(most, 'B', 3)}; mehr hat kein Entwurf.`,
    notJson:
      'Die Datei ist kein JSON-Text oder abgeschnitten. Angenommen wird ein von Lampnote gesicherter Entwurf.',
    notDesign: 'Die Datei ist kein Lampnote-Entwurf: Ihr Eintrag „format“ fehlt oder ist ein anderer.',
    later: (version) =>
      `Die Datei stammt von einem späteren Lampnote (Entwurfsversion ${version}). Dort öffnen oder das spätere holen.`,
    at: (path, read, accepts) => `${path}: gelesen ${read}; angenommen wird ${accepts}.`,
    accepts: {
      number: ({ min, max }) => `eine Zahl von ${formatNumber(min, 4)} bis ${formatNumber(max, 4)}`,
      whole: 'eine ganze Zahl, die diese Version kennt',
      wholeWithin: ({ min, max }) =>
        `eine ganze Zahl von ${formatNumber(min, 12)} bis ${formatNumber(max, 12)}`,
      list: (most) => `eine Liste mit höchstens ${most} Einträgen`,
      text: (length) => `Text mit höchstens ${length} Zeichen`,
      date: 'ein Tag von 1900 bis 2099, geschrieben wie 2026-06-21',
      choice: (options) => `eines von ${options.join(', ')}`,
      yesNo: 'true oder false',
      entries: 'eine Gruppe von Einträgen in geschweiften Klammern',
      nothing: 'kein solcher Eintrag',
    },
  },

  field: {
    problem(problem: ReadProblem): string {
      const { read, quantity } = problem;
      const shown = read === '' ? 'nichts' : `„${excerpt(read, 24)}“`;
      switch (problem.kind) {
        case 'unreadable':
          return `Gelesen: ${shown}, das ist ${NOT_A[quantity]}. Angenommen: ${ACCEPTED[quantity]}.`;
        case 'ambiguous comma':
          return `Gelesen: ${shown}. Tausender oder Dezimalen? Ohne Komma schreiben oder mit einem Buchstaben, etwa 1k oder 1.0.`;
        case 'other unit':
          return `Gelesen: ${shown}; ${problem.unit} ist ${NO_UNIT_OF[quantity]}. Angenommen: ${ACCEPTED[quantity]}.`;
        case 'outside':
          return `Gelesen: ${shown} = ${amount(problem.value, quantity)}. Angenommen: ${span(problem.limits, quantity)}.`;
      }
    },
    rotationOrOhms: (read, value, limits) =>
      `Gelesen: „${excerpt(read, 24)}“ = ${amount(value, 'resistance')}. Angenommen: 0 bis 100 % oder ${span(limits, 'resistance')}.`,
    rotationOrVolts: (read, value, limits) =>
      `Gelesen: „${excerpt(read, 24)}“ = ${amount(value, 'voltage')}. Angenommen: 0 bis 100 % oder ${span(limits, 'voltage')}.`,
    none: 'ohne',
    noneHint: '„ohne“ lässt es weg.',
  },

  axis: {
    dark: 'dunkel',
    bright: 'hell',
    unit: 'Lux',
    table: 'Tabelle',
    heads: ['Stelle', 'Lux'],
    marks: {
      moon: 'Vollmond',
      corridor: 'Flur',
      class: 'Klassenraum',
      overcast: 'trüber Tag',
      sun: 'helle Sonne',
    },
    needle: (voice, value) => `${voice} ${lux(value)}`,
    trip: (voices, off, on, shade) => {
      const both = voices === 'both';
      const who = both ? 'A und B' : voices;
      const ends = both ? 'en' : 't';
      if (off === null && on === null) return `${who}: Kein Licht ändert etwas`;
      const stop =
        off === null ? `verstumm${ends} nie` : `verstumm${ends} ${shade ? 'über' : 'unter'} ${lux(off)}`;
      const start =
        on === null
          ? `${both ? 'setzen' : 'setzt'} nie ein`
          : `${both ? 'setzen' : 'setzt'} ${shade ? 'unter' : 'über'} ${lux(on)} ein`;
      return `${who} ${stop}, ${start}`;
    },
    summary: (light, trips) =>
      `Licht jetzt: ${lux(light.A)} an Sensor A, ${lux(light.B)} an Sensor B. ${trips.join('. ')}.`,
  },

  why: {
    heading: 'Warum',
    what: 'Ein Instrument mit zwei Stimmen, A und B. Jede ist eine Rechteckwelle, und das Licht auf ihrem eigenen Sensor schaltet sie.',
    begin: '„Ton an“ drücken. Dann eine Hand über einen Sensor bringen oder einen Tonhöhen-Trimmer drehen.',
    both: 'Beide Sensoren haben das Licht, das ihre Stimmen brauchen. Einen beschatten und sehen, wie sein Knoten die Referenz kreuzt.',
    silent: (voice, light, rises) =>
      `${voice} schweigt. Ihr Licht ist ${lux(light)}, also ist ihr Knoten ${rises ? 'über' : 'unter'} die Referenz ${rises ? 'gestiegen' : 'gefallen'}, und der Komparator hält den Timer im Reset.`,
    back: (voice, on, shade) => `${voice} setzt ${shade ? 'unter' : 'über'} ${lux(on)} wieder ein.`,
    catching: (voice, light) =>
      `${voice} schweigt noch, obwohl ihr Licht wieder ${lux(light)} ist: Ihre Zelle braucht einen Augenblick, um zu folgen.`,
    hysteresis: (off, on) =>
      `Der Abstand zwischen ${formatNumber(Math.min(off, on), 3)} und ${lux(Math.max(off, on))} ist die Hysterese.`,
    noHysteresis: 'Es gibt keine Hysterese: Nahe ihrem Kipppunkt wird die Stimme stottern.',
    chatter: (voice) =>
      `${voice} rattert: Ihr Licht steht am Kipppunkt, wo kleine Änderungen (die Welligkeit einer Lampe, das Rauschen des Knotens) sie schalten. Mehr Hysterese oder ein klarerer Schatten beendet das.`,
    neverReleases: (voice) =>
      `${voice} kann nie klingen: Ihr Pull-up lässt den Reset-Stift zu tief. Ein kleinerer Pull-up behebt das.`,
    neverSilences: (voice) =>
      `${voice} kann nie zum Schweigen gebracht werden: Ihr Pull-up ist so klein, dass der Komparator den Reset-Stift nicht hinunterzieht. Ein größerer Pull-up behebt das.`,
    bothAbove: (voice) =>
      `Beide Komparatoreingänge von ${voice} liegen über seinem Bereich, also verspricht kein Hersteller, was er tut. Die Referenz senken oder die Zelle auf die andere Seite des Teilers setzen.`,
    first: (ratio) =>
      `Nach einer Stille dauert der erste Schwung ${formatFixed(ratio, 2)}-mal so lang: Der Kondensator beginnt nahe 0 V.`,
  },

  warnings: {
    heading: 'Zu beachten',
    count: (pressing, notes) =>
      `${pressing === 0 ? 'nichts Dringendes' : `${pressing} ${pressing === 1 ? 'Sache' : 'Sachen'}`}, ${notes} ${notes === 1 ? 'Hinweis' : 'Hinweise'}`,
    notes: 'Hinweise',
    severities: { danger: 'Gefahr', wrong: 'Falsch', caution: 'Vorsicht', note: 'Hinweis' },
  },

  caution: { heading: 'Vorsicht', more: 'Vorsichtshinweise', source: (source) => `Quelle: ${source}.` },

  light: {
    heading: 'Licht',
    sources: { stage: 'Bühne', scene: 'Szene', log: 'Aufzeichnung', camera: 'Kamera' },
    stageLegend: 'Woher das Licht kommt',
    figure: 'Der Tisch von vorn. Die Hände antippen oder ziehen, oder die Schieber nehmen.',
    stageKeys:
      'Mit der Zeichnung im Fokus: A und B bringen eine Hand darüber oder nehmen sie weg, Pfeile bewegen die zuletzt benutzte Hand (Umschalt: fein), L schaltet die Lampe, Escape hebt beide.',
    stageName: 'Tisch mit Lampe und Händen',
    lampSwitch: 'Lampe an',
    lamp: 'Lampe',
    lampHeight: 'Lampenhöhe',
    room: 'Raumlicht',
    handHeight: 'Handhöhe',
    hand: (voice) => `Hand über ${voice}`,
    stays: 'Hände bleiben, wo sie sind',
    staysHint: 'Aus: Eine mit Zeiger oder Finger gezogene Hand kehrt zurück, wenn man sie loslässt.',
    metres: (value) => formatFixed(value, 2, 'm'),
    centimetres: (value) => formatFixed(value * 100, 0, 'cm'),
    cover: (value) => formatShare(value),
    coverText: (voice, value, light) =>
      `${value === 0 ? 'weg' : `${formatShare(value)} über ${voice}`}, ${lux(light)} am Sensor`,
    lampText: (value) => `${lux(value)} von der Lampe an den Sensoren`,
    lampPlace: (metres) => `Lampe, ${formatFixed(metres, 2, 'm')} hoch`,
    handPlace: (metres) => `Hand, ${formatFixed(metres * 100, 0, 'cm')} hoch`,
    spacing: (metres) => `Sensoren ${formatFixed(metres * 100, 0, 'cm')} entfernt`,
    describe: (lamp, light, cover) => {
      const hands = (['A', 'B'] as const)
        .filter((voice) => cover[voice] > 0)
        .map((voice) => `eine Hand ${formatShare(cover[voice])} über Sensor ${voice}`);
      return `Lampe ${lamp > 0 ? `gibt ${lux(lamp)}` : 'aus'}; ${hands.length ? hands.join(' und ') : 'keine Hand über den Sensoren'}. A: ${lux(light.A)}, B: ${lux(light.B)}.`;
    },
  },

  camera: {
    purpose:
      'Zwei Felder des Bildes stehen für die zwei Sensoren. Die Kamera abdecken oder eine Hand durch ein Feld bewegen, und die Stimmen folgen.',
    open: 'Kamera einschalten',
    stop: 'Kamera ausschalten',
    on: 'Kamera an',
    asking: 'Wartet auf die Antwort auf die Frage des Browsers nach der Kamera …',
    settling: 'Kamera an. Wartet, bis die Belichtung zur Ruhe kommt; die Felder bitte unbedeckt lassen …',
    litLevel: 'helles Licht',
    litHint: 'Das Bild beim Einschalten zählt als dieses Licht.',
    again: 'Neu aufnehmen',
    typed: (voice) => `Licht an ${voice}`,
    assumed: (value) => `angenommen: Das Bild beim Einschalten ist ${lux(value)}`,
    calibrated: 'auf den eingegebenen Wert abgeglichen',
    exactness:
      'Nur Verhältnisse. Mit eingegebenem Wert und gehaltener Belichtung sind ±20 bis 30 % zu erwarten.',
    locks: {
      locked: 'Belichtung und Weißabgleich werden festgehalten.',
      exposureOnly: 'Die Belichtung wird festgehalten; den Weißabgleich hält der Browser nicht.',
      automatic:
        'Dieser Browser oder diese Kamera hält die Belichtung nicht: Nach einer Änderung treiben die Werte zum mittleren Grau. Schnelle Schatten gehen trotzdem.',
      unknown: 'Der Browser sagt nicht, ob die Belichtung gehalten wird; die Werte können davontreiben.',
    },
    rate: (frames, mains, alias) =>
      `${formatFixed(frames, 0)} Bilder in der Sekunde. Lampen an ${mains} Hz Netz flimmern mit ${2 * mains} Hz, und die Kamera macht daraus ${formatFixed(alias, 0)} Hz.`,
    ripple: (depth) =>
      `Das Licht schwankt von Bild zu Bild um etwa ${formatShare(depth, 1)}: Lampe und Bildrate schweben gegeneinander. Tageslicht, eine andere Lampe oder eine andere Bildrate hilft; nahe ihren Kipppunkten können die Stimmen stottern.`,
    drifting:
      'Beide Felder treiben gleich: Die Belichtung der Kamera bewegt sich, nicht das Licht. Neu aufnehmen, wenn das Licht ist, wie es sein soll.',
    turned:
      'Das Bild hat sich gedreht, unter den Feldern liegt anderes, und sein Licht wurde neu genommen. Nachsehen, wo die Felder liegen; ist das Licht, wie es sein soll, „Neu aufnehmen“ drücken.',
    missing: {
      blanked:
        'Die Kamera zeigt nichts: Ein Schalter an ihr oder das System hat das Bild abgeschaltet. Das Licht bleibt, wie es zuletzt gesehen wurde, und geht weiter, wenn das Bild wieder da ist.',
      still:
        'Seit einigen Sekunden kam kein Bild. Das Licht bleibt, wie es zuletzt gesehen wurde, und geht mit dem nächsten Bild weiter. Kommt keines, nachsehen, ob ein anderes Programm die Kamera hat, dann hier aus- und wieder einschalten.',
    },
    restless: 'Die Belichtung kam nie zur Ruhe; das Bild wurde genommen, wie es war.',
    dark: (voice) =>
      `Das Feld für ${voice} ist zu dunkel als Maßstab. Die Kamera aufdecken oder das Feld beleuchten, dann neu aufnehmen.`,
    clipped: (voice) =>
      `Das Feld für ${voice} ist an der Grenze der Kamera: Mehr Licht als dieses ist nicht zu unterscheiden.`,
    calibrate: 'An einem Messgerät abgleichen',
    calibrateHint: 'Lux am Feld jetzt, nach dem Messgerät oder der Lux-App.',
    refused: {
      denied:
        'Die Kamera wurde nicht erlaubt. In der Adresszeile erlauben, dann den Knopf noch einmal drücken; die Bühne geht auch ohne.',
      absent: 'Keine Kamera gefunden. Eine einstecken, dann den Knopf noch einmal drücken.',
      busy: 'Ein anderes Programm oder ein anderer Tab hat die Kamera. Dort schließen, dann den Knopf noch einmal drücken.',
      unsupported: 'Dieser Browser gibt Seiten keine Kamera. Die Bühne geht auch ohne.',
      insecure:
        'Der Browser gibt eine Kamera nur an einer sicheren Adresse: https oder localhost. Die Bühne geht auch ohne.',
      failed: 'Die Kamera ist nicht angelaufen. Aus- und wieder einstecken, oder die Bühne nehmen.',
    },
    ended: {
      unplugged: 'Die Kamera wurde ausgesteckt. Das Licht bleibt, wie es zuletzt gesehen wurde.',
      withdrawn: 'Der Browser hat die Kamera zurückgenommen. Das Licht bleibt, wie es zuletzt gesehen wurde.',
    },
    region: (voice) => `Feld für Sensor ${voice}`,
    regionPlace: (x, y) => `${formatShare(x)} von links, ${formatShare(y)} von oben`,
    regionKeys:
      'Ein Feld ziehen, oder es fokussieren und die Pfeiltasten nehmen (Umschalt: fein; mit Strg: seine Größe). Ein verschobenes Feld nimmt sein Bild neu als helles Licht.',
    picture: 'Kamerabild mit zwei Feldern',
  },

  threshold: {
    heading: 'Schwelle',
    figure: 'Spannung der Knoten gegen die Referenz (Schleifer unbelastet)',
    summary: (node, reference) =>
      `Knoten A ${volts(node.A)} gegen ${volts(reference.A)}; Knoten B ${volts(node.B)} gegen ${volts(reference.B)}.`,
    node: (voice, value) => `${voice} ${volts(value)}`,
    reference: (voices, value) => `${voices === 'both' ? 'Referenz' : `Ref ${voices}`} ${volts(value)}`,
    brighter: (sounds) => (sounds === null ? 'heller ↓' : sounds ? 'heller, klingt ↓' : 'heller, schweigt ↓'),
    darker: (sounds) =>
      sounds === null ? 'dunkler ↑' : sounds ? 'dunkler, klingt ↑' : 'dunkler, schweigt ↑',
    brighterUp: (sounds) =>
      sounds === null ? 'heller ↑' : sounds ? 'heller, klingt ↑' : 'heller, schweigt ↑',
    darkerDown: (sounds) =>
      sounds === null ? 'dunkler ↓' : sounds ? 'dunkler, klingt ↓' : 'dunkler, schweigt ↓',
    shared: 'Schwellen-Trimmpoti, beide Stimmen',
    own: (voice) => `Schwellen-Trimmpoti ${voice}`,
    arrangement: 'Trimmpotis',
    arrangements: { shared: 'eines für beide', each: 'je eines' },
    turned: (rotation) => `gedreht ${formatShare(rotation, 1)}`,
    more: 'Teile um das Trimmpoti',
    sharedNote:
      'Die Kipppunkte gelten, wenn beide Stimmen dasselbe tun. Über den einen Schleifer verschiebt die Hysterese jeder Stimme die Punkte der anderen ein wenig.',
    justOn: 'Drehen, bis sie gerade klingen',
    justOnHint:
      'Den Sensoren das Licht geben, in dem die Stimmen klingen sollen, dann drücken: Die Schwelle dreht sich, bis stumme Stimmen gerade einsetzen.',
    justOnStep: 'Schwelle auf gerade klingend',
    justOnAlways:
      'In diesem Licht klingen die Stimmen bei jeder Einstellung: Der Weg des Trimmpotis endet zu früh. Weniger Licht oder ein anderer Widerstand neben dem Trimmpoti hilft.',
    justOnNever:
      'In diesem Licht lässt keine Einstellung die Stimmen klingen: Mehr Licht oder ein anderer Widerstand neben dem Trimmpoti hilft.',
    justOnDone:
      'Gedreht: In diesem Licht setzen stumme Stimmen gerade ein. Wie weit es sich ändern muss, bis sie schweigen, ist die Hysterese.',
    above: 'Widerstand darüber',
    trimmerValue: 'Trimmpoti-Wert',
    below: 'Widerstand darunter',
    spoken: (value, rotation) => `${volts(value)}, ${formatShare(rotation)} des Wegs`,
    table: 'Tabelle',
    heads: ['Punkt', 'Volt'],
  },

  voices: {
    heading: 'Stimmen',
    voice: (voice) => `Stimme ${voice}`,
    trimmer: (voice) => `Tonhöhen-Trimmpoti ${voice}`,
    oneLess: (label) => `${label}: ein Prozent weniger`,
    oneMore: (label) => `${label}: ein Prozent mehr`,
    box: (label) => `${label}, genauer Wert`,
    spoken: (ohms, rotation, note, cents) =>
      `${formatQuantity(ohms, 'Ω', 3)}, ${formatShare(rotation)} des Wegs, ${germanNote(note)} ${cents < -0.5 ? 'minus' : 'plus'} ${Math.abs(Math.round(cents))} Cent`,
    readout: (rotation, centsPerPercent) =>
      `gedreht ${formatShare(rotation, 1)}${centsPerPercent === null ? '' : ` · ${formatFixed(Math.abs(centsPerPercent), 0)} Cent je 1 %`}`,
    range: (from, to) =>
      `von Anschlag zu Anschlag: ${hertz(Math.max(from, to))} bis ${hertz(Math.min(from, to))}`,
    formula: 'f ≈ 1 / (ln 2 · (RA + 2 RB) · C), weniger, was die Sättigung des Entladestifts nimmt',
    ra: 'RA',
    rbFixed: 'fester RB',
    trimmerValue: 'Poti',
    capacitor: 'C',
    dielectric: 'Dielektrikum',
    dielectrics: dielectricNames,
    cellFamily: 'Zelle',
    cellFamilies: {
      'cds-8-20k': '5-mm-Zelle, 8–20 kΩ',
      'cds-2-6k': '5-mm-Zelle, 2–6 kΩ',
      'cds-5-10k': '5-mm-Zelle, 5–10 kΩ',
      'cds-16-50k': '5-mm-Zelle, 16–50 kΩ',
      'cds-30-90k': '5-mm-Zelle, 30–90 kΩ',
      'cds-dual-5-15k': 'vergossene Doppelzelle, 5–15 kΩ, träge',
      'cds-2k5-7k5': 'vergossene Zelle, 2,5–7,5 kΩ',
      'cds-50-150k': 'vergossene Zelle, 50–150 kΩ, steil',
      'cds-9k': 'lackierte Zelle, 9 kΩ, träge ins Dunkle',
    },
    rbZero:
      'Ohne festen Teil läuft die Tonhöhe am Anschlag weit über das Hörbare, und das Trimmpoti trägt die Entladung.',
    raSmall: (amperes) =>
      `RA liegt unter 1 kΩ: ${formatQuantity(amperes, 'A', 2)} fließen in den Entladestift, solange der Ausgang tief ist.`,
    more: (voice) => `Mehr zu ${voice}: Arten der Teile, Zelle, Teiler, Komparator`,
    polarity: 'klingt im',
    polarities: { light: 'Licht', shade: 'Schatten' },
    cellSide: 'Zelle',
    cellSides: { top: 'oben', bottom: 'unten' },
    cellOhms: 'Zelle bei 10 lx',
    gamma: 'Steigung γ',
    kept: 'Zelle lag im',
    keptIn: { light: 'Licht', dark: 'Dunkeln' },
    divider: 'fester Widerstand',
    hysteresis: 'Hysterese',
    input: 'Widerstand am Eingang',
    pullUp: 'Pull-up',
    control: 'Steuerstift',
  },

  board: germanBoard,

  first: {
    heading: 'Die ersten Schwingungen',
    figure: 'Kondensator (Linie) und Ausgang (darunter) nach langer Stille.',
    voice: 'Stimme',
    back: 'Schritt zurück',
    next: 'Nächster Schritt',
    none: 'Diese Stimme schwingt nie: Ihr Kondensator erreicht nicht beide Pegel.',
    released:
      'Losgelassen: Der Kondensator steht nahe 0 V, unter einem Drittel der Versorgung, also steigt der Ausgang sofort, und der Kondensator lädt sich über RA und RB.',
    high: (n, milliseconds, ratio) =>
      `Hoch ${n}: ${formatFixed(milliseconds, 3)} ms${n === 1 ? `, ${formatFixed(ratio, 2)}-mal so lang wie später` : ''}. Bei zwei Dritteln fällt der Ausgang, und der Kondensator entlädt sich über RB.`,
    low: (n, milliseconds) =>
      `Tief ${n}: ${formatFixed(milliseconds, 3)} ms. Bei einem Drittel steigt der Ausgang wieder.`,
    step: (n, of) => `Schritt ${n} von ${of}`,
    axis: (milliseconds) => `${formatNumber(milliseconds, 3)} ms`,
    table: 'Tabelle',
    heads: ['Abschnitt', 'dauert', 'Kondensator von', 'bis'],
    highName: (n) => `hoch ${n}`,
    lowName: (n) => `tief ${n}`,
    milliseconds: (seconds) => `${formatFixed(seconds * 1000, 3)} ms`,
  },

  reference: {
    heading: 'Vergleichston',
    note: 'Note',
    sounds: 'Neben den Stimmen klingen lassen',
    beats: (voice, cents, beats) =>
      `${voice} liegt ${formatSigned(cents)} Cent daneben: ${beats < 0.05 ? 'keine Schwebung' : `${formatFixed(beats, beats < 10 ? 1 : 0)} Schwebungen in der Sekunde`}.`,
    far: (voice, cents) => `${voice} liegt ${formatSigned(cents)} Cent daneben.`,
  },

  traces: {
    heading: 'Die letzten vier Sekunden',
    label: 'Knotenspannungen und Gates der letzten vier Sekunden',
    summary:
      'Knotenspannungen von A (durchgezogen) und B (gestrichelt) gegen die Referenz, darunter, wann jede Stimme klang.',
    figure: 'Knotenspannungen (Linien), Kipppunkte (Bänder), Gates (Balken).',
    ago: (seconds) => (Math.abs(seconds) < 0.005 ? 'jetzt' : `−${formatFixed(Math.abs(seconds), 0, 's')}`),
    moment: (ago, node, sounding) =>
      `vor ${formatFixed(Math.abs(ago), 2, 's')}: A ${volts(node.A)}, ${state(sounding.A)}; B ${volts(node.B)}, ${state(sounding.B)}.`,
    row: (ago, node, sounding) => [
      formatFixed(Math.abs(ago), 2, 's'),
      volts(node.A),
      state(sounding.A),
      volts(node.B),
      state(sounding.B),
    ],
    heads: ['vor jetzt', 'Knoten A', 'Stimme A', 'Knoten B', 'Stimme B'],
    hold: 'Anhalten',
    cursor: 'Zeitmarke',
    cursorHint: 'Pfeil links und rechts bewegen sie durch die Zeit.',
    table: 'Tabelle',
  },
};

function state(sounding: boolean): string {
  return sounding ? 'klingt' : 'schweigt';
}
