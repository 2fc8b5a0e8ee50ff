/** Runs in a browser's page: pulses from two other makers, rendered offline, for the bench to measure. */
import { OfflineContext, PulseOscillator } from 'tone/build/esm/classes.js';
import { setContext } from 'tone/build/esm/core/Global.js';

export interface PulseWish {
  readonly hertz: number;
  /** Share of the period that is high. */
  readonly duty: number;
  readonly seconds: number;
  readonly sampleRate: number;
}

export type Maker = 'tonePulse' | 'nativePulse';

/** Samples of a pulse by one of the makers. */
export const pulse = (maker: Maker, wish: PulseWish): Promise<number[]> =>
  maker === 'tonePulse' ? tonePulse(wish) : nativePulse(wish);

const offline = ({ seconds, sampleRate }: PulseWish): OfflineAudioContext =>
  new OfflineAudioContext(1, Math.round(seconds * sampleRate), sampleRate);

/** Tone's pulse oscillator. */
async function tonePulse(wish: PulseWish): Promise<number[]> {
  // Tone takes a native context; its type asks for the wrapped one.
  const context = new OfflineContext(offline(wish) as never);
  setContext(context);
  const source = new PulseOscillator({ context, frequency: wish.hertz, width: 2 * wish.duty - 1 });
  source.toDestination();
  source.start(0);
  const buffer = await context.render(false);
  return [...buffer.getChannelData(0)];
}

/** The browser's own oscillator with the exact Fourier series of the pulse, up to half the sampling rate. */
async function nativePulse(wish: PulseWish): Promise<number[]> {
  const context = offline(wish);
  const count = Math.floor(wish.sampleRate / 2 / wish.hertz) + 1;
  const real = new Float32Array(count);
  const imaginary = new Float32Array(count);
  for (let n = 1; n < count; n++) {
    const angle = 2 * Math.PI * n * wish.duty;
    real[n] = Math.sin(angle) / (Math.PI * n);
    imaginary[n] = (1 - Math.cos(angle)) / (Math.PI * n);
  }
  const wave = context.createPeriodicWave(real, imaginary, { disableNormalization: true });
  const source = new OscillatorNode(context, { frequency: wish.hertz, periodicWave: wave });
  source.connect(context.destination);
  source.start(0);
  return [...(await context.startRendering()).getChannelData(0)];
}
