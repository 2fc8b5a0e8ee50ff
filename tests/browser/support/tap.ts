/**
 * Whatever the page sends to the loudspeaker is heard by an analyser too, `soundTap`. Carried into the page as text: it
 * uses nothing from outside itself.
 */
export function tapLoudspeaker(): void {
  const taps = new WeakMap<BaseAudioContext, AnalyserNode>();
  const { connect, disconnect } = AudioNode.prototype;
  const analyserOf = (context: BaseAudioContext): AnalyserNode => {
    const tap = taps.get(context) ?? new AnalyserNode(context, { fftSize: 32768 });
    taps.set(context, tap);
    Reflect.set(globalThis, 'soundTap', tap);
    return tap;
  };
  const isLoudspeaker = (target: unknown): target is AudioDestinationNode =>
    target instanceof AudioDestinationNode && !(target.context instanceof OfflineAudioContext);
  AudioNode.prototype.connect = function (this: AudioNode, ...given: unknown[]) {
    const [target, output] = given;
    const result = Reflect.apply(connect, this, given);
    if (isLoudspeaker(target)) Reflect.apply(connect, this, [analyserOf(target.context), output ?? 0]);
    return result;
  } as typeof connect;
  AudioNode.prototype.disconnect = function (this: AudioNode, ...given: unknown[]) {
    const [target, output] = given;
    Reflect.apply(disconnect, this, given);
    if (!isLoudspeaker(target)) return;
    const tap = analyserOf(target.context);
    Reflect.apply(disconnect, this, output === undefined ? [tap] : [tap, output]);
  } as typeof disconnect;
}
