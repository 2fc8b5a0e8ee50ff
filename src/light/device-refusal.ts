/** Why a browser gives no camera or no microphone, from the name of the error it throws (W3C Media Capture and Streams). */
export type DeviceRefusal = 'denied' | 'absent' | 'busy' | 'unsupported' | 'failed';

const KINDS: ReadonlyMap<string, DeviceRefusal> = new Map([
  ['NotAllowedError', 'denied'],
  ['SecurityError', 'denied'],
  ['NotFoundError', 'absent'],
  ['OverconstrainedError', 'absent'],
  ['NotReadableError', 'busy'],
  ['NotSupportedError', 'unsupported'],
]);

export function deviceRefusal(error: unknown): DeviceRefusal {
  return (error instanceof Error && KINDS.get(error.name)) || 'failed';
}
