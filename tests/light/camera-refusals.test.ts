import { afterEach, describe, expect, test, vi } from 'vitest';
import { openCamera } from '../../src/light/camera.device.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

/** A stream of plain objects with just what is asked of a stream before a picture is shown. */
function streamOf(kinds: readonly ('audio' | 'video')[]) {
  const tracks = kinds.map((kind) => ({ kind, stop: vi.fn<() => void>() }));
  const stream = {
    getTracks: () => tracks,
    getVideoTracks: () => tracks.filter(({ kind }) => kind === 'video'),
  };
  return { tracks, stream: stream as unknown as MediaStream };
}

describe('a camera that is not given', () => {
  test.each([
    ['NotAllowedError', 'denied'],
    ['SecurityError', 'denied'],
    ['NotFoundError', 'absent'],
    ['OverconstrainedError', 'absent'],
    ['NotReadableError', 'busy'],
    ['NotSupportedError', 'unsupported'],
    ['AbortError', 'failed'],
  ])('%s means %s, with the browser’s words kept', async (name, kind) => {
    const getUserMedia = () => Promise.reject(new DOMException('its own words', name));
    expect(await openCamera({ getUserMedia })).toEqual({ kind, detail: `${name}: its own words` });
  });

  test('anything else thrown is a failure with its words', async () => {
    const getUserMedia = () => Promise.reject('no reason');
    expect(await openCamera({ getUserMedia })).toEqual({ kind: 'failed', detail: 'no reason' });
  });

  test('a browser without cameras is unsupported', async () => {
    vi.stubGlobal('navigator', {});
    expect((await openCamera()).kind).toBe('unsupported');
  });

  test('a page without a secure address is told apart', async () => {
    vi.stubGlobal('navigator', {});
    vi.stubGlobal('isSecureContext', false);
    expect((await openCamera()).kind).toBe('insecure');
  });

  test('a stream without a picture is no camera, and is switched off again', async () => {
    const { stream, tracks } = streamOf(['audio']);
    expect((await openCamera({ getUserMedia: async () => stream })).kind).toBe('absent');
    expect(tracks[0]?.stop).toHaveBeenCalledOnce();
  });

  test('a camera whose picture cannot be read is switched off again', async () => {
    const { stream, tracks } = streamOf(['video']);
    // Here there is no document to make a picture element with.
    expect((await openCamera({ getUserMedia: async () => stream })).kind).toBe('failed');
    expect(tracks[0]?.stop).toHaveBeenCalledOnce();
  });
});

test('only the picture is asked for, never sound', async () => {
  const asked: MediaStreamConstraints[] = [];
  await openCamera({
    getUserMedia: (constraints) => {
      asked.push(constraints);
      return Promise.reject(new DOMException('', 'NotAllowedError'));
    },
  });
  expect(asked).toHaveLength(1);
  expect(asked[0]?.audio).toBe(false);
  expect(asked[0]?.video).toMatchObject({ width: 320, height: 240 });
});
