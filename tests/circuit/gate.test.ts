/** Divider, reference, feedback and comparator against an independent solution of the whole net. */
import { describe, expect, test } from 'vitest';
import { cellOhms, steadyConductance } from '../../src/circuit/cell.ts';
import {
  cellSiemens,
  commonModeOf,
  gatesOf,
  nodeVolts,
  overdriveVolts,
  plusIsSensor,
  pullOf,
  referenceSource,
  rotationForVolts,
  stateIndex,
} from '../../src/circuit/gate.ts';
import { instrumentOf, momentIn } from '../../src/circuit/instrument.ts';
import type { Design } from '../../src/design/design.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { gateNet, tripOhms } from './board.ts';
import { type Changes, cellAt, designWith, thresholdTurned } from './building.ts';
import { solve } from './nodal.ts';

const positions = ['top', 'bottom'] as const;
const polarities = ['light', 'shade'] as const;
const families = ['bipolar', 'cmos'] as const;
const both = (high: boolean) => ({ A: high, B: high });

/** The bare moment of a design in one light, from a state before. */
const soundingIn = (design: Design, lux: number, before = false) => {
  const moment = momentIn(design, instrumentOf(design), { A: lux, B: lux }, both(before));
  return { A: moment.A.sounding, B: moment.B.sounding };
};

describe.each(positions)('with the cell at the %s of the divider', (position) => {
  test.each(polarities)('a voice for %s sounds there and is silent elsewhere', (polarity) => {
    const design = designWith({ voices: { ...cellAt(position), polarity } });
    const turned = designWith({
      voices: { ...cellAt(position), polarity },
      threshold: { trimmers: { A: thresholdTurned(0.6), B: thresholdTurned(0.6) } },
    });
    const inLight = polarity === 'light';
    for (const d of [design, turned])
      for (const before of [false, true]) {
        expect(soundingIn(d, 3000, before)).toEqual(both(inLight));
        expect(soundingIn(d, 0.5, before)).toEqual(both(!inLight));
      }
  });

  test.each(polarities)('hysteresis for %s keeps the old state between the trip points', (polarity) => {
    const design = designWith({ voices: { ...cellAt(position), polarity } });
    const { on, off } = instrumentOf(design).voices.A.tripLux;
    expect(polarity === 'light' ? on! > off! : on! < off!).toBe(true);
    const between = Math.sqrt(on! * off!);
    expect(soundingIn(design, between, false)).toEqual(both(false));
    expect(soundingIn(design, between, true)).toEqual(both(true));
  });
});

/** Every arrangement of the gate that changes the net. */
const cases: readonly { name: string; design: Design }[] = positions.flatMap((position) =>
  polarities.flatMap((polarity) =>
    (['shared', 'each'] as const).flatMap((arrangement) =>
      families.map((timer) => {
        const changes: Changes = {
          timer,
          voices: { ...cellAt(position), polarity, hysteresisOhms: 150_000 },
          threshold: {
            arrangement,
            trimmers: { A: thresholdTurned(0.4), B: thresholdTurned(0.55) },
          },
        };
        return {
          name: `${position}, ${polarity}, ${arrangement}, ${timer}`,
          design: designWith(changes),
        };
      }),
    ),
  ),
);

test.each(cases)('trip points in lux agree with the whole net solved ($name)', ({ design }) => {
  const { voices } = instrumentOf(design);
  for (const id of ['A', 'B'] as const)
    for (const [name, high] of [
      ['on', false],
      ['off', true],
    ] as const) {
      const lux = voices[id].tripLux[name]!;
      const ohms = tripOhms(design, id, both(high))!;
      // The feedback's own current through the output transistor is neglected: some microvolts.
      expect(cellOhms(design.voices[id].cell, lux) / ohms).toBeCloseTo(1, 3);
    }
});

test.each(cases)('node and reference voltages agree with the whole net solved ($name)', ({ design }) => {
  const gates = gatesOf(design, design.supply.volts);
  for (const outputs of [both(false), both(true), { A: true, B: false }])
    for (const lux of [3, 100, 2000]) {
      const ohms = {
        A: cellOhms(design.voices.A.cell, lux),
        B: cellOhms(design.voices.B.cell, lux),
      };
      const volts = solve(gateNet(design, ohms, outputs));
      for (const id of ['A', 'B'] as const) {
        const v = design.voices[id];
        const state = gates[id].states[stateIndex(outputs)]!;
        const node = nodeVolts(state, cellSiemens(gates[id], steadyConductance(v.cell.gamma, lux)));
        expect(node).toBeCloseTo(volts[`sensor${id}`]!, 3);
        if (plusIsSensor(v.divider.cell, v.polarity))
          expect(node * state.plusShare + state.plusOffset).toBeCloseTo(volts[`plus${id}`]!, 3);
        else expect(state.otherVolts).toBeCloseTo(volts[`plus${id}`]!, 3);
      }
    }
});

test('a shared trimmer moves both voices, one each moves its own', () => {
  const trips = (arrangement: 'shared' | 'each', turnA: number, turnB: number) => {
    const trimmers = { A: thresholdTurned(turnA), B: thresholdTurned(turnB) };
    const { voices } = instrumentOf(designWith({ threshold: { arrangement, trimmers } }));
    return { A: voices.A.tripLux.on!, B: voices.B.tripLux.on! };
  };
  const shared = trips('shared', 0.3, 0.3);
  expect(trips('shared', 0.3, 0.9)).toEqual(shared);
  expect(trips('shared', 0.5, 0.3).A).not.toBe(shared.A);
  expect(trips('shared', 0.5, 0.3).B).not.toBe(shared.B);
  const each = trips('each', 0.3, 0.3);
  expect(trips('each', 0.5, 0.3)).toEqual({ A: trips('each', 0.5, 0.5).A, B: each.B });
});

test('on a shared trimmer the other voice’s output moves this one’s trip point; on its own it does not', () => {
  const trips = (arrangement: 'shared' | 'each') => {
    const { states } = gatesOf(designWith({ threshold: { arrangement } }), 9).A;
    return [states[stateIndex({ A: false, B: false })]!, states[stateIndex({ A: false, B: true })]!].map(
      (state) => state.tripVolts,
    );
  };
  const [alone, withOther] = trips('shared') as [number, number];
  expect(withOther).toBeGreaterThan(alone);
  const [a, b] = trips('each') as [number, number];
  expect(b).toBe(a);
});

describe('outside the common-mode range', () => {
  /** Reference near the supply: one input is above the range whatever the light. */
  const high = (comparator: 'classic' | 'later', changes: Changes) =>
    designWith({
      comparator,
      ...changes,
      threshold: {
        trimmers: {
          A: thresholdTurned(0.98, { topOhms: 0 }),
          B: thresholdTurned(0.98, { topOhms: 0 }),
        },
      },
    });

  test.each(positions)(
    'both inputs high: a classic die is low and a later one high, cell at the %s, either polarity',
    (position) => {
      const lux = position === 'top' ? 5000 : 0.2;
      for (const polarity of polarities) {
        const changes: Changes = { voices: { ...cellAt(position), polarity, hysteresisOhms: null } };
        for (const [comparator, sounds] of [
          ['classic', false],
          ['later', true],
        ] as const) {
          const design = high(comparator, changes);
          const moment = momentIn(design, instrumentOf(design), { A: lux, B: lux }, both(!sounds));
          expect(moment.A.nodeVolts).toBeGreaterThan(7.5);
          expect(moment.A.commonMode).toBe('both above');
          expect(moment.A.sounding, `${comparator}, ${polarity}`).toBe(sounds);
        }
      }
    },
  );

  test('one input high still compares rightly, on either die', () => {
    for (const comparator of ['classic', 'later'] as const)
      for (const position of positions)
        for (const polarity of polarities) {
          const design = high(comparator, {
            voices: { ...cellAt(position), polarity, hysteresisOhms: null },
          });
          const lux = position === 'top' ? 10 : 300;
          const moment = momentIn(design, instrumentOf(design), { A: lux, B: lux }, both(false));
          expect(moment.A.nodeVolts).toBeLessThan(7.5);
          expect(moment.A.commonMode).toBe('one above');
          // The sensor is below the reference: dark where the cell is on top, light where it is below.
          const isLight = position === 'bottom';
          expect(moment.A.sounding).toBe(isLight === (polarity === 'light'));
        }
  });

  test('both inputs within it are inside', () => {
    const design = designWith();
    const moment = momentIn(design, instrumentOf(design), { A: 100, B: 100 }, both(false));
    expect(moment.A.commonMode).toBe('inside');
  });
});

describe('the reset pin', () => {
  test('a pull-up that starves the pin never releases a bipolar timer; a CMOS one is released', () => {
    const starved: Changes = { voices: { pullUpOhms: 90_000 } };
    const bipolar = instrumentOf(designWith(starved));
    expect(bipolar.voices.A.releases).toBe(false);
    expect(bipolar.voices.A.gateVolts.high).toBeCloseTo(0, 9);
    expect(soundingIn(designWith(starved), 5000)).toEqual(both(false));
    expect(instrumentOf(designWith({ ...starved, timer: 'cmos' })).voices.A.releases).toBe(true);
  });

  test('a pull-up the comparator cannot hold down leaves the voice sounding in the dark', () => {
    const strong = designWith({ voices: { pullUpOhms: 220 }, supply: { volts: 15 } });
    const { silences, gateVolts } = instrumentOf(strong).voices.A;
    expect(gateVolts.low).toBeGreaterThan(0.7);
    expect(silences).toBe(false);
    expect(soundingIn(strong, 0.1, true)).toEqual(both(true));
  });

  test.each(families)('its two levels agree with the net solved, %s timer', (timer) => {
    const design = designWith({ timer, voices: { hysteresisOhms: null } });
    const pull = pullOf(design, 'A', 9);
    const ohms = { A: 12_000, B: 12_000 };
    expect(pull.high.volts).toBeCloseTo(solve(gateNet(design, ohms, both(true)))['outA']!, 6);
    expect(pull.low.volts).toBeCloseTo(solve(gateNet(design, ohms, both(false)))['outA']!, 6);
  });
});

test('the turn for a reference voltage gives that voltage, over 200 seeded trimmers', () => {
  const uniform = uniformFrom(7);
  for (let i = 0; i < 200; i++) {
    const part = thresholdTurned(0, { topOhms: uniform() * 20_000, bottomOhms: uniform() * 5000 });
    const volts = referenceSource({ ...part, trimmer: { ...part.trimmer, rotation: uniform() } }, 9).volts;
    const rotation = rotationForVolts(part, 9, volts);
    expect(referenceSource({ ...part, trimmer: { ...part.trimmer, rotation } }, 9).volts).toBeCloseTo(
      volts,
      9,
    );
  }
});

test('a feedback resistor only ever widens: the sounding state keeps itself, over 200 seeded designs', () => {
  const uniform = uniformFrom(11);
  const pick = <T>(options: readonly T[]) => options[Math.floor(uniform() * options.length)]!;
  for (let i = 0; i < 200; i++) {
    const design = designWith({
      voices: {
        ...cellAt(pick(positions), 1000 + uniform() * 50_000),
        polarity: pick(polarities),
        hysteresisOhms: 10_000 + uniform() * 1e6,
        inputOhms: 1000 + uniform() * 50_000,
      },
      threshold: {
        arrangement: pick(['shared', 'each']),
        trimmers: { A: thresholdTurned(uniform() * 0.7), B: thresholdTurned(uniform() * 0.7) },
      },
    });
    const gate = gatesOf(design, 9).A;
    const siemens = 1 / (500 + uniform() * 50_000);
    const state = (high: boolean) => gate.states[stateIndex(both(high))]!;
    const over = (high: boolean) => overdriveVolts(state(high), nodeVolts(state(high), siemens));
    if (over(false) > 0) expect(over(true)).toBeGreaterThan(0);
    expect(commonModeOf(state(true), nodeVolts(state(true), siemens))).toMatch(/inside|above/);
  }
});
