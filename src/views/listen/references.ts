/** Reference voltages and trip points as the drawings take them: one for both voices where they agree. */
import type { VoiceBehaviour } from '../../circuit/instrument.ts';
import type { Design } from '../../design/design.ts';
import { type Pair, VOICES, type VoiceId } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';
import type { Trip } from '../plots/light-marks.ts';
import type { ReferenceBand } from '../plots/volt-scale.ts';

export function referenceBands(voices: Pair<VoiceBehaviour>): readonly ReferenceBand[] {
  const band = (id: VoiceId, named: VoiceId | 'both'): ReferenceBand => {
    const { referenceVolts: volts, tripVolts } = voices[id];
    const on = tripVolts.on ?? volts;
    const off = tripVolts.off ?? volts;
    const label = words.threshold.reference(named, volts);
    return { voices: named, volts, low: Math.min(on, off), high: Math.max(on, off), label };
  };
  const same =
    voices.A.referenceVolts === voices.B.referenceVolts &&
    voices.A.tripVolts.on === voices.B.tripVolts.on &&
    voices.A.tripVolts.off === voices.B.tripVolts.off;
  return same ? [band('A', 'both')] : VOICES.map((id) => band(id, id));
}

export function tripsOnAxis(design: Design, voices: Pair<VoiceBehaviour>): readonly Trip[] {
  const trip = (id: VoiceId, named: VoiceId | 'both'): Trip => {
    const { on, off } = voices[id].tripLux;
    const label = words.axis.trip(named, off, on, design.voices[id].polarity === 'shade');
    return { voices: named, on, off, label };
  };
  const same =
    design.voices.A.polarity === design.voices.B.polarity &&
    voices.A.tripLux.on === voices.B.tripLux.on &&
    voices.A.tripLux.off === voices.B.tripLux.off;
  return same ? [trip('A', 'both')] : VOICES.map((id) => trip(id, id));
}
