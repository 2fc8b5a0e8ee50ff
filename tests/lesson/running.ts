/** A bench that runs: the page's own live model, moved on by its clock, for tests that watch what a lesson watches. */
import { Live, type LiveFrame } from '../../src/app/live.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { type Bench, luxOf, programOf } from '../../src/lesson/bench.ts';
import { CONTROLS, withSetting } from '../../src/lesson/controls.ts';
import { type Condition, holds, type Situation } from '../../src/lesson/watch.ts';
import { settingsOf } from '../../src/sound/settings.ts';
import type { Move } from './ways.ts';

const FRAME = 1 / 30;

export class RunningBench {
  readonly start: Bench;
  now: Bench;
  readonly #live: Live;
  #time = 0;
  frame!: LiveFrame;

  constructor(start: Bench) {
    this.start = start;
    this.now = start;
    this.#live = new Live(settingsOf(start.design, instrumentOf(start.design)), programOf(start.light));
    this.#live.subscribe((frame) => {
      this.frame = frame;
    });
    this.run(FRAME);
  }

  get situation(): Situation {
    return { start: this.start, now: this.now, seen: this.frame };
  }

  run(seconds: number, until: () => boolean = () => false): boolean {
    for (let t = 0; t < seconds; t += FRAME) {
      this.#time += FRAME;
      this.#live.advance(this.#time);
      if (until()) return true;
    }
    return false;
  }

  /** What a person does at the page: the control moves, the model follows. */
  put(next: Bench): void {
    if (next.design !== this.now.design)
      this.#live.setSettings(settingsOf(next.design, instrumentOf(next.design)));
    if (next.light !== this.now.light) {
      if (next.light.lamp !== this.now.light.lamp) this.#live.play(programOf(next.light), 0);
      else this.#live.aim(luxOf(next.light), 0.02);
    }
    this.now = next;
  }
}

/** Does what the move says, and waits (at most so long, in the model's own seconds) until the condition holds. */
export function moved(bench: RunningBench, move: Move, condition: Condition): boolean {
  if (move !== 'wait') {
    const [id, value] = move;
    const control = CONTROLS[id];
    bench.put(
      control.kind === 'press' ? control.act(bench.frame.lux)(bench.now) : withSetting(bench.now, id, value),
    );
  }
  return bench.run(6, () => holds(condition, bench.situation));
}
