/** The audio thread's shell: messages in, samples and frames out. All arithmetic is in `engine.ts`. */
import { Engine } from './engine.ts';
import {
  type EngineMessage,
  FRAME_LENGTH,
  FRAMES_PER_SECOND,
  MOST_OF_BOUND as MOST,
  type WorkletStart,
} from './settings.ts';

declare const sampleRate: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(
  name: string,
  processor: new (options: { processorOptions: WorkletStart }) => AudioWorkletProcessor,
): void;

class InstrumentProcessor extends AudioWorkletProcessor {
  readonly #engine: Engine;
  readonly #frame = new Float64Array(FRAME_LENGTH);
  #untilFrame = 0;
  #scale: number;

  constructor({ processorOptions: { settings, program } }: { processorOptions: WorkletStart }) {
    super();
    this.#engine = new Engine(sampleRate, settings, program);
    this.#scale = 1 / settings.jack.boundVolts;
    this.port.onmessage = ({ data }: MessageEvent<EngineMessage>) => this.#take(data);
  }

  #take(message: EngineMessage): void {
    if (message.kind === 'play') this.#engine.play(message.program, message.place);
    else if (message.kind === 'aim') this.#engine.aim(message.lux, message.seconds);
    else {
      this.#engine.setSettings(message.settings);
      this.#scale = 1 / message.settings.jack.boundVolts;
    }
  }

  process(_inputs: unknown, [output]: Float32Array[][]): boolean {
    const samples = output![0]!;
    this.#engine.render(samples);
    // The jack's loudest peak is full scale.
    for (let i = 0; i < samples.length; i++) {
      const value = samples[i]! * this.#scale;
      samples[i] = Math.abs(value) <= MOST ? value : value > 0 ? MOST : value < 0 ? -MOST : 0;
    }
    this.#untilFrame -= samples.length;
    if (this.#untilFrame <= 0) {
      this.#untilFrame += sampleRate / FRAMES_PER_SECOND;
      this.#engine.report(this.#frame);
      this.port.postMessage(this.#frame);
    }
    return true;
  }
}

registerProcessor('lampnote-instrument', InstrumentProcessor);
