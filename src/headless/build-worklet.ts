/** How the page comes by the module of its audio thread, in either build. */
import { build, type Plugin } from 'vite';

/**
 * Gives `virtual:voice-worklet`, the address from which the audio thread loads its module.
 *
 * Normally that is a file of the build. The one-file build carries the bundled text as a `data:` URL, since a page
 * opened from a disk may load an audio worklet from nowhere else.
 */
export function voiceWorkletUrl(
  voiceWorklet: string,
  target: string,
  single: boolean,
  aside: () => Plugin,
): Plugin {
  const name = 'virtual:voice-worklet';
  return {
    name: 'voice-worklet-url',
    resolveId: (id) => (id === name ? `\0${name}` : null),
    async load(id) {
      if (id !== `\0${name}`) return null;
      if (!single) {
        return `import url from ${JSON.stringify(`${voiceWorklet}?worker&url`)};\nexport const workletUrl = url;`;
      }
      const code = JSON.stringify(await bundledText(voiceWorklet, target, aside()));
      return `export const workletUrl = 'data:text/javascript;charset=utf-8,' + encodeURIComponent(${code});`;
    },
  };
}

/** One script holding `entry` and all it imports. Throws what the bundler throws. */
async function bundledText(entry: string, target: string, plugin: Plugin): Promise<string> {
  const result = await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    plugins: [plugin],
    build: {
      target,
      write: false,
      modulePreload: false,
      rolldownOptions: { input: entry, output: { format: 'iife', codeSplitting: false } },
    },
  });
  const outputs = Array.isArray(result) ? result : [result];
  const [chunk] = outputs.flatMap((each) => ('output' in each ? each.output : []));
  if (chunk?.type !== 'chunk') throw new Error(`${entry} was not bundled into one script`);
  return chunk.code;
}
