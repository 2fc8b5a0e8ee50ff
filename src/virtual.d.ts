/** Modules that exist only in the build: vite.config.ts makes them. */
declare module 'virtual:voice-worklet' {
  /** Address of the voice worklet: a file of this site, or a `data:` URL in the one-file build. */
  export const workletUrl: string;
}
