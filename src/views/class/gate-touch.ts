/** Gates felt: the device vibrates when a voice starts or stops, one long for A, two short for B. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Live, LiveFrame } from '../../app/live.ts';
import { VOICES, type VoiceId } from '../../quantity/units.ts';

/** Milliseconds on, off, on. */
const PULSES: Readonly<Record<VoiceId, readonly number[]>> = { A: [180], B: [70, 70, 70] };

export const canVibrate = (): boolean => typeof navigator.vibrate === 'function';

export class GateTouch implements ReactiveController {
  readonly #live: Live;
  readonly #on: () => boolean;
  readonly #before: Partial<Record<VoiceId, string>> = {};
  #stop: (() => void) | null = null;

  constructor(host: ReactiveControllerHost, live: Live, on: () => boolean) {
    this.#live = live;
    this.#on = on;
    host.addController(this);
  }

  hostConnected(): void {
    this.#stop = this.#live.subscribe((frame) => this.#feel(frame));
  }

  hostDisconnected(): void {
    this.#stop?.();
    this.#stop = null;
  }

  #feel({ shown }: LiveFrame): void {
    for (const voice of VOICES) {
      const { kind } = shown[voice];
      const changed = this.#before[voice] !== undefined && this.#before[voice] !== kind;
      this.#before[voice] = kind;
      if (changed && this.#on() && canVibrate()) navigator.vibrate([...PULSES[voice]]);
    }
  }
}
