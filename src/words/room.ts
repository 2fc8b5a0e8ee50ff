/** Words for the room: complaints, reasons of an hour, what would help, the setting-up card, the assistant. In English. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import type {
  EdgeReason,
  HourReason,
  MeterAnswer,
  Remedy,
  RoomComplaint,
  SettingStep,
} from './room-facts.ts';
import { spoken } from './spoken.ts';

/** Lux; ten times the brightest sunlight. */
export const BEYOND_THE_SUN = 1e6;

const lux = (value: number): string =>
  value > BEYOND_THE_SUN
    ? 'more light than the sun gives'
    : `${formatNumber(value, value < 10 ? 2 : 3)}\u00A0lx`;
const volts = (value: number): string => formatFixed(value, 2, 'V');
const ratio = (value: number): string => (value > 99 ? 'over 99 times' : `${formatNumber(value, 3)} times`);
const share = (value: number): string => formatShare(value);
const ohms = (value: number): string => formatQuantity(value, 'Ω', 3);

/** 16.5 → 16:30; past midnight it starts again. */
function clock(hour: number): string {
  const minutes = Math.round(hour * 60) % 1440;
  const pad = (value: number) => String(value).padStart(2, '0');
  return `${pad(Math.floor(minutes / 60))}:${pad(minutes % 60)}`;
}

/** A single turn is told in degrees of its travel, many turns in turns. */
function turning(turns: number, turnsOfPart: number): string {
  const size = Math.abs(turns);
  if (turnsOfPart > 1) return `${formatNumber(size, 2)} ${size === 1 ? 'turn' : 'turns'}`;
  return `${formatNumber(size * 100, 2)}\u00A0% of its travel`;
}

/** A light and when it is; without an hour where every hour has it. */
const atHour = (value: number, hour: number | null): string =>
  hour === null ? lux(value) : `${lux(value)} at ${clock(hour)}`;

const trimmerName = (trimmer: 'A' | 'B', shared: boolean): string =>
  shared ? 'the shared trimmer' : `trimmer ${trimmer}`;

export const roomWords = spoken('room words', {
  lux,
  clock,
  atHour,

  complaint(complaint: RoomComplaint): string {
    switch (complaint.kind) {
      case 'no readings':
        return 'No light has been read yet. Type at least the lux with nothing in the way; a room type gives a typical value to start from.';
      case 'one sensor read':
        return `Sensor ${complaint.missing} has no reading; the other one’s light stands for both.`;
      case 'readings guessed':
        return 'The readings are a camera’s or an uncalibrated phone’s: the contrast between lit and shaded counts, the lux and the volts are rough. Check the node with a meter.';
      case 'shade brighter':
        return `At ${clock(complaint.hour)} sensor ${complaint.voice} reads ${lux(complaint.shaded)} shaded and ${lux(complaint.lit)} lit. Shade cannot be brighter: are they interchanged? The lit value is used, the shaded one is left out.`;
      case 'dark brighter':
        return `At ${clock(complaint.hour)} sensor ${complaint.voice} reads ${lux(complaint.dark)} with the lamps off and ${lux(complaint.lit)} with them on. The first is left out.`;
      case 'place unknown':
        return 'The place is not known, so daylight is left out. Lamps alone are worked out; type a latitude and a longitude for the sun.';
      case 'polar day':
        return 'The sun does not set there on that date. Daylight is worked out for all 24 hours.';
      case 'polar night':
        return 'The sun does not rise there on that date. Twilight alone is worked out.';
      case 'sky not measured':
        return 'No outdoor reading was typed for the measured sky; an average overcast one is used.';
      case 'sky measured in the dark':
        return `At ${clock(complaint.hour)} there is next to no daylight to measure; an average overcast sky is used.`;
      case 'daylight above reading':
        return `At ${clock(complaint.hour)} the sky model alone gives sensor ${complaint.voice} ${lux(complaint.modelled)}, but ${lux(complaint.read)} were read. The daylight is scaled down to the reading; a reading with the lamps off would tell them apart.`;
      case 'log gap':
        return `Nothing was recorded from ${clock(complaint.fromHour)} to ${clock(complaint.toHour)}. Those minutes are not counted.`;
      case 'log at night only':
        return `The recording never goes above ${lux(complaint.mostLux)}: a night, or a covered sensor. It says nothing of the day; the modelled day stands.`;
      case 'log clipped':
        return `Sensor ${complaint.voice} stands at ${lux(complaint.lux)} for ${share(complaint.share)} of the recording: the end of its range. Real light was at least that; too bright cannot be told there.`;
      case 'log covers part':
        return `The recording covers ${share(complaint.share)} of the open hours. The rest follows the model.`;
      case 'log empty':
        return 'The recording has fewer than two rows.';
    }
  },

  reason(reason: HourReason): string {
    switch (reason.kind) {
      case 'too dark':
        return `${lux(reason.lux)} at sensor ${reason.voice} with nothing in the way; voice ${reason.voice} needs ${lux(reason.neededLux)} to count it as light.`;
      case 'too bright':
        return `${lux(reason.lux)} at sensor ${reason.voice}: above ${lux(reason.mostLux)} even the event’s shadow still counts as light.`;
      case 'not recorded':
        return 'Not recorded.';
    }
  },

  edge(reason: EdgeReason): string {
    switch (reason.kind) {
      case 'lit':
        return `Beyond here ${reason.hour === null ? 'the' : 'the least'} lit light at sensor ${reason.voice}, ${atHour(reason.lux, reason.hour)}, no longer counts as light.`;
      case 'shade':
        return `Beyond here the ${reason.hour === null ? 'shade' : 'brightest shade'} at sensor ${reason.voice}, ${atHour(reason.lux, reason.hour)}, no longer counts as shade.`;
      case 'end stop':
        return 'The trimmer’s end stop.';
      case 'common-mode range':
        return `Above ${volts(reason.limitVolts)} the reference leaves the comparator’s input range, where nothing is promised.`;
    }
  },

  remedy(remedy: Remedy): string {
    switch (remedy.kind) {
      case 'other divider':
        return `Fit ${ohms(remedy.ohms)} with the cell ${remedy.cell === 'top' ? 'above' : 'below'} it.`;
      case 'own trimmers':
        return 'Give each voice a trimmer of its own: their windows stand apart.';
      case 'reset in between':
        return `Set it again at ${remedy.hours.map(clock).join(', ')}.`;
      case 'local lamp':
        return `Add a lamp of ${formatNumber(remedy.candela, 2)}\u00A0cd ${formatFixed(remedy.metres * 100, 0, 'cm')} above the sensor, hidden by the event: ${lux(remedy.lux)} more.`;
      case 'tube':
        return `Put a tube of ${formatFixed(remedy.boreMetres * 1000, 0, 'mm')} bore and ${formatFixed(remedy.depthMetres * 1000, 0, 'mm')} depth over the sensor: the same hand then leaves ${share(remedy.left)} of the light.`;
      case 'less hysteresis':
        return `Use less hysteresis: ${ohms(remedy.ohms)} or more.`;
      case 'deeper shadow':
        return `Make the shadow deeper: it leaves ${share(remedy.left)} of the light, and ${share(remedy.neededLeft)} would be comfortable. A closer hand, a tube, or a lid.`;
    }
  },

  step(step: SettingStep): string {
    switch (step.kind) {
      case 'check the supply':
        return `Measure the rail: ${volts(step.volts)}. All voltages below belong to it.`;
      case 'wait for the light':
        return `${step.hour === null ? 'L' : `At ${clock(step.hour)}, l`}amps as they will be: about ${lux(step.lux.A)} at sensor A and ${lux(step.lux.B)} at sensor B.`;
      case 'read the node':
        return `Node ${step.voice}: ${volts(step.lit)} with nothing in the way, ${volts(step.shade)} with the event’s shadow on the sensor.`;
      case 'turn to volts':
        return `With nothing in the way turn ${trimmerName(step.trimmer, step.shared)} until its wiper reads ${volts(step.volts)}, at ${share(step.rotation)} of its travel${step.turnsOfPart > 1 ? `, ${turning(step.turns, step.turnsOfPart)} from the stop` : ''}. From ${volts(step.fromVolts)} to ${volts(step.toVolts)} will do.`;
      case 'just on': {
        const light = step.soundsInLight ? 'with nothing in the way' : 'with the shadow on';
        const way = step.thenTurns > 0 ? 'up' : 'down';
        return `Without a meter: ${light}, turn ${trimmerName(step.trimmer, step.shared)} to where the sound just starts (${volts(step.volts)} today), then ${way} by ${turning(step.thenTurns, step.turnsOfPart)}.`;
      }
      case 'try the event':
        return `Shade sensor ${step.voice}: voice ${step.voice} must ${step.sounds ? 'sound' : 'fall silent'}, and ${step.sounds ? 'fall silent' : 'sound'} again when the light is back.`;
      case 'will not reach':
        return `No setting of trimmer ${step.trimmer} suits all these hours. ${step.remedies.map((remedy) => roomWords.remedy(remedy)).join(' ')}`.trim();
      case 'watch':
        return `Watch for ${formatNumber(step.minutes, 2)} minutes with people walking as they will: at most ${formatNumber(step.phantomsAllowed, 2)} note that nobody meant.`;
      case 'set again':
        return `At ${clock(step.hour)} set ${trimmerName(step.trimmer, step.shared)} again, to ${volts(step.volts)}.`;
    }
  },

  meter(answer: MeterAnswer): string {
    switch (answer.kind) {
      case 'leave it':
        return `${volts(answer.volts)} is right. The light may fall ${ratio(answer.litMargin)} and the shade grow ${ratio(answer.shadeMargin)} before it fails.`;
      case 'turn':
        return `Turn ${answer.way} by ${turning(answer.turns, answer.turnsOfPart)}, to ${volts(answer.toVolts)}.${answer.wouldDo ? ' It would do as it is, but nearer to the edge.' : ''}`;
      case 'cannot be':
        return `${volts(answer.volts)} cannot be: this trimmer gives ${volts(answer.leastVolts)} to ${volts(answer.mostVolts)}. Check the rail, the three legs, and where the meter stands.`;
      case 'no window':
        return 'In these hours no setting of this trimmer will do; see what would help.';
    }
  },
} as const);
