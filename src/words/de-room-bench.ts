/** Words for what the place Room says of parts, time, the batch and the real cell. In German. */
import { formatFixed, formatNumber, formatShare } from '../quantity/format.ts';
import { chatter, milliseconds, ohms, percent, times } from './de-room-amounts.ts';
import { lux } from './de-room-words.ts';
import type { answerWords } from './en-room-answer.ts';
import type { Translated } from './spoken.ts';

const SPACE = '\u00A0';
/** Where the cell sits, seen from the fixed resistor. */
const cellText = (cell: 'top' | 'bottom'): string =>
  `Fotowiderstand ${cell === 'top' ? 'darüber' : 'darunter'}`;

export const roomBench: Translated<Pick<typeof answerWords, 'parts' | 'timing' | 'batch' | 'cell'>> = {
  parts: {
    heading: 'Teile für diesen Raum',
    working: 'Wird gerechnet…',
    failed: 'Das kam nicht zu Ende. Einen beliebigen Wert ändern, um es neu zu versuchen.',
    heads: ['', 'A', 'B'],
    hysteresis: 'Hysterese',
    hysteresisOf: (now, low, high) =>
      now === null ? 'keine eingebaut' : `${ohms(now)}: ${lux(low)} bis ${lux(high)}`,
    chatter: 'Rattern am Kipppunkt',
    chatterOf: chatter,
    advice: 'Rat',
    enough: 'genügt, wie es ist',
    fit: (value, ratio) =>
      `${value === null ? 'keinen' : ohms(value)} einsetzen (Faktor ${formatNumber(ratio, 3)} zwischen Einsetzen und Verstummen)`,
    tooMuch: (ratio, contrast) =>
      `kein Widerstand beruhigt es: Nötig wäre ${times(ratio)}, das Ereignis gibt ${times(contrast)}. Nach den Lampen sehen oder den Schatten vertiefen`,
    divider: 'Teilerwiderstand',
    dividerOf: (value, cell) => `${ohms(value)}, ${cellText(cell)}`,
    mean: 'geometrisches Mittel des Fotowiderstands in Licht und Schatten',
    degrees: 'Drehweg zwischen Licht und Schatten',
    degreesOf: (degrees) => `${formatFixed(degrees, 0)}° Drehung`,
    lost: (share) => `, ${percent(share)} am Bereich des Komparators oder am Anschlag verloren`,
    better: (value, cell, degrees) => `${ohms(value)}, ${cellText(cell)}, gäbe ${formatFixed(degrees, 0)}°`,
    keep: 'so lassen',
    fitButton: (voice) => `Für ${voice} einsetzen`,
    fitStep: (voice) => `Teile von ${voice} für den Raum`,
    gains: 'Was es verbessern würde',
    contrast: (now, then) => `Licht zu Schatten wird aus ${times(now)} zu ${times(then)}`,
    tube: (bore, depth, contrast, left) =>
      `Ein Rohr von ${formatFixed(bore * 1000, 0, 'mm')} Innendurchmesser, ${formatFixed(depth * 1000, 0, 'mm')} tief, bei Licht von ringsum, aus der Geometrie und nicht aus den Messungen: ${contrast}; ${percent(left)} des Lichts bleiben.`,
    lamp: (candela, metres, more, contrast) =>
      `Eine eigene Lampe, ${formatNumber(candela, 2)}${SPACE}cd in ${formatFixed(metres * 100, 0, 'cm')} Abstand, die das Ereignis verdeckt: ${lux(more)} mehr, ${contrast}.`,
    enoughContrast: 'Das Verhältnis von Licht zu Schatten braucht keine eigene Lampe.',
    sharing: (canShare) =>
      canShare
        ? 'Ein gemeinsames Trimmpoti genügt für beide Sensoren.'
        : 'Ein gemeinsames Trimmpoti genügt nicht für beide Sensoren: jedem ein eigenes geben.',
  },

  timing: {
    heading: 'In der Zeit',
    note: 'kürzester Ton',
    gap: 'kürzeste Lücke',
    fastest: 'schnellste Folge',
    longer: 'Ton gegen Licht',
    heard: 'ein Durchgang klingt',
    length: milliseconds,
    rate: (hertz) => `${formatNumber(hertz, 2)}-mal in der Sekunde`,
    longerBy: (seconds) =>
      Math.abs(seconds) < 0.0005
        ? 'gleich lang'
        : seconds > 0
          ? `${milliseconds(seconds)} länger`
          : `${milliseconds(-seconds)} kürzer`,
    every: 'Durchgänge',
    works: { true: 'jeder schaltet', false: 'nicht jeder schaltet' },
    silent: 'antwortet nicht',
    order: (seconds) =>
      seconds === null
        ? 'Beide zugleich oder nur eine von ihnen.'
        : Math.abs(seconds) < 0.002
          ? 'A und B zusammen.'
          : `Erst ${seconds > 0 ? 'A' : 'B'}, ${seconds > 0 ? 'B' : 'A'} ${milliseconds(Math.abs(seconds))} später.`,
    phantom: (name, number) => `${number}. ${name}`,
    verdict: (verdict) => {
      switch (verdict.kind) {
        case 'too shallow':
          return `schaltet nicht, Abstand ${times(verdict.margin)}`;
        case 'too short':
          return `zu schnell: ${milliseconds(verdict.seconds)}, nötig sind ${milliseconds(verdict.neededSeconds)}`;
        case 'gates':
          return 'schaltet, obwohl es nicht darf';
      }
    },
  },

  batch: {
    heading: 'Für die Serie',
    kits: 'geloste Bausätze',
    kitsHint: 'Gelost für die Anteile unten, wie viele auch gebaut werden: mehr Lose, sicherere Anteile.',
    seed: 'Startzahl',
    spread: 'Streuung der Teile',
    spreads: {
      uniform: 'beliebig in der Toleranz',
      'two-sigma': 'glockenförmig, Toleranz = 2 σ',
      'three-sigma': 'glockenförmig, Toleranz = 3 σ',
    },
    resistors: 'Widerstände ±',
    offset: 'Offset des Komparators ±',
    progress: (share) => `Bausätze werden gelost, ${formatShare(share)}`,
    progressName: 'Geloste Bausätze',
    stop: 'Anhalten',
    again: 'Neu losen',
    stopped: 'Angehalten. Gezeigt wird, was vorher war.',
    anew: 'Ein Fehler brach das Losen ab; es hat von selbst neu begonnen.',
    failed: 'Ein Fehler brach das Losen ab. Gezeigt wird, was vorher war.',
    heads: ['', 'Fotowiderstände, wie sie kommen', 'in drei Gruppen sortiert'],
    settable: 'einstellbar, jeder für sich',
    comfortable: 'mit Platz für Hysterese',
    mark: 'richtig an einer gemeinsamen Marke',
    markAt: 'die Marke',
    spreadOf: 'richtige Stellen, 90 von 100 Bausätzen',
    percent,
    marks: (marks) => marks.map((mark) => formatShare(mark)).join(' / '),
    places: (low, high) => `${formatShare(low)} bis ${formatShare(high)} des Drehwegs`,
    gain: (each, mark, sorted) =>
      each === 0
        ? 'In diesen Stunden lässt sich kein einziger Bausatz einstellen: siehe, was helfen würde.'
        : each - mark < 0.005
          ? 'Eine gemeinsame Marke genügt für jeden einstellbaren Bausatz: die Platte markieren, fertig.'
          : `Jeden Bausatz für sich statt an einer gemeinsamen Marke einstellen: Aus ${percent(mark)} werden ${percent(each)}. Die Fotowiderstände in drei Gruppen sortieren, jede mit eigener Marke: ${percent(sorted)}.`,
    strip: 'Wo die richtige Stelle des Trimmpotis liegt',
    stripSummary: (p5, p50, p95) =>
      `Von hundert Bausätzen stehen neunzig zwischen ${formatShare(p5)} und ${formatShare(p95)} des Drehwegs richtig, der mittlere bei ${formatShare(p50)}.`,
  },

  cell: {
    heading: 'Der wirkliche Fotowiderstand',
    hint: 'Einen Fotowiderstand in zwei oder mehr Lichtern messen: seine Ohm außerhalb der Schaltung oder die Volt an seinem Knoten darin. Die Kurve hindurch ersetzt die des Herstellers.',
    which: 'Fotowiderstand von',
    read: 'gemessen als',
    kinds: { ohms: 'Lux und Ohm', volts: 'Lux und Volt am Knoten' },
    lux: 'Licht',
    ohms: 'Widerstand',
    volts: 'Knoten',
    add: 'Diese Messung hinzufügen',
    step: (voice) => `Fotowiderstand von ${voice}`,
    remove: (n) => `Messung ${n} entfernen`,
    removeShort: 'Entfernen',
    row: (value, reading) => `${lux(value)}: ${reading}`,
    tooFew: (count) =>
      count === 0
        ? 'Noch ist kein Fotowiderstand gemessen.'
        : 'Noch eine Messung in anderem Licht, und die Kurve ist bekannt.',
    oneLight: (value, r) =>
      `Alles in einem Licht: ${ohms(r)} bei ${lux(value)}. Auch in dreimal so hellem oder dunklem Licht messen.`,
    wrongWay:
      'Mehr Licht zeigt mehr Ohm: Sind zwei Messungen vertauscht, oder liegen die Messspitzen am anderen Teil?',
    impossible: (n) =>
      `Messung ${n} liegt außerhalb dessen, was ein Fotowiderstand an diesem Knoten ergibt. Versorgung und Anschlüsse prüfen.`,
    fit: (r10, r10Share, gamma, deviation) =>
      `${ohms(r10)} ± ${percent(r10Share)} bei 10${SPACE}lx, Steigung ${formatFixed(gamma, 2)} ± ${formatFixed(deviation, 2)}`,
    from: {
      residuals: 'Die Unsicherheit kommt daher, wie weit die Messungen neben der Linie liegen.',
      meter: 'Die Unsicherheit ist die eines Hand-Luxmeters, 5 % (üblich).',
    },
    outside:
      'Das liegt außerhalb der Sorte des Herstellers: ein anderer Typ, oder das Messgerät liegt daneben.',
    use: 'Diesen Fotowiderstand nehmen',
  },
};
