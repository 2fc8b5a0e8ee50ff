/** The margin's explanation of what happens now, sentence by sentence. */
import type { LiveFrame } from '../../app/live.ts';
import { commonModeOf, stateIndex } from '../../circuit/gate.ts';
import type { Instrument } from '../../circuit/instrument.ts';
import type { Design } from '../../design/design.ts';
import { VOICES } from '../../quantity/units.ts';
import { words } from '../../words/en.ts';

export function whyWords(design: Design, instrument: Instrument, frame: LiveFrame): readonly string[] {
  const faults = VOICES.flatMap((voice) => {
    const { releases, silences } = instrument.voices[voice];
    if (!releases) return [words.why.neverReleases(voice)];
    if (!silences) return [words.why.neverSilences(voice)];
    const state = instrument.gates[voice].states[stateIndex(frame.sounding)]!;
    return commonModeOf(state, frame.node[voice]) === 'both above' ? [words.why.bothAbove(voice)] : [];
  });
  const chatter = VOICES.filter((v) => frame.shown[v].kind === 'chattering').map((v) => words.why.chatter(v));
  const silent = VOICES.filter(
    (v) => frame.shown[v].kind === 'silent' && instrument.voices[v].releases,
  ).flatMap((voice) => {
    const shade = design.voices[voice].polarity === 'shade';
    const rises = (design.voices[voice].divider.cell === 'bottom') !== shade;
    const { on } = instrument.voices[voice].tripLux;
    const light = frame.lux[voice];
    if (on !== null && (shade ? light < on : light > on)) return [words.why.catching(voice, light)];
    const back = on === null ? [] : [words.why.back(voice, on, shade)];
    return [words.why.silent(voice, light, rises), ...back];
  });
  const { on, off } = instrument.voices.A.tripLux;
  const gap =
    design.voices.A.hysteresisOhms === null
      ? [words.why.noHysteresis]
      : on !== null && off !== null
        ? [words.why.hysteresis(off, on)]
        : [];
  const { firstHighSeconds, highSeconds, frequency } = instrument.voices.A.cycle;
  const first = silent.length > 0 && frequency > 0 ? [words.why.first(firstHighSeconds / highSeconds)] : [];
  const calm = silent.length + chatter.length + faults.length === 0 ? [words.why.both] : [];
  return [...faults, ...chatter, ...silent, ...calm, ...gap, ...first];
}
