/** Settings changed for comparing by ear: voices that sound whatever the light, at equal loudness. */
import { cycleOf } from '../circuit/astable.ts';
import { type Pair, pairOf, VOICES, type VoiceId } from '../quantity/units.ts';
import type { EngineSettings } from './settings.ts';

/** The duty cycle whose loudness all others are brought down to; a longer one is quieter than that by itself. */
const QUIETEST_DUTY = 0.8;

/** Mean square of a square wave of one volt, its DC taken away. */
const power = (duty: number): number => duty * (1 - duty);

/**
 * The same instrument with its gates held: `sounds` says which voices sound, in any light. Its full scale is set so
 * that pulses of any duty cycle up to 80 % are equally strong; nothing gets louder than before.
 */
export function heldSounding(settings: EngineSettings, sounds: Pair<boolean>): EngineSettings {
  const powers = VOICES.map((voice) => power(cycleOf(settings.astables[voice]).dutyCycle));
  const mean = powers.reduce((sum, each) => sum + each, 0) / powers.length;
  const quieter = Math.max(1, Math.sqrt(mean / power(QUIETEST_DUTY)));
  return {
    ...settings,
    jack: { ...settings.jack, boundVolts: settings.jack.boundVolts * quieter },
    gates: pairOf((voice) => ({
      ...settings.gates[voice],
      releases: sounds[voice],
      silences: !sounds[voice],
    })),
  };
}

/** Which voices sound when only one is wanted, or both. */
export function soundsOnly(only: VoiceId | null): Pair<boolean> {
  return pairOf((voice) => only === null || only === voice);
}
