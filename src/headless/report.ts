/** A take: the same engine as on the page, block after block, and what its report says of it. */
import { type Astable, chargeSeconds, dischargeSeconds } from '../circuit/astable.ts';
import { type Instrument, instrumentOf } from '../circuit/instrument.ts';
import type { Design } from '../design/design.ts';
import type { LightProgram } from '../light/program.ts';
import {
  type Fraction,
  type Hertz,
  type Lux,
  type Seconds,
  VOICES,
  type VoiceId,
  type Volts,
} from '../quantity/units.ts';
import { REACH } from '../sound/bandlimit.ts';
import { Engine } from '../sound/engine.ts';
import { settingsOf } from '../sound/settings.ts';
import { fullScaleVolts } from '../sound/wav.ts';
import { type TakeWarning, takeWarnings } from './warnings.ts';

export interface GateRow {
  readonly time: Seconds;
  readonly on: boolean;
}

export interface VoiceReport {
  readonly id: VoiceId;
  /** Steady values while gated on; null when the voice never swings. */
  readonly frequency: Hertz | null;
  readonly dutyCycle: Fraction | null;
  /** Length of the first high of this take, if the gate lets it end; a voice silent throughout: after a long rest. */
  readonly firstHigh: Seconds | null;
  /** Slow light, no noise; null where no light does it. */
  readonly tripLux: { readonly on: Lux | null; readonly off: Lux | null };
  /** The state at time 0, then each change. */
  readonly gate: readonly GateRow[];
}

export interface TakeReport {
  readonly voices: readonly VoiceReport[];
  /** Volts at the jack over the whole file. */
  readonly output: { readonly peak: Volts; readonly rms: Volts; readonly dc: Volts };
  readonly fullScaleVolts: Volts;
  readonly warnings: readonly TakeWarning[];
}

/** Samples made at once; the sound does not depend on it. */
const BLOCK = 48_000;

/**
 * Plays a design in a light from time 0: cells settled, capacitors empty, supply on. `onBlock` gets the samples in
 * order, volts ÷ full scale, in one array that is used again.
 */
export function take(
  design: Design,
  light: LightProgram,
  samples: number,
  rate: Hertz,
  onBlock: (samples: Float32Array) => void,
): TakeReport {
  const instrument = instrumentOf(design);
  const engine = new Engine(rate, settingsOf(design, instrument), light);
  const gates: Record<VoiceId, GateRow[]> = {
    A: [{ time: 0, on: engine.sounding('A') }],
    B: [{ time: 0, on: engine.sounding('B') }],
  };
  const end = samples / rate;
  engine.onGate = (voice, time, on) => {
    if (time < end) gates[voice].push({ time, on });
  };
  const fullScale = fullScaleVolts(instrument.jack);
  engine.render(new Float32Array(REACH));
  const block = new Float32Array(Math.min(BLOCK, samples));
  let peak = 0;
  let squares = 0;
  let sum = 0;
  for (let done = 0; done < samples; done += block.length) {
    const part = block.subarray(0, Math.min(block.length, samples - done));
    engine.render(part);
    for (let i = 0; i < part.length; i++) {
      const volts = part[i]!;
      peak = Math.max(peak, Math.abs(volts));
      squares += volts * volts;
      sum += volts;
      part[i] = volts / fullScale;
    }
    onBlock(part);
  }
  return {
    voices: VOICES.map((id) => voiceReport(id, instrument, gates[id])),
    output: { peak, rms: Math.sqrt(squares / samples), dc: sum / samples },
    fullScaleVolts: fullScale,
    warnings: takeWarnings(design, instrument),
  };
}

function voiceReport(id: VoiceId, instrument: Instrument, gate: readonly GateRow[]): VoiceReport {
  const { cycle, tripLux, releases, silences } = instrument.voices[id];
  const swings = cycle.frequency > 0;
  const first = gate.find(({ on }) => on);
  const firstHigh = first ? firstHighAfter(instrument.astables[id], first.time) : cycle.firstHighSeconds;
  return {
    id,
    frequency: swings ? cycle.frequency : null,
    dutyCycle: swings ? cycle.dutyCycle : null,
    firstHigh: Number.isFinite(firstHigh) ? firstHigh : null,
    // A reset pin that cannot be moved makes every light unable to change the voice.
    tripLux: releases && silences ? tripLux : { on: null, off: null },
    gate,
  };
}

/** First high of a voice whose capacitor was empty at time 0 and which was held in reset until `released`. */
function firstHighAfter(a: Astable, released: Seconds): Seconds {
  const volts = a.sinkVolts * -Math.expm1(-released / (a.sinkOhms * a.farads));
  if (volts <= a.lowerVolts) return chargeSeconds(a, volts);
  return Number.isFinite(dischargeSeconds(a, volts))
    ? chargeSeconds(a, a.lowerVolts)
    : Number.POSITIVE_INFINITY;
}

/** The report as the text of its file, in pieces: a chattering gate has more rows than one string may hold. */
export function* reportText(report: TakeReport): Generator<string> {
  const { voices, ...rest } = report;
  yield '{\n  "voices": [';
  for (const [i, { gate, ...voice }] of voices.entries()) {
    yield `${i === 0 ? '' : ','}\n    ${JSON.stringify(voice).slice(0, -1)},"gate":[`;
    for (const [j, row] of gate.entries()) yield `${j === 0 ? '' : ','}\n      ${JSON.stringify(row)}`;
    yield '\n    ]}';
  }
  yield '\n  ]';
  for (const [key, value] of Object.entries(rest)) yield `,\n  "${key}": ${JSON.stringify(value)}`;
  yield '\n}\n';
}
