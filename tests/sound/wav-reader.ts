/** Reads a WAV file by walking its chunks (Microsoft, Multimedia Data Standards Update, 1994). */
export interface ReadWav {
  readonly formatTag: number;
  readonly channels: number;
  readonly sampleRate: number;
  readonly bytesPerSecond: number;
  readonly blockAlign: number;
  readonly bits: number;
  readonly factSamples: number | null;
  readonly samples: Float32Array;
}

/** Throws for anything that is no whole RIFF/WAVE file of 32-bit floats. */
export function readWav(file: Uint8Array): ReadWav {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const name = (at: number) => String.fromCharCode(...file.subarray(at, at + 4));
  if (name(0) !== 'RIFF' || name(8) !== 'WAVE') throw new Error('no RIFF/WAVE file');
  if (view.getUint32(4, true) !== file.length - 8) throw new Error('the RIFF size is not that of the file');
  const chunks = new Map<string, { at: number; size: number }>();
  let at = 12;
  while (at < file.length) {
    const size = view.getUint32(at + 4, true);
    if (at + 8 + size > file.length) throw new Error(`chunk ${name(at)} runs past the end`);
    chunks.set(name(at), { at: at + 8, size });
    at += 8 + size + (size % 2);
  }
  const format = chunks.get('fmt ');
  const data = chunks.get('data');
  if (!format || !data) throw new Error('a chunk is missing');
  const fact = chunks.get('fact');
  const bits = view.getUint16(format.at + 14, true);
  if (bits !== 32) throw new Error(`${bits} bits a sample`);
  return {
    formatTag: view.getUint16(format.at, true),
    channels: view.getUint16(format.at + 2, true),
    sampleRate: view.getUint32(format.at + 4, true),
    bytesPerSecond: view.getUint32(format.at + 8, true),
    blockAlign: view.getUint16(format.at + 12, true),
    bits,
    factSamples: fact ? view.getUint32(fact.at, true) : null,
    samples: Float32Array.from({ length: data.size / 4 }, (_, i) => view.getFloat32(data.at + 4 * i, true)),
  };
}
