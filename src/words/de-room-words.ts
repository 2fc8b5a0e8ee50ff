/** Words for the room: complaints, reasons of an hour, what would help, the setting-up card, the assistant. In German. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import { BEYOND_THE_SUN, type roomWords as english } from './room.ts';
import type { Remedy } from './room-facts.ts';
import type { Translated } from './spoken.ts';

export const lux = (value: number): string =>
  value > BEYOND_THE_SUN
    ? 'mehr Licht, als die Sonne gibt'
    : `${formatNumber(value, value < 10 ? 2 : 3)}\u00A0lx`;
const volts = (value: number): string => formatFixed(value, 2, 'V');
const ratio = (value: number): string => (value > 99 ? 'über 99-mal' : `${formatNumber(value, 3)}-mal`);
const share = (value: number): string => formatShare(value);
const ohms = (value: number): string => formatQuantity(value, 'Ω', 3);

/** 16.5 → 16:30; past midnight it starts again. */
export function clock(hour: number): string {
  const minutes = Math.round(hour * 60) % 1440;
  const pad = (value: number) => String(value).padStart(2, '0');
  return `${pad(Math.floor(minutes / 60))}:${pad(minutes % 60)}`;
}

/** An hour within a sentence: `16:30 Uhr`. */
export const oClock = (hour: number): string => `${clock(hour)}\u00A0Uhr`;

/** Several hours: `9:00, 16:30 Uhr`. */
export const hoursText = (hours: readonly number[]): string => `${hours.map(clock).join(', ')}\u00A0Uhr`;

/** A single turn is told in hundredths of its travel, many turns in turns. */
function turning(turns: number, turnsOfPart: number): string {
  const size = Math.abs(turns);
  if (turnsOfPart > 1) return `${formatNumber(size, 2)} ${size === 1 ? 'Umdrehung' : 'Umdrehungen'}`;
  return `${formatNumber(size * 100, 2)}\u00A0% des Drehwegs`;
}

/** A light and when it is; without an hour where every hour has it. */
const atHour = (value: number, hour: number | null): string =>
  hour === null ? lux(value) : `${lux(value)} um ${oClock(hour)}`;

const trimmerName = (trimmer: 'A' | 'B', shared: boolean): string =>
  shared ? 'das gemeinsame Trimmpoti' : `Trimmpoti ${trimmer}`;

function remedyText(remedy: Remedy): string {
  switch (remedy.kind) {
    case 'other divider':
      return `${ohms(remedy.ohms)} einsetzen, den Fotowiderstand ${remedy.cell === 'top' ? 'darüber' : 'darunter'}.`;
    case 'own trimmers':
      return 'Jeder Stimme ein eigenes Trimmpoti geben: Ihre Fenster liegen auseinander.';
    case 'reset in between':
      return `Neu einstellen um ${hoursText(remedy.hours)}.`;
    case 'local lamp':
      return `Eine Lampe mit ${formatNumber(remedy.candela, 2)}\u00A0cd anbringen, ${formatFixed(remedy.metres * 100, 0, 'cm')} über dem Sensor, die das Ereignis verdeckt: ${lux(remedy.lux)} mehr.`;
    case 'tube':
      return `Ein Rohr von ${formatFixed(remedy.boreMetres * 1000, 0, 'mm')} Innendurchmesser und ${formatFixed(remedy.depthMetres * 1000, 0, 'mm')} Tiefe über den Sensor setzen: Dieselbe Hand lässt dann ${share(remedy.left)} des Lichts übrig.`;
    case 'less hysteresis':
      return `Weniger Hysterese: ${ohms(remedy.ohms)} oder mehr.`;
    case 'deeper shadow':
      return `Den Schatten vertiefen: Er lässt ${share(remedy.left)} des Lichts übrig, bequem wären ${share(remedy.neededLeft)}. Eine nähere Hand, ein Rohr oder ein Deckel.`;
  }
}

export const roomWords: Translated<typeof english> = {
  lux,
  clock,
  atHour,

  complaint(complaint) {
    switch (complaint.kind) {
      case 'no readings':
        return 'Noch ist kein Licht gemessen. Mindestens die Lux bei freiem Sensor tippen; eine Raumart gibt einen üblichen Wert für den Anfang.';
      case 'one sensor read':
        return `Für Sensor ${complaint.missing} fehlt die Messung; das Licht des anderen gilt für beide.`;
      case 'readings guessed':
        return 'Gemessen hat eine Kamera oder ein ungeeichtes Telefon: Das Verhältnis von Licht zu Schatten zählt, Lux und Volt sind grob. Den Knoten mit einem Messgerät prüfen.';
      case 'shade brighter':
        return `Um ${oClock(complaint.hour)} hat Sensor ${complaint.voice} im Schatten ${lux(complaint.shaded)} und im Licht ${lux(complaint.lit)}. Schatten kann nicht heller sein: Sind sie vertauscht? Der Wert im Licht gilt, der im Schatten bleibt weg.`;
      case 'dark brighter':
        return `Um ${oClock(complaint.hour)} hat Sensor ${complaint.voice} ohne Lampen ${lux(complaint.dark)} und mit Lampen ${lux(complaint.lit)}. Der erste Wert bleibt weg.`;
      case 'place unknown':
        return 'Der Ort ist nicht bekannt, also bleibt das Tageslicht weg. Gerechnet wird nur mit den Lampen; für die Sonne Breite und Länge tippen.';
      case 'polar day':
        return 'Die Sonne geht dort an diesem Tag nicht unter. Das Tageslicht ist für alle 24 Stunden gerechnet.';
      case 'polar night':
        return 'Die Sonne geht dort an diesem Tag nicht auf. Gerechnet ist nur die Dämmerung.';
      case 'sky not measured':
        return 'Für den gemessenen Himmel fehlt die Messung im Freien; es gilt ein mittlerer bedeckter.';
      case 'sky measured in the dark':
        return `Um ${oClock(complaint.hour)} gibt es fast kein Tageslicht zu messen; es gilt ein mittlerer bedeckter Himmel.`;
      case 'daylight above reading':
        return `Um ${oClock(complaint.hour)} gibt schon das Himmelsmodell Sensor ${complaint.voice} ${lux(complaint.modelled)}, gemessen sind aber ${lux(complaint.read)}. Das Tageslicht wird auf die Messung verkleinert; eine Messung ohne Lampen würde beide trennen.`;
      case 'log gap':
        return `Von ${clock(complaint.fromHour)} bis ${oClock(complaint.toHour)} ist nichts aufgezeichnet. Diese Minuten zählen nicht.`;
      case 'log at night only':
        return `Die Aufzeichnung kommt nie über ${lux(complaint.mostLux)}: eine Nacht oder ein verdeckter Sensor. Über den Tag sagt sie nichts; der gerechnete Tag gilt.`;
      case 'log clipped':
        return `Sensor ${complaint.voice} steht ${share(complaint.share)} der Aufzeichnung lang auf ${lux(complaint.lux)}: am Ende seines Bereichs. Das wahre Licht war mindestens so stark; zu hell lässt sich dort nicht feststellen.`;
      case 'log covers part':
        return `Die Aufzeichnung deckt ${share(complaint.share)} der offenen Stunden. Der Rest folgt dem Modell.`;
      case 'log empty':
        return 'Die Aufzeichnung hat weniger als zwei Zeilen.';
    }
  },

  reason(reason) {
    switch (reason.kind) {
      case 'too dark':
        return `${lux(reason.lux)} an Sensor ${reason.voice} bei freiem Blick; Stimme ${reason.voice} braucht ${lux(reason.neededLux)}, um das als Licht zu zählen.`;
      case 'too bright':
        return `${lux(reason.lux)} an Sensor ${reason.voice}: Über ${lux(reason.mostLux)} zählt sogar der Schatten des Ereignisses noch als Licht.`;
      case 'not recorded':
        return 'Nicht aufgezeichnet.';
    }
  },

  edge(reason) {
    switch (reason.kind) {
      case 'lit':
        return `Jenseits davon zählt das ${reason.hour === null ? 'Licht' : 'wenigste Licht'} an Sensor ${reason.voice}, ${atHour(reason.lux, reason.hour)}, nicht mehr als Licht.`;
      case 'shade':
        return `Jenseits davon zählt der ${reason.hour === null ? 'Schatten' : 'hellste Schatten'} an Sensor ${reason.voice}, ${atHour(reason.lux, reason.hour)}, nicht mehr als Schatten.`;
      case 'end stop':
        return 'Der Anschlag des Trimmpotis.';
      case 'common-mode range':
        return `Über ${volts(reason.limitVolts)} verlässt die Referenz den Eingangsbereich des Komparators; dort ist nichts zugesichert.`;
    }
  },

  remedy: remedyText,

  step(step) {
    switch (step.kind) {
      case 'check the supply':
        return `Die Versorgung messen: ${volts(step.volts)}. Alle Spannungen unten gehören zu ihr.`;
      case 'wait for the light':
        return `${step.hour === null ? '' : `Um ${oClock(step.hour)}, `}Lampen wie im Betrieb: etwa ${lux(step.lux.A)} an Sensor A und ${lux(step.lux.B)} an Sensor B.`;
      case 'read the node':
        return `Knoten ${step.voice}: ${volts(step.lit)} bei freiem Sensor, ${volts(step.shade)} mit dem Schatten des Ereignisses darauf.`;
      case 'turn to volts':
        return `Ohne Schatten ${trimmerName(step.trimmer, step.shared)} drehen, bis am Schleifer ${volts(step.volts)} stehen, bei ${share(step.rotation)} des Drehwegs${step.turnsOfPart > 1 ? `, ${turning(step.turns, step.turnsOfPart)} vom Anschlag` : ''}. Von ${volts(step.fromVolts)} bis ${volts(step.toVolts)} geht es.`;
      case 'just on': {
        const light = step.soundsInLight ? 'bei freiem Sensor' : 'mit dem Schatten darauf';
        const way = step.thenTurns > 0 ? 'aufwärts' : 'abwärts';
        return `Ohne Messgerät: ${light} ${trimmerName(step.trimmer, step.shared)} dorthin drehen, wo der Klang gerade einsetzt (heute ${volts(step.volts)}), dann ${turning(step.thenTurns, step.turnsOfPart)} ${way}.`;
      }
      case 'try the event': {
        const shaded = step.sounds ? 'klingen' : 'schweigen';
        const lit = step.sounds ? 'schweigen' : 'klingen';
        return `Sensor ${step.voice} beschatten: Stimme ${step.voice} muss ${shaded} und wieder ${lit}, sobald das Licht zurück ist.`;
      }
      case 'will not reach':
        return `Keine Einstellung von Trimmpoti ${step.trimmer} passt für alle diese Stunden. ${step.remedies.map(remedyText).join(' ')}`.trim();
      case 'watch':
        return `${formatNumber(step.minutes, 2)} Minuten lang zusehen, während Leute gehen wie sonst: höchstens ${formatNumber(step.phantomsAllowed, 2)} ungewollter Ton.`;
      case 'set again':
        return `Um ${oClock(step.hour)} ${trimmerName(step.trimmer, step.shared)} neu einstellen, auf ${volts(step.volts)}.`;
    }
  },

  meter(answer) {
    switch (answer.kind) {
      case 'leave it':
        return `${volts(answer.volts)} stimmen. Das Licht darf ${ratio(answer.litMargin)} schwächer und der Schatten ${ratio(answer.shadeMargin)} heller werden, bevor es versagt.`;
      case 'turn':
        return `Um ${turning(answer.turns, answer.turnsOfPart)} ${answer.way === 'up' ? 'aufwärts' : 'abwärts'} drehen, auf ${volts(answer.toVolts)}.${answer.wouldDo ? ' Es ginge auch so, aber näher am Rand.' : ''}`;
      case 'cannot be':
        return `${volts(answer.volts)} können nicht sein: Dieses Trimmpoti gibt ${volts(answer.leastVolts)} bis ${volts(answer.mostVolts)}. Versorgung, die drei Anschlüsse und den Platz des Messgeräts prüfen.`;
      case 'no window':
        return 'In diesen Stunden passt keine Einstellung dieses Trimmpotis; siehe, was helfen würde.';
    }
  },
};
