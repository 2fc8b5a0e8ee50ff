/** What the page says about itself: version, network, what is kept, how far to trust it, sources, licences. In English. */
import { formatNumber } from '../quantity/format.ts';
import { spoken } from './spoken.ts';

/** Something that is kept: what, where, and for how long. */
type Kept = readonly [what: string, where: string, until: string];

export interface AboutWords {
  readonly heading: string;
  readonly version: (version: string) => string;
  readonly what: string;
  readonly network: { readonly heading: string; readonly lines: readonly string[] };
  readonly kept: {
    readonly heading: string;
    readonly heads: readonly string[];
    readonly rows: readonly Kept[];
    readonly shared: string;
  };
  readonly trust: { readonly heading: string; readonly lines: readonly string[] };
  readonly sources: {
    readonly heading: string;
    readonly intro: (figures: number) => string;
    readonly rest: string;
    readonly topics: Readonly<Record<string, string>>;
    readonly topic: (name: string, figures: number) => string;
  };
  readonly licences: {
    readonly heading: string;
    readonly own: string;
    readonly others: string;
    readonly show: string;
    readonly file: string;
  };
}

export const aboutWords = spoken<AboutWords>('about', {
  heading: 'About Lampnote',
  version: (version) => `Version ${version}`,
  what: 'For people who design two-voice light instruments, have others build them, and show a class how they work: hear the pitches before the capacitors are ordered, set the threshold for a room in advance, show why a shadow stops a sound.',
  network: {
    heading: 'What leaves this page',
    lines: [
      'Nothing. The page fetches its own files from where it is served, and asks no address for anything else: no account, no upload, no counting of visits.',
      'A content policy in the page tells the browser to load nothing from any other address, and to open no data connection at all.',
      'Pictures of the camera and sound of the microphone become numbers in this page. They are neither stored nor sent, and both end when the place is left.',
      'A link holds the whole design behind its “#”, prices and kit log too; the one on Kit’s sheets leaves those out. Browsers do not send that part to the server.',
    ],
  },
  kept: {
    heading: 'What is kept, and where',
    heads: ['what', 'where', 'how long'],
    rows: [
      [
        'the design at hand, with its drawer, shortlist, room readings, workshop and kit log',
        'in this browser, under “lampnote.design”',
        'until it is changed or forgotten',
      ],
      [
        'designs laid aside: another tab’s, one that did not read, the last three that another took the place of',
        'in this browser, under “lampnote.aside.…”; which is this tab’s own: in the tab, under “lampnote.own”',
        'until they are opened, let go or forgotten',
      ],
      [
        'look, language, volume, and how class and exhibition are set',
        'in this browser, under “lampnote.session”',
        'until they are changed or forgotten',
      ],
      ['earlier steps of the design, for Undo', 'in the open page', 'until the page is left or loaded anew'],
      [
        'light being taken down, opened recordings, readings of the fault finder',
        'in the open page',
        'until the page is left or loaded anew',
      ],
      [
        'how far each lesson came, guesses and counted hands',
        'in the tab, under “lampnote.sitting”',
        'until the tab is closed, or forgotten',
      ],
      ['files you save, links you copy', 'wherever you put them', 'as long as you keep them'],
    ],
    shared:
      'At the foot of the page “Forget everything on this device” takes all that the browser keeps away. Whoever uses this browser under the same account can read what it keeps. Opened from a disk, the page shares its store with other pages opened from a disk.',
  },
  trust: {
    heading: 'How far to trust it',
    lines: [
      'Timing is exact for the stated circuit. Real kits differ: a 10 % capacitor moves a pitch by more than a semitone.',
      'Part figures are the makers’ typical ones at 25 °C. Light cells of one grade differ by a factor of 2 to 3; a measured resistance at 10 lx helps when it matters.',
      'A reach in per cent is a count of seeded draws. How parts lie within their tolerance stands beside it; real parts lie more kindly, or come from one odd batch.',
      'Modelled daylight is right to a factor of two either way at any moment. Direct sun on a sensor is not modelled. Levels by kind of room are typical ones.',
      'Faults of a board are computed for the design. What a hot or half-dead part really does may differ.',
      'The shared dip of the rail is of first order: it ends a voice’s high, and moves neither capacitor nor comparator.',
      'Not in the sound: the comparator’s response time (about 1.3 µs), temperature, and the supply’s sag.',
      'The webcam gives relative light only. With a typed level and the exposure held, expect ± 20 to 30 %.',
      'How loud your loudspeaker is cannot be known here: the page speaks of decibels below full scale, never of sound pressure.',
      'Your local rules and licensed practice come first.',
    ],
  },
  sources: {
    heading: 'Where the figures come from',
    intro: (figures) =>
      `The model is held against ${formatNumber(figures, 4)} rows of figures, published or worked out from a published law; each names its source, and how far off the model may be. By topic:`,
    rest: 'Cautions, warnings and typical rooms name their sources where they stand. Where a figure is common practice or from memory, it says so.',
    topics: {
      astable: 'Timing of the two voices',
      camera: 'Light from a camera’s picture',
      cell: 'Light cells at rest',
      comparator: 'Comparators and thresholds',
      daylight: 'Sun and sky',
      drift: 'Tolerance and drift',
      hearing: 'Hearing and levels',
      lamp: 'Ripple of lamps',
      light: 'Light, shadow and distance',
      'moving-cell': 'Light cells while the light moves',
      output: 'Output',
      parts: 'Trimmers and markings',
      pitch: 'Notes and intervals',
      power: 'Supply and batteries',
      reset: 'Reset and the first cycle',
      spectrum: 'Harmonics',
    },
    topic: (name, figures) => `${name} (${formatNumber(figures, 4)})`,
  },
  licences: {
    heading: 'Licences',
    own: 'Lampnote is free to use, change and pass on, under the MIT licence.',
    others:
      'It is built with the work of others, each under its own licence; the typefaces are under the SIL Open Font License. All texts stand here, in English:',
    show: 'Licences and whose work is in this page',
    file: 'The same as a text file',
  },
});
