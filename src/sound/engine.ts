/**
 * The instrument as samples: two gates, two timers, one jack. Every change of an output is an event at its
 * exact time; between events the jack's voltage is one exponential. Output in volts, REACH samples late.
 */

import { type Astable, cycleOf } from '../circuit/astable.ts';
import type { Source } from '../circuit/gate.ts';
import { type Jack, loadShare } from '../circuit/output.ts';
import type { LightProgram } from '../light/program.ts';
import {
  type Fraction,
  type Lux,
  type Pair,
  type Seconds,
  VOICES,
  type VoiceId,
  type Volts,
} from '../quantity/units.ts';
import { BandlimitedLine } from './bandlimit.ts';
import { Gating } from './gating.ts';
import { type EngineSettings, FRAME } from './settings.ts';
import { LEVEL, Timer } from './timer.ts';

/** A turned trimmer reaches the capacitor in this many grid steps (30 ms), not in one jump. */
const GLIDE_STEPS = 90;

/** A change of a reset pin that lies ahead, within the grid step being played. */
interface PinChange {
  time: Seconds;
  voice: VoiceId;
  released: boolean;
}

export class Engine {
  readonly #rate: number;
  readonly #gating: Gating;
  readonly #timers: Pair<Timer>;
  readonly #line = new BandlimitedLine();
  #jack: Jack;
  /** The jack's source for each pair of timer levels: A + 3·B. */
  #sources: readonly Source[];
  #glide: { from: Pair<Astable>; to: Pair<Astable>; step: number } | null = null;
  #astables: Pair<Astable>;

  /** Pin changes of the grid step at hand, in order of time; kept and reused. */
  readonly #pins: PinChange[] = [];
  #pinCount = 0;
  #pinNext = 0;

  /** Jack voltage at the last sample or event, and what it decays by. */
  #volts: Volts = 0;
  #perSecond = 0;
  #perSample = 1;
  #lastTime: Seconds = 0;
  #state: number;

  #sample = 0;
  readonly #changes = { A: 0, B: 0 };
  #peak: Volts = 0;

  /** Told of every change of a voice: sounding (true) or silent (false). */
  onGate: ((voice: VoiceId, time: Seconds, sounding: boolean) => void) | null = null;

  /** At time 0: cells settled in the program's light, every capacitor empty, supply on. */
  constructor(sampleRate: number, settings: EngineSettings, program: LightProgram) {
    this.#rate = sampleRate;
    this.#gating = new Gating(settings, program);
    this.#astables = settings.astables;
    this.#jack = settings.jack;
    this.#sources = sourcesByLevel(settings);
    const shortest = 2 / sampleRate;
    this.#timers = {
      A: new Timer(settings.astables.A, this.#gating.released('A'), shortest),
      B: new Timer(settings.astables.B, this.#gating.released('B'), shortest),
    };
    this.#state = this.#outputs();
    const source = this.#sources[this.#state]!;
    this.#volts = source.volts * loadShare(this.#jack, source);
    this.#setDecay();
    // From silence before time 0: the first step is an edge like any other.
    this.#line.edge(0, this.#volts, this.#volts * (-this.#perSecond / this.#rate));
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
    const before = VOICES.map((voice) => this.#gating.released(voice));
    this.#gating.setSettings(settings);
    if (VOICES.some((voice, i) => this.#gating.released(voice) !== before[i])) this.#readPins(at);
    this.#glide = { from: this.#astables, to: settings.astables, step: 0 };
    const held = this.#capacitorVolts(at);
    this.#jack = settings.jack;
    this.#sources = sourcesByLevel(settings);
    this.#jackEdge(at, held);
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
    for (let i = 0; i < out.length; i++) {
      const t = this.#sample / this.#rate;
      this.#playUntil(t);
      const value = this.#line.push(this.#volts);
      if (value > this.#peak) this.#peak = value;
      else if (-value > this.#peak) this.#peak = -value;
      out[i] = value;
      this.#sample++;
    }
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
      if (at > t) break;
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
        this.#gridStep(at);
      }
    }
    if (t > this.#lastTime) {
      // One whole sample since the last (the common case) takes no exponential.
      this.#volts *=
        this.#lastTime === (this.#sample - 1) / this.#rate
          ? this.#perSample
          : this.#decayOver(t - this.#lastTime);
      this.#lastTime = t;
    }
  }

  #gridStep(at: Seconds): void {
    if (this.#glide) this.#glideStep(at);
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
    this.#astables =
      share >= 1
        ? glide.to
        : { A: between(glide.from.A, glide.to.A, share), B: between(glide.from.B, glide.to.B, share) };
    if (share >= 1) this.#glide = null;
    for (const voice of VOICES) this.#timers[voice].setAstable(at, this.#astables[voice]);
    this.#outputEdge(at);
  }

  #outputs(): number {
    return this.#timers.A.level + 3 * this.#timers.B.level;
  }

  /** The timers may have changed their outputs at `at`: if so, an edge at the jack. */
  #outputEdge(at: Seconds): void {
    if (this.#outputs() === this.#state) return;
    const held = this.#capacitorVolts(at);
    this.#state = this.#outputs();
    this.#jackEdge(at, held);
  }

  /** Voltage across the coupling capacitor. */
  #capacitorVolts(at: Seconds): Volts {
    if (this.#jack.couplingFarads === null) return 0;
    const source = this.#sources[this.#state]!;
    return (
      source.volts - (this.#volts * this.#decayOver(at - this.#lastTime)) / loadShare(this.#jack, source)
    );
  }

  #jackEdge(at: Seconds, held: Volts): void {
    const before = this.#volts * this.#decayOver(at - this.#lastTime);
    const slopeBefore = -before * this.#perSecond;
    const source = this.#sources[this.#state]!;
    this.#volts = (source.volts - held) * loadShare(this.#jack, source);
    this.#lastTime = at;
    this.#setDecay();
    const slope = -this.#volts * this.#perSecond;
    const ago = Math.min(1, Math.max(0, this.#sample - at * this.#rate));
    this.#line.edge(ago, this.#volts - before, (slope - slopeBefore) / this.#rate);
  }

  #setDecay(): void {
    const { couplingFarads, loadOhms } = this.#jack;
    this.#perSecond =
      couplingFarads === null ? 0 : 1 / ((this.#sources[this.#state]!.ohms + loadOhms) * couplingFarads);
    this.#perSample = Math.exp(-this.#perSecond / this.#rate);
  }

  #decayOver(seconds: Seconds): number {
    return this.#perSecond === 0 || seconds === 0 ? 1 : Math.exp(-this.#perSecond * seconds);
  }
}

/** The four sources of the jack, and those in which a voice too fast to play stands at its mean. */
function sourcesByLevel({ jack, astables }: EngineSettings): readonly Source[] {
  const mean = (low: Source, high: Source, duty: Fraction): Source => ({
    volts: low.volts + duty * (high.volts - low.volts),
    ohms: low.ohms + duty * (high.ohms - low.ohms),
  });
  const duty = { A: cycleOf(astables.A).dutyCycle, B: cycleOf(astables.B).dutyCycle };
  const at = (a: number, b: number): Source => {
    if (b === LEVEL.mean) return mean(at(a, LEVEL.low), at(a, LEVEL.high), duty.B);
    if (a === LEVEL.mean) return mean(at(LEVEL.low, b), at(LEVEL.high, b), duty.A);
    return jack.sources[a + 2 * b]!;
  };
  return [0, 1, 2].flatMap((b) => [0, 1, 2].map((a) => at(a, b)));
}

/** Straight between two timing networks, value by value. */
function between(from: Astable, to: Astable, share: number): Astable {
  const mix = (a: number, b: number) => a + (b - a) * share;
  return {
    farads: mix(from.farads, to.farads),
    chargeVolts: mix(from.chargeVolts, to.chargeVolts),
    chargeOhms: mix(from.chargeOhms, to.chargeOhms),
    sinkVolts: mix(from.sinkVolts, to.sinkVolts),
    sinkOhms: mix(from.sinkOhms, to.sinkOhms),
    lowerVolts: mix(from.lowerVolts, to.lowerVolts),
    upperVolts: mix(from.upperVolts, to.upperVolts),
  };
}
