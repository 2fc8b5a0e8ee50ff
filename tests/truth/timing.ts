/** Rows about one voice's timing: the astable, its discharge pin, its resets, what shifts its pitch. */
import {
  type Astable,
  astableFrom,
  cycleOf,
  dischargeSeconds,
  saturationVolts,
} from '../../src/circuit/astable.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { dischargeAmperes } from '../../src/circuit/power.ts';
import { warningsOf } from '../../src/circuit/warnings.ts';
import { spreadCents } from '../../src/circuit/warnings-pitch.ts';
import type { Design } from '../../src/design/design.ts';
import type { DielectricId } from '../../src/parts/capacitors.ts';
import { TIMERS } from '../../src/parts/timers.ts';
import { centsBetween } from '../../src/plan/notes.ts';
import { Timer } from '../../src/sound/timer.ts';
import type { WarningFacts, WarningId } from '../../src/words/warning-facts.ts';
import { designWith } from '../circuit/building.ts';
import type { Evaluators, Inputs } from './rows.ts';

/** The timing network of a row: an ideal discharge unless the row says what is left there. */
function astableIn(inputs: Inputs): Astable {
  const onOhms = inputs.numberOr('onOhms', null);
  const left = inputs.numberOr('sinkVolts', 0);
  return astableFrom({
    raOhms: inputs.number('raOhms'),
    rbOhms: inputs.number('rbOhms'),
    farads: inputs.number('farads'),
    railVolts: inputs.number('railVolts'),
    controlVolts: inputs.numberOr('controlVolts', null),
    discharge:
      onOhms === null
        ? {
            kind: 'saturation',
            points: [
              [0, left],
              [1, left],
            ],
          }
        : { kind: 'resistance', ohms: onOhms },
  });
}

/** What the warning of one kind about voice A tells; throws when it is not given. */
function factsOf<K extends WarningId>(design: Design, id: K): WarningFacts[K] {
  const found = warningsOf(design, instrumentOf(design)).find((w) => w.id === id && w.voice === 'A');
  if (!found) throw new Error(`No warning "${id}" about this design.`);
  return found.facts as WarningFacts[K];
}

export const timing: Evaluators = {
  astable: (inputs) => ({ ...cycleOf(astableIn(inputs)) }),

  'low time factor': (inputs) => ({
    factor: cycleOf(astableIn(inputs)).lowSeconds / (inputs.number('rbOhms') * inputs.number('farads')),
  }),

  'on-resistance': (inputs) => {
    const ideal = inputs.number('rbOhms') * inputs.number('farads') * Math.LN2;
    return { longerBy: cycleOf(astableIn(inputs)).lowSeconds / ideal - 1 };
  },

  'bipolar saturation': (inputs) => {
    const { discharge } = TIMERS.bipolar;
    if (discharge.kind !== 'saturation') throw new Error('The bipolar timer saturates.');
    return { volts: saturationVolts(discharge.points, inputs.number('amperes')) };
  },

  'cmos on-resistance': (inputs) => {
    const { discharge } = TIMERS.cmos;
    if (discharge.kind !== 'resistance') throw new Error('The CMOS timer has an on-resistance.');
    return { ratio: discharge.ohms / (inputs.number('volts') / inputs.number('amperes')) };
  },

  'first high ratio': (inputs) => {
    const { firstHighSeconds, highSeconds } = cycleOf(astableIn(inputs));
    return { ratio: firstHighSeconds / highSeconds };
  },

  'first period ratio': (inputs) => {
    const { firstHighSeconds, highSeconds, lowSeconds } = cycleOf(astableIn(inputs));
    return { ratio: (firstHighSeconds + lowSeconds) / (highSeconds + lowSeconds) };
  },

  'decay in reset': (inputs) => ({
    seconds: dischargeSeconds(astableIn(inputs), inputs.number('fromVolts')),
  }),

  'waits after a short reset': (inputs) => {
    const astable = astableIn(inputs);
    const timer = new Timer(astable, true);
    const volts = inputs.number('fromVolts');
    const { chargeVolts, chargeOhms, farads } = astable;
    const reset = chargeOhms * farads * Math.log(chargeVolts / (chargeVolts - volts));
    timer.setReleased(reset, false);
    timer.setReleased(reset + 1e-9, true);
    if (timer.high) throw new Error('The output rose at once.');
    return { seconds: timer.next - reset };
  },

  'discharge pin in reset': (inputs) => ({
    amperes: dischargeAmperes(astableIn(inputs), inputs.number('raOhms')),
  }),

  'largest resistors': (inputs) => {
    const volts = inputs.number('supplyVolts');
    const supply = { kind: 'five-volt', volts, sourceOhms: 0 } as const;
    return { ohms: factsOf(designWith({ supply, A: { rbFixedOhms: 5e7 } }), 'resistors-too-large').mostOhms };
  },

  'batch spread': (inputs) => ({
    ...spreadCents({
      capacitor: inputs.number('capacitor'),
      resistance: inputs.number('resistance'),
      timer: inputs.number('timer'),
    }),
  }),

  'drift on a battery': (inputs) => {
    const supply = { volts: inputs.number('fromVolts'), sourceOhms: 0 };
    const { fromVolts, toVolts, driftCents } = factsOf(designWith({ supply }), 'pitch-moves-with-battery');
    return { fromVolts, toVolts, cents: driftCents };
  },

  'pitch shift': (inputs) => {
    const { raOhms, rbOhms, farads } = { raOhms: 1000, rbOhms: 47_000, farads: 10e-9 };
    const hertzOf = (change: { raOhms: number; rbOhms: number; farads: number }) =>
      cycleOf(
        astableFrom({
          ...change,
          railVolts: 9,
          controlVolts: null,
          discharge: { kind: 'resistance', ohms: 0 },
        }),
      ).frequency;
    const base = { raOhms, rbOhms: inputs.numberOr('rbOhms', rbOhms), farads };
    const scale = inputs.numberOr('resistanceFactor', 1);
    const changed = {
      raOhms: base.raOhms * scale,
      rbOhms: base.rbOhms * scale + inputs.numberOr('addedOhms', 0),
      farads: base.farads * inputs.numberOr('capacitanceFactor', 1),
    };
    return { cents: centsBetween(hertzOf(base), hertzOf(changed)) };
  },

  'dielectric over temperature': (inputs) => {
    const dielectric = inputs.text('dielectric') as DielectricId;
    const { downCents, upCents } = factsOf(
      designWith({ A: { capacitor: { farads: 10e-9, dielectric, tolerance: 0.1 } } }),
      'drifting-ceramic',
    );
    return { downCents: -downCents, upCents };
  },
};
