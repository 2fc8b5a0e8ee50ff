/**
 * The instrument as samples: two gates, two timers, one jack. Every change of an output is an event at its
 * exact time; between events the jack's voltage is one exponential. Output in volts, REACH samples late.
 */

import type { Astable } from '../circuit/astable.ts';
import type { LightProgram } from '../light/program.ts';
import { type Lux, type Pair, type Seconds, VOICES, type VoiceId, type Volts } from '../quantity/units.ts';
import { BandlimitedLine } from './bandlimit.ts';
import { Gating } from './gating.ts';
import { type JackState, jackStates } from './jack.ts';
import { type EngineSettings, FRAME } from './settings.ts';
import { Timer } from './timer.ts';

/** A turned trimmer reaches the capacitor in this many grid steps (30 ms), not in one jump. */
const GLIDE_STEPS = 90;

/** No sample format holds so little. */
const INAUDIBLE: Volts = 1e-30;

/** A change of a reset pin that lies ahead, within the grid step being played. */
interface PinChange {
  time: Seconds;
  voice: VoiceId;
  released: boolean;
}

type Changing<T> = { -readonly [Value in keyof T]: T[Value] };

const ASTABLE_VALUES = [
  'farads',
  'chargeVolts',
  'chargeOhms',
  'sinkVolts',
  'sinkOhms',
  'lowerVolts',
  'upperVolts',
] as const satisfies readonly (keyof Astable)[];

export class Engine {
  readonly #rate: number;
  readonly #gating: Gating;
  readonly #timers: Pair<Timer>;
  readonly #line = new BandlimitedLine();
  #dips: Pair<Volts>;
  /** What the jack does in each pair of timer levels: A + 3·B. */
  #states: readonly JackState[];
  #glide: { from: Pair<Astable>; to: Pair<Astable>; step: number } | null = null;
  /** The timing networks as they are now, on their way while they glide. */
  readonly #astables: Pair<Changing<Astable>>;

  /** Pin changes of the grid step at hand, in order of time; kept and reused. */
  readonly #pins: PinChange[] = [];
  #pinCount = 0;
  #pinNext = 0;

  /** Jack voltage at the last sample or event. */
  #volts: Volts = 0;
  #lastTime: Seconds = 0;
  /** The pair of levels at hand, and its state. */
  #levels: number;
  #state: JackState;
  /** When the next event comes, as far as known. */
  #nextTime: Seconds = 0;

  #sample = 0;
  readonly #changes = { A: 0, B: 0 };
  #peak: Volts = 0;

  /** Told of every change of a voice: sounding (true) or silent (false). */
  onGate: ((voice: VoiceId, time: Seconds, sounding: boolean) => void) | null = null;

  /** At time 0: cells settled in the program's light, every capacitor empty, supply on. */
  constructor(sampleRate: number, settings: EngineSettings, program: LightProgram) {
    this.#rate = sampleRate;
    this.#gating = new Gating(settings, program);
    this.#astables = { A: { ...settings.astables.A }, B: { ...settings.astables.B } };
    this.#dips = settings.upperDips;
    this.#states = jackStates(settings, sampleRate);
    const shortest = 2 / sampleRate;
    this.#timers = {
      A: new Timer(settings.astables.A, this.#gating.released('A'), shortest),
      B: new Timer(settings.astables.B, this.#gating.released('B'), shortest),
    };
    this.#levels = this.#outputs();
    this.#state = this.#states[this.#levels]!;
    this.#volts = this.#state.volts * this.#state.share;
    // From silence before time 0: the first step is an edge like any other.
    this.#line.edge(0, this.#volts, this.#volts * (-this.#state.perSecond / this.#rate));
  }

  /** Seconds of sound made so far. */
  get time(): Seconds {
    return this.#sample / this.#rate;
  }

  /** Whether a voice sounds now. */
  sounding(voice: VoiceId): boolean {
    return this.#gating.released(voice);
  }

  /** Other component values from now on. */
  setSettings(settings: EngineSettings): void {
    const at = this.#lastTime;
    const pins = VOICES.map((voice) => this.#gating.released(voice));
    this.#gating.setSettings(settings);
    if (VOICES.some((voice, i) => this.#gating.released(voice) !== pins[i])) this.#readPins(at);
    this.#dips = settings.upperDips;
    const { A, B } = this.#astables;
    this.#glide = { from: { A: { ...A }, B: { ...B } }, to: settings.astables, step: 0 };
    const before = this.#voltsAt(at);
    const held = this.#capacitorVolts(before);
    this.#states = jackStates(settings, this.#rate);
    this.#jackEdge(at, before, held);
  }

  /** Plays a program from now on, `place` seconds into it. */
  play(program: LightProgram, place: Seconds): void {
    this.#gating.play(program, place);
  }

  /** From the present light straight to another, taking `seconds`. */
  aim(lux: Pair<Lux>, seconds: Seconds): void {
    this.#gating.aim(lux, seconds);
  }

  /** Writes the next samples, volts at the jack. */
  render(out: Float32Array): void {
    for (let done = 0; done < out.length; ) {
      this.#playUntil(this.#sample / this.#rate);
      // Between this sample and the next event the jack's voltage is one exponential.
      const count = Math.min(out.length - done, this.#samplesToNext());
      this.#volts = this.#line.run(out, done, count, this.#volts, this.#state.perSample);
      done += count;
      this.#sample += count;
      this.#lastTime = (this.#sample - 1) / this.#rate;
    }
    let peak = this.#peak;
    for (let i = 0; i < out.length; i++) {
      const size = Math.abs(out[i]!);
      if (size > peak) peak = size;
    }
    this.#peak = peak;
  }

  /** How many samples from the present one on, at least that one, come before the next event. */
  #samplesToNext(): number {
    const first = this.#sample + 1;
    let next = Math.max(first, Math.ceil(this.#nextTime * this.#rate));
    // Compared as times, as the events are, so that rounding cannot put a sample on their wrong side.
    while (next > first && (next - 1) / this.#rate >= this.#nextTime) next--;
    while (next / this.#rate < this.#nextTime) next++;
    return next - this.#sample;
  }

  /** Fills a frame for the page, and starts counting changes and peak anew. */
  report(frame: Float64Array): void {
    const gating = this.#gating;
    frame[FRAME.time] = this.time;
    frame[FRAME.luxA] = gating.lux('A');
    frame[FRAME.luxB] = gating.lux('B');
    frame[FRAME.nodeA] = gating.node('A');
    frame[FRAME.nodeB] = gating.node('B');
    frame[FRAME.soundingA] = gating.released('A') ? 1 : 0;
    frame[FRAME.soundingB] = gating.released('B') ? 1 : 0;
    frame[FRAME.changesA] = this.#changes.A;
    frame[FRAME.changesB] = this.#changes.B;
    frame[FRAME.peak] = this.#peak;
    this.#changes.A = this.#changes.B = 0;
    this.#peak = 0;
  }

  /** Plays every event up to and including `t`, and brings the jack there. */
  #playUntil(t: Seconds): void {
    for (;;) {
      const { A, B } = this.#timers;
      const pin = this.#pinNext < this.#pinCount ? this.#pins[this.#pinNext]! : null;
      const grid = this.#gating.time;
      // A pin change comes first among equals, then a timer's own event, then the next grid step.
      const at = Math.min(pin ? pin.time : grid, A.next, B.next);
      if (at > t) {
        this.#nextTime = at;
        break;
      }
      if (pin && pin.time === at) {
        this.#pinNext++;
        this.#timers[pin.voice].setReleased(at, pin.released);
        this.#changes[pin.voice]++;
        this.onGate?.(pin.voice, at, pin.released);
        this.#outputEdge(at);
      } else if (A.next === at) {
        A.fire();
        this.#outputEdge(at);
      } else if (B.next === at) {
        B.fire();
        this.#outputEdge(at);
      } else {
        this.#gridStep();
      }
    }
    if (t > this.#lastTime) {
      // One whole sample since the last (the common case) takes no exponential.
      if (this.#lastTime === (this.#sample - 1) / this.#rate) this.#volts *= this.#state.perSample;
      else this.#volts = this.#voltsAt(t);
      this.#lastTime = t;
    }
  }

  #gridStep(): void {
    if (this.#glide) this.#glideStep(this.#gating.time);
    // Long decayed: numbers that small take the processor far longer than others.
    if (Math.abs(this.#volts) < INAUDIBLE) this.#volts = 0;
    this.#pinCount = this.#pinNext = 0;
    this.#gating.advance(this.#onPin);
  }

  /** The same comparator outputs are read differently now: both pins at once, without what lay ahead. */
  #readPins(at: Seconds): void {
    this.#pinNext = this.#pinCount;
    for (const voice of VOICES) this.#timers[voice].setReleased(at, this.#gating.released(voice));
    this.#outputEdge(at);
  }

  readonly #onPin = (voice: VoiceId, time: Seconds, released: boolean): void => {
    const slot = this.#pins[this.#pinCount];
    if (slot) {
      slot.time = time;
      slot.voice = voice;
      slot.released = released;
    } else this.#pins.push({ time, voice, released });
    this.#pinCount++;
  };

  #glideStep(at: Seconds): void {
    const glide = this.#glide!;
    glide.step++;
    const share = glide.step / GLIDE_STEPS;
    for (const voice of VOICES) {
      mix(this.#astables[voice], glide.from[voice], glide.to[voice], share);
      this.#timers[voice].setAstable(at, this.#astables[voice]);
    }
    if (share >= 1) this.#glide = null;
    this.#outputEdge(at);
  }

  #outputs(): number {
    return this.#timers.A.level + 3 * this.#timers.B.level;
  }

  /** The timers may have changed their outputs at `at`: if so, an edge at the jack. */
  #outputEdge(at: Seconds): void {
    if (this.#outputs() === this.#levels) return;
    this.#dipRail(at);
    const levels = this.#outputs();
    const before = this.#voltsAt(at);
    const held = this.#capacitorVolts(before);
    this.#levels = levels;
    this.#jackEdge(at, before, held);
  }

  /** One output has changed: the rail's dip may end the other voice's high. Both at once have nothing to add. */
  #dipRail(at: Seconds): void {
    const { A, B } = this.#timers;
    const a = this.#levels % 3;
    const movedA = A.level !== a;
    const movedB = B.level !== (this.#levels - a) / 3;
    if (movedA && !movedB && this.#dips.B > 0) B.dip(at, this.#dips.B);
    else if (movedB && !movedA && this.#dips.A > 0) A.dip(at, this.#dips.A);
  }

  /** The jack's voltage at a time after the last, nothing having happened since. */
  #voltsAt(t: Seconds): Volts {
    const { perSecond } = this.#state;
    const seconds = t - this.#lastTime;
    return perSecond === 0 || seconds === 0 ? this.#volts : this.#volts * Math.exp(-perSecond * seconds);
  }

  /** Voltage across the coupling capacitor while the jack has this voltage. */
  #capacitorVolts(jackVolts: Volts): Volts {
    const { volts, share, perSecond } = this.#state;
    return perSecond === 0 ? 0 : volts - jackVolts / share;
  }

  /** Goes over into the state of the present levels, from a voltage at the jack and one held by the capacitor. */
  #jackEdge(at: Seconds, before: Volts, held: Volts): void {
    const slopeBefore = -before * this.#state.perSecond;
    const state = this.#states[this.#levels]!;
    this.#state = state;
    this.#volts = (state.volts - held) * state.share;
    this.#lastTime = at;
    const slope = -this.#volts * state.perSecond;
    const ago = Math.min(1, Math.max(0, this.#sample - at * this.#rate));
    this.#line.edge(ago, this.#volts - before, (slope - slopeBefore) / this.#rate);
  }
}

/** Straight between two timing networks, value by value; in the place of another, so that nothing is allocated. */
function mix(into: Changing<Astable>, from: Astable, to: Astable, share: number): void {
  for (const value of ASTABLE_VALUES)
    into[value] = share < 1 ? from[value] + (to[value] - from[value]) * share : to[value];
}
