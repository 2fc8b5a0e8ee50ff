/**
 * The picture panel's memory: what is drawn now, what the words say of it, and what is held still. Words are renewed
 * seldom enough to be read, but never tell another state than the drawing beside them. Seconds, lux.
 */
import { derivedInstrument, memoized } from '../../app/derived.ts';
import type { LiveFrame } from '../../app/live.ts';
import { cellOf, cellOhms } from '../../circuit/cell.ts';
import type { Instrument } from '../../circuit/instrument.ts';
import type { Design } from '../../design/design.ts';
import { STAGES, type StageId } from '../../lesson/lesson.ts';
import { firstCyclePoints, livePicture, slowFactor } from '../../lesson/picture.ts';
import { type Lux, pairOf, type Seconds, type VoiceId } from '../../quantity/units.ts';
import { SLOW_CYCLES, SlowClock } from '../plots/slow-cycle.ts';
import { Steadied } from '../plots/steadied.ts';
import { ToldGate } from '../plots/told-gate.ts';
import type { Told } from './picture-words.ts';

/** Light at which the cells' curves are drawn. */
const CURVE: readonly Lux[] = [0.1, 1, 10, 100, 1000, 10_000, 100_000];
/** Values in words are renewed this often. */
const WORDS_EVERY: Seconds = 0.3;

const curvesOf = memoized((design: Design) =>
  pairOf((voice) => CURVE.map((lux) => ({ lux, ohms: cellOhms(cellOf(design.voices[voice]), lux) }))),
);
const cyclesOf = memoized((instrument: Instrument) =>
  pairOf((voice) => firstCyclePoints(instrument.astables[voice], SLOW_CYCLES)),
);

/** What is on the bench, and how it is looked at. */
export interface Following {
  readonly design: Design;
  readonly voices: readonly VoiceId[];
  /** The light ripples by itself. */
  readonly rippling: boolean;
  /** The slowed cycle moves by itself. */
  readonly running: boolean;
  readonly holds: (stage: StageId) => boolean;
}

export class PictureFollow {
  now: readonly Told[] = [];
  /** What the words say. */
  words: readonly Told[] = [];
  /** Parts that are held, as they were when that began. */
  held: Partial<Record<StageId, readonly Told[]>> = {};
  #wordsAt: Seconds = Number.NEGATIVE_INFINITY;
  readonly #told = { A: new ToldGate(), B: new ToldGate() };
  readonly #steadied = { A: new Steadied(), B: new Steadied() };
  readonly #clocks = { A: new SlowClock(), B: new SlowClock() };

  /** To be asked for every frame, drawn or not. */
  take(frame: LiveFrame, { design, voices, rippling, running, holds }: Following): void {
    const instrument = derivedInstrument(design);
    const picture = livePicture(design, instrument, frame);
    const all = pairOf((id): Told => {
      const shown = frame.shown[id];
      const astable = instrument.astables[id];
      const restless = rippling || shown.kind === 'chattering';
      const steady = this.#steadied[id].next(frame.time, picture[id], restless);
      const factor = slowFactor(picture[id].tone.frequency);
      return {
        gate: shown,
        drawn: {
          id,
          picture: this.#told[id].next(frame.time, steady, shown),
          shown: shown.kind,
          cell: design.voices[id].divider.cell,
          curve: curvesOf(design)[id],
          cycles: cyclesOf(instrument)[id],
          since: this.#clocks[id].next(frame.time, shown.kind !== 'silent', running, factor),
          levels: { lower: astable.lowerVolts, upper: astable.upperVolts, rest: astable.sinkVolts },
        },
      };
    });
    this.now = voices.map((id) => all[id]);
    for (const stage of STAGES) {
      if (!holds(stage)) delete this.held[stage];
      else this.held[stage] ??= this.now;
    }
    const late = frame.time - this.#wordsAt >= WORDS_EVERY || frame.time < this.#wordsAt;
    if (!late && stateKey(this.words) === stateKey(this.now)) return;
    this.words = this.now;
    this.#wordsAt = frame.time;
  }

  /** The slowed cycles one moment on. */
  nudge(design: Design, voices: readonly VoiceId[]): void {
    for (const id of voices) this.#clocks[id].nudge(derivedInstrument(design).voices[id].cycle.frequency);
  }
}

/** What words and drawings have to agree on at any time. */
function stateKey(all: readonly Told[]): string {
  return all
    .map(({ gate, drawn: { id, picture } }) => {
      const { nodeIs, tripVolts } = picture.compare;
      return [id, JSON.stringify(gate), nodeIs, tripVolts, picture.tone.note?.name].join();
    })
    .join(' ');
}
