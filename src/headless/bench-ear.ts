/** Runs in a page whose policy is lifted: an ear at the loudspeaker that writes down every upward crossing of zero. */

/** On the audio clock, in seconds. */
export interface Ear {
  /** Upward crossings, each the place between two samples where the straight line between them passes zero. */
  readonly crossings: number[];
  /** Something happened on the page: when, had the page's own thread looked at once. */
  readonly marks: number[];
}

/** Before the page loads: remembers what is connected to the loudspeaker. */
export function rememberLoudspeaker(): void {
  const { connect } = AudioNode.prototype;
  AudioNode.prototype.connect = function (this: AudioNode, ...given: unknown[]) {
    if (given[0] instanceof AudioDestinationNode) Object.assign(globalThis, { loudest: this });
    return Reflect.apply(connect, this, given) as AudioNode;
  } as typeof connect;
}

/** Begins to listen; `key`: presses of this key are marked. */
export async function beginToListen(key: string | null): Promise<void> {
  const node = Reflect.get(globalThis, 'loudest') as AudioNode;
  const { context } = node;
  const code = `registerProcessor('ear', class extends AudioWorkletProcessor {
    last = 0;
    process([[samples]]) {
      const found = [];
      for (let i = 0; samples && i < samples.length; i++) {
        const value = samples[i];
        if (this.last <= 0 && value > 0) found.push((currentFrame + i - value / (value - this.last)) / sampleRate);
        this.last = value;
      }
      if (found.length > 0) this.port.postMessage(found);
      return true;
    }
  });`;
  await context.audioWorklet.addModule(`data:text/javascript,${encodeURIComponent(code)}`);
  const ear: Ear = { crossings: [], marks: [] };
  const recorder = new AudioWorkletNode(context, 'ear', { numberOfOutputs: 0 });
  recorder.port.onmessage = ({ data }: MessageEvent<number[]>) => ear.crossings.push(...data);
  node.connect(recorder);
  Object.assign(globalThis, { ear });
  if (key === null) return;
  window.addEventListener(
    'keydown',
    (event) => {
      // What the page's thread was late by counts as waiting.
      const late = (performance.now() - event.timeStamp) / 1000;
      if (event.key === key) ear.marks.push(context.currentTime - late);
    },
    { capture: true },
  );
}

/** Before the page loads: marks every picture whose left half is half as bright as the one before. */
export function markDarkening(): void {
  const { requestVideoFrameCallback: ask } = HTMLVideoElement.prototype;
  const canvas = new OffscreenCanvas(1, 1);
  const paper = canvas.getContext('2d', { willReadFrequently: true })!;
  let before = 0;
  HTMLVideoElement.prototype.requestVideoFrameCallback = function (this: HTMLVideoElement, then) {
    return ask.call(this, (now, about) => {
      paper.drawImage(this, this.videoWidth / 4, this.videoHeight / 2, 1, 1, 0, 0, 1, 1);
      const grey = paper.getImageData(0, 0, 1, 1).data[0]!;
      const ear = Reflect.get(globalThis, 'ear') as Ear | undefined;
      const node = Reflect.get(globalThis, 'loudest') as AudioNode | undefined;
      if (node && grey < before / 2) ear?.marks.push(node.context.currentTime);
      before = grey;
      then(now, about);
    });
  };
}
