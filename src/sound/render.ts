/** A take without an audio context: the same engine, run as a plain function. */
import type { LightProgram } from '../light/program.ts';
import type { Hertz, Seconds, VoiceId } from '../quantity/units.ts';
import { REACH } from './bandlimit.ts';
import { Engine } from './engine.ts';
import type { EngineSettings } from './settings.ts';

/** A voice that starts (true) or stops (false) sounding. */
export interface GateChange {
  readonly voice: VoiceId;
  readonly time: Seconds;
  readonly sounding: boolean;
}

export interface Take {
  /** Volts at the jack; sample n is the moment n / sampleRate. */
  readonly samples: Float32Array;
  readonly sampleRate: Hertz;
  /** The state at time 0 of each voice, then each change. */
  readonly gate: readonly GateChange[];
}

/** Renders a stretch of time from 0: cells settled, capacitors empty, supply on. */
export function renderTake(
  settings: EngineSettings,
  program: LightProgram,
  seconds: Seconds,
  sampleRate: Hertz = 48_000,
): Take {
  const engine = new Engine(sampleRate, settings, program);
  const gate: GateChange[] = (['A', 'B'] as const).map((voice) => ({
    voice,
    time: 0,
    sounding: engine.sounding(voice),
  }));
  engine.onGate = (voice, time, sounding) => {
    if (time < seconds) gate.push({ voice, time, sounding });
  };
  engine.render(new Float32Array(REACH));
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  engine.render(samples);
  return { samples, sampleRate, gate };
}
