/** Two voices on one rail that dips at each output edge: when they lock, and when they do not. */
import { describe, expect, test } from 'vitest';
import type { Jack } from '../../src/circuit/output.ts';
import { upperDipVolts } from '../../src/circuit/supply.ts';
import { lockCents, lockWindow } from '../../src/circuit/warnings-pitch.ts';
import { Engine } from '../../src/sound/engine.ts';
import { renderTake } from '../../src/sound/render.ts';
import type { EngineSettings } from '../../src/sound/settings.ts';
import { Timer } from '../../src/sound/timer.ts';
import { designWith } from '../circuit/building.ts';
import { centsBetween, frequencyOf, partOf } from '../ear.ts';
import { DARK, LIT, ONLY_A, pulseOf, settingsFrom, steady } from './playing.ts';

const RAIL = 9;
const DIP = 0.1;
const UPPER_DIP = (2 / 3) * DIP;
const DUTY = 0.6;
const QUICK = 300;

const ONLY_B: Jack = { ...ONLY_A, sources: [0, 0, 1, 1].map((volts) => ({ volts, ohms: 0 })) };

/**
 * By how much the slower voice's period may be shortened: its capacitor's two exponentials, solved between the level
 * and the dipped level. Short of the way up alone, every first meeting locks; with the way down, a lock once made holds.
 */
function windowSeconds(frequency: number): { up: number; both: number } {
  const { chargeOhms, sinkOhms, farads, upperVolts } = pulseOf(frequency, DUTY);
  const up = chargeOhms * farads * Math.log((RAIL - upperVolts + UPPER_DIP) / (RAIL - upperVolts));
  const down = sinkOhms * farads * Math.log(upperVolts / (upperVolts - UPPER_DIP));
  return { up, both: up + down };
}

/** Voice B plays at `QUICK`; voice A is slower by a share of its own window per period. */
function slowerBy(share: number, window: 'up' | 'both'): number {
  let slow = QUICK;
  // The window depends on the frequency it belongs to: a few turns settle it.
  for (let turn = 0; turn < 20; turn++) slow = 1 / (1 / QUICK + share * windowSeconds(slow)[window]);
  return slow;
}

function settingsAt(slow: number, upperDip: number): EngineSettings {
  const base = settingsFrom(designWith());
  return {
    ...base,
    astables: { A: pulseOf(slow, DUTY), B: pulseOf(QUICK, DUTY) },
    upperDips: { A: upperDip, B: upperDip },
  };
}

/** Both pitches after some seconds, and again after other settings were set. */
function heardIn(...stages: readonly EngineSettings[]): { A: number; B: number } {
  const pitch = (jack: Jack) => {
    const engine = new Engine(48_000, { ...stages[0]!, jack }, steady(LIT, LIT));
    const samples = new Float32Array(3 * 48_000);
    for (const stage of stages) {
      engine.setSettings({ ...stage, jack });
      engine.render(samples);
    }
    return frequencyOf(partOf({ samples, sampleRate: 48_000 }, 1, 3), 0.5);
  };
  return { A: pitch(ONLY_A), B: pitch(ONLY_B) };
}

describe('a rail that dips at each edge', () => {
  test('locks the slower voice to the quicker from wherever they meet', () => {
    const heard = heardIn(settingsAt(slowerBy(0.95, 'up'), UPPER_DIP));
    expect(Math.abs(centsBetween(heard.B, QUICK))).toBeLessThan(0.01);
    expect(Math.abs(centsBetween(heard.A, heard.B))).toBeLessThan(0.01);
  });

  test('holds them together a little further, and no further than that', () => {
    const locked = settingsAt(slowerBy(0.95, 'up'), UPPER_DIP);
    const held = heardIn(locked, settingsAt(slowerBy(0.95, 'both'), UPPER_DIP));
    expect(Math.abs(centsBetween(held.A, held.B))).toBeLessThan(0.01);
    const lost = heardIn(locked, settingsAt(slowerBy(1.05, 'both'), UPPER_DIP));
    expect(centsBetween(lost.A, lost.B)).toBeGreaterThan(1);
  });

  test('does nothing to a voice whose neighbour is silent', () => {
    const slow = slowerBy(0.5, 'up');
    const settings = { ...settingsAt(slow, UPPER_DIP), jack: ONLY_A };
    const heard = frequencyOf(partOf(renderTake(settings, steady(LIT, DARK), 6), 1, 6), 0.5);
    expect(Math.abs(centsBetween(heard, slow))).toBeLessThan(0.01);
  });

  test('of no volts leaves both voices at their own pitch', () => {
    const slow = slowerBy(0.5, 'up');
    const heard = heardIn(settingsAt(slow, 0));
    expect(Math.abs(centsBetween(heard.A, slow))).toBeLessThan(0.01);
    expect(Math.abs(centsBetween(heard.B, QUICK))).toBeLessThan(0.01);
  });

  test('moves the upper level by two thirds of itself, and not at all where the control pin is held', () => {
    expect(
      settingsFrom(designWith({ supply: { sharedDipVolts: DIP }, A: { controlVolts: 5 } })).upperDips,
    ).toEqual({
      A: 0,
      B: UPPER_DIP,
    });
  });

  test('deeper than the way between the levels lets time pass all the same', () => {
    // Lows much quicker than highs: what one voice gains on the other's edge is less and less each time.
    const [one, other] = [QUICK, 1.3 * QUICK].map((hertz) => new Timer(pulseOf(hertz, 0.9), true)) as [
      Timer,
      Timer,
    ];
    const deepest = pulseOf(QUICK, 0.9).upperVolts;
    let now = 0;
    let turns = 0;
    // As the engine does: each edge of one is a dip for the other, which may be an edge itself.
    for (; turns < 1000 && now < 0.1; turns++) {
      const [first, second] = one.next <= other.next ? [one, other] : [other, one];
      now = first.next;
      first.fire();
      second.dip(now, deepest);
    }
    expect(now).toBeGreaterThanOrEqual(0.1);
    // Each cycle at least two fifths of its own length: what lies between the middle and the lower level takes that.
    expect(turns).toBeLessThan(0.1 * (QUICK + 1.3 * QUICK) * 2 * 2.5);
  });

  test('deeper than half-way between the levels is told as the sound takes it: half-way', () => {
    const deep = pulseOf(QUICK, DUTY);
    const halfWay = (deep.upperVolts - deep.lowerVolts) / 2;
    expect(lockWindow(deep, 1.5 * halfWay)).toEqual(lockWindow(deep, halfWay));
    expect(lockWindow(deep, 0.9 * halfWay).high).toBeLessThan(lockWindow(deep, halfWay).high);
  });

  test('holds over as many cents as the warning tells', () => {
    const slow = slowerBy(1, 'both');
    const told = lockCents(pulseOf(slow, DUTY), upperDipVolts(DIP, null));
    expect(Math.abs(told - Math.abs(centsBetween(slow, QUICK)))).toBeLessThan(0.01);
  });
});
