/** Answers what it is told: what was posted to the audio thread before has arrived there when the answer is back. */
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

class EchoProcessor extends AudioWorkletProcessor {
  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<number>) => this.port.postMessage(data);
  }

  process(): boolean {
    return true;
  }
}

registerProcessor('echo', EchoProcessor);
