/** Modules that exist only in the build: vite.config.ts makes them. */
declare module 'virtual:voice-worklet' {
  /** Address of the voice worklet: a file of this site, or a `data:` URL in the one-file build. */
  export const workletUrl: string;
}

declare module 'virtual:this-build' {
  export const version: string;
  /** Whose work this build holds, with the texts of the licences. */
  export const notices: string;
  /** The same beside the page; null where there is no such file. */
  export const noticesFile: string | null;
}

declare module 'virtual:figure-sources' {
  /** The published figures the model is held against. */
  export const topics: readonly import('./headless/build-sources.ts').FigureTopic[];
}
