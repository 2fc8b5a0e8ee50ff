/** Words for what the place Room answers: the setting, the day's chart, card, meter, sound. In German. */
import { formatFixed, formatNumber, formatShare } from '../quantity/format.ts';
import { ohms, percent, times, volts } from './de-room-amounts.ts';
import { roomBench } from './de-room-bench.ts';
import { clock, hoursText, lux, oClock } from './de-room-words.ts';
import type { answerWords } from './en-room-answer.ts';
import { legible } from './excerpt.ts';
import type { Translated } from './spoken.ts';

const SPACE = '\u00A0';
const STATES = { right: 'richtig', marginal: 'knapp', wrong: 'falsch', unknown: 'nicht bekannt' } as const;
type State = keyof typeof STATES;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** `9:00 bis 16:30 Uhr`. */
const hours = (from: number, to: number): string => `${clock(from)} bis ${oClock(to)}`;

/** How the day's figure was set. */
function settingText(way: 'recommended' | 'now' | 'resets', sets: number): string {
  if (way === 'now') return 'So, wie die Trimmpotis stehen,';
  if (way === 'recommended') return 'Mit der empfohlenen Einstellung';
  return sets <= 1 ? 'Mit einer Einstellung' : `Mit ${sets} Einstellungen am Tag`;
}

export const roomAnswer: Translated<typeof answerWords> = {
  why: {
    heading: 'Warum',
    question: 'Wo muss die Schwelle in diesem Raum stehen, und bis wann hält sie?',
    nothing:
      'Das Verhältnis zweier Lichter schaltet eine Stimme: der Sensor im Licht und der Sensor im Schatten des Ereignisses. Beides einmal messen, und die Volt zum Einstellen folgen.',
    between: (lit, shade) =>
      `Die Schwelle muss zwischen ${shade}, dem hellsten Schatten des Tages, und ${lit}, seinem wenigsten Licht, liegen.`,
    band: 'Das graue Band ist das Licht an den Sensoren, vom halben bis zum doppelten Himmelsmodell. Das gepunktete darunter ist der Schatten des Ereignisses darin.',
    crossed: (lit, shade) =>
      `Der hellste Schatten des Tages ist ${shade}, sein wenigstes Licht ${lit}: Keine einzelne Schwelle liegt dazwischen.`,
    alike: 'Ohne Tageslicht ist jede Stunde wie die andere: Das Licht ist, was gemessen wurde.',
    betweenAlike: (lit, shade) =>
      `Die Schwelle muss zwischen ${shade}, dem Schatten, und ${lit}, dem Licht, liegen.`,
    crossedAlike: (lit, shade) =>
      `Der Schatten ist ${shade}, das Licht ${lit}: Keine einzelne Schwelle liegt dazwischen.`,
    steady: 'Ohne Tageslicht folgt das Licht allein den Messungen.',
    holds: 'Eine Einstellung hält den ganzen Tag.',
    resets: (all) => `Eine Einstellung hält nicht den ganzen Tag: neu einstellen um ${hoursText(all)}.`,
    none: 'Zu manchen Stunden passt keine Einstellung: Der hellste Schatten ist heller als das wenigste Licht oder liegt außerhalb dessen, was das Trimmpoti erreicht.',
    relative:
      'Die Messungen sind geschätzt: den Verhältnissen und dem Weg „gerade einsetzen“ trauen, nicht den Volt.',
    ripple: (depth) =>
      `Das Licht der Lampen schwankt um ${formatShare(depth)}; das meiste glättet der Fotowiderstand, den Rest muss die Hysterese decken.`,
  },

  title: {
    hours: (from, to) => (clock(from) === clock(to) ? 'Tag und Nacht' : hours(from, to)),
    room: 'Der Raum',
    change: 'ändern',
    lamp: (hertz, depth) => `Welligkeit ${formatShare(depth)} bei ${formatFixed(hertz, 0)}${SPACE}Hz`,
    noLamp: 'keine Welligkeit',
    noDaylight: 'kein Tageslicht',
    tooFew: 'noch nicht gemessen',
  },

  set: {
    heading: 'Einstellen auf',
    unanswered:
      'Die Lux bei freiem Sensor tippen und die mit dem Schatten darauf: Die Einstellung folgt sofort.',
    later: 'Folgt, sobald es eine Messung gibt.',
    shared: 'beide Stimmen',
    own: (voice) => `Trimmpoti ${voice}`,
    from: (hour) => `ab ${oClock(hour)}`,
    volts,
    about: (value) => `etwa ${volts(value)}`,
    place: (rotation, turns, of) =>
      of > 1
        ? `${formatShare(rotation)} des Drehwegs, ${formatNumber(turns, 3)} von ${formatNumber(of, 3)} Umdrehungen vom Anschlag`
        : `${formatShare(rotation)} des Drehwegs vom Anschlag`,
    share: (rotation) => formatShare(rotation),
    noWindow: 'Keine Einstellung passt für alle Stunden. Am nächsten kommt:',
    noneThen: 'keine Einstellung passt',
    take: 'Diese Einstellung übernehmen',
    taken: 'Die Trimmpotis stehen jetzt dort.',
    takeStep: 'Einstellung für den Raum',
    margins: {
      lit: 'das Licht darf sinken um',
      shade: 'der Schatten darf heller werden um',
      ripple: 'Abstand zur Welligkeit',
      noRipple: 'keine Welligkeit',
      inRipple: 'kein Abstand',
      contrast: 'Licht zu Schatten, im schlechtesten Fall',
      window: 'Fenster',
      trips: 'zählt darüber als Licht, darunter als Schatten',
    },
    window: (low, high) => `${volts(low)} bis ${volts(high)}`,
    trips: (upper, lower) =>
      Math.abs(upper - lower) < 0.02 * upper ? lux(upper) : `${lux(upper)}, ${lux(lower)}`,
    times,
    outlook: {
      chatter: 'Rattern am Kipppunkt',
      settable: 'einstellbare Bausätze',
      mark: 'Bausätze, die an einer gemeinsamen Marke stimmen',
      phantoms: 'was nicht schalten darf und es tut',
      gating: (count, of) => (of === 0 ? 'nichts genannt' : `${count} von ${of}`),
      recorded: 'aufgezeichnete Minuten richtig',
      changes: 'ungewollte Töne, A und B',
      anHour: (a, b) => `${formatNumber(a, 2)} und ${formatNumber(b, 2)} in der Stunde`,
    },
    edges: 'Was das Fenster begrenzt',
    remedies: 'Was helfen würde',
    stored: (share) => `Über die offenen Stunden: ${percent(share)} der Zeit richtig.`,
    now: (share) => `So, wie die Trimmpotis jetzt stehen: ${percent(share)} der Zeit richtig.`,
    turnTo: (value) => `Schleifer unbelastet ${volts(value)}`,
  },

  chart: {
    heading: 'Durch den Tag',
    shown: 'Einstellung',
    ways: { recommended: 'empfohlen', now: 'wie sie steht', resets: 'zwischendurch neu eingestellt' },
    sensor: 'Sensor',
    axis: 'Lux an den Sensoren',
    axisOf: (voice) => `Lux an Sensor ${voice}`,
    lit: 'Licht',
    shaded: 'Schatten',
    threshold: (upper, lower) =>
      Math.abs(upper - lower) < 0.02 * upper
        ? `Schwelle ${lux(upper)}`
        : `Schwelle ${lux(lower)} bis ${lux(upper)}`,
    thresholdShort: (upper, lower) =>
      Math.abs(upper - lower) < 0.02 * upper ? lux(upper) : `${lux(lower)} bis ${lux(upper)}`,
    states: STATES,
    run: (state, from, to) => `${hours(from, to)} ${STATES[state]}`,
    summary: (low, high, runs) => `Licht an den Sensoren von ${low} bis ${high}; ${runs.join(', ')}.`,
    figure: (right, way, sets) =>
      `Licht durch den Tag gegen die Schwelle. ${settingText(way, sets)} sind ${percent(right)} der Minuten richtig.`,
    legend: 'Richtig: Das ganze Band schaltet. Knapp: Nur seine Mitte schaltet. Falsch: Nicht einmal die.',
    cursor: 'Uhrzeit',
    cursorHint: 'Pfeil links und rechts gehen durch den Tag.',
    moment: (hour, { low, high }, shade, state: State) =>
      `${oClock(hour)}: ${low < 0.98 * high ? `${lux(low)} bis ${lux(high)}` : lux(high)} im Licht, bis ${lux(shade)} im Schatten. ${capital(STATES[state])}.`,
    table: 'Tabelle des Tages',
    heads: [
      'Uhrzeit',
      'Licht, wenigstes',
      'Licht, Mitte',
      'Licht, meistes',
      'Schatten, hellster',
      'schaltet',
    ],
    row: (hour, { low, middle, high }, shade, state: State) => [
      clock(hour),
      lux(low),
      lux(middle),
      lux(high),
      lux(shade),
      STATES[state],
    ],
    changes: 'Wann es wechselt',
    change: (hour, state: State) => `${oClock(hour)}, ${STATES[state]}`,
    noChange: 'Den ganzen Tag wechselt nichts.',
    reset: (hour) => `neu einstellen um ${oClock(hour)}`,
    hour: (hour) => clock(hour),
    empty: 'Das Bild des Tages entsteht, sobald es eine Messung gibt.',
  },

  ...roomBench,

  card: {
    heading: 'Einstellkarte',
    at: 'eingestellt um',
    print: 'Karte drucken',
    for: (name) => legible(name) || 'Instrument ohne Namen',
    on: (date, from, to) => `${date === null ? '' : `${date}, `}${hours(from, to)}`,
    printed: (date) => `gedruckt ${date}`,
    empty: 'Die Karte entsteht, sobald es eine Messung gibt.',
    tools: 'Ein Voltmeter, ein kleiner Schraubendreher und etwas, das den Schatten macht.',
  },

  meter: {
    heading: 'Am Arbeitsplatz',
    hint: 'Messgerät zwischen 0 V und den Schleifer des Trimmpotis, beide Sensoren im Licht. Tippen, was es zeigt.',
    reads: { shared: 'das Messgerät zeigt', own: (voice) => `Trimmpoti ${voice} zeigt` },
    hour: 'es ist jetzt',
    restAlike: (holds) =>
      holds ? 'So, wie gemessen, hält es den ganzen Tag.' : 'So, wie gemessen, ist es den ganzen Tag falsch.',
    rest: (share, from) =>
      share === 1
        ? `So, wie gemessen, hält es von ${oClock(from)} bis zum Schluss.`
        : `So, wie gemessen, ist es von ${oClock(from)} bis zum Schluss ${percent(share)} der Zeit richtig.`,
    closed: 'Nach dieser Stunde ist nichts mehr offen.',
    breaks: (hour) => `Um ${oClock(hour)} wird es falsch.`,
  },

  hear: {
    heading: 'Anhören',
    pieces: {
      day: 'Der Tag in einer Minute',
      margin: 'Das Ereignis, gut eingestellt und am Rand',
      chatter: 'Rattern und wachsende Hysterese',
    },
    hints: {
      day: 'Die offenen Stunden in einer Minute mit der Einstellung oben; alle zwei Sekunden ein Schatten über A, dann über B.',
      margin:
        'Viermal das Ereignis im Licht des Raums, dann viermal mit Licht knapp jenseits der Kipppunkte.',
      chatter:
        'Einmal langsam vorbei unter diesen Lampen ohne Hysterese, dann mit 2,2 MΩ, 680 kΩ und 270 kΩ.',
    },
    stop: 'Anhalten',
    now: {
      day: (hour) => `Jetzt ${oClock(hour)}.`,
      margin: (isGood) => (isGood ? 'Gut im Fenster.' : 'Am Rand.'),
      chatter: (value) => (value === null ? 'Keine Hysterese.' : `Hysterese ${ohms(value)}.`),
    },
  },

  lux,
  ohms,
  date: (date) =>
    new Intl.DateTimeFormat('de-DE', {
      day: 'numeric',
      month: 'long',
      year: 'numeric',
      timeZone: 'UTC',
    }).format(new Date(`${date}T00:00:00Z`)),
  list: (parts) => parts.join(' · '),
  pair: (label, voices) => `${label}: A ${voices.A}, B ${voices.B}`,
};
