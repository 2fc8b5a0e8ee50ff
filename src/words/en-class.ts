/** The words of the place Class around its lessons, in English: the list, the picture's short values, what a presenter needs. */
import type { VoiceId } from '../quantity/units.ts';
import { spoken } from './spoken.ts';

/** One key of the presenter and what it does. */
type KeyLine = readonly [key: string, does: string];

export interface ClassPageWords {
  readonly heading: string;
  readonly intro: string;
  readonly begin: (title: string) => string;
  readonly goOn: (title: string, step: number, of: number) => string;
  readonly short: { readonly begin: string; readonly goOn: (step: number, of: number) => string };
  readonly step: (step: number, of: number) => string;
  readonly depth: string;
  readonly depths: { readonly plain: string; readonly algebra: string };
  readonly settings: string;
  readonly finished: string;
  readonly finishedText: string;
  readonly freeText: string;
  readonly announceStep: (step: number, of: number, title: string) => string;
  readonly announceFree: string;
  readonly announceLesson: string;
  readonly picture: {
    readonly name: string;
    readonly hidden: string;
    readonly frozen: string;
    readonly waits: string;
    readonly inWords: string;
    readonly tools: string;
    readonly modes: { readonly shown: string; readonly hidden: string; readonly frozen: string };
    readonly slowed: string;
    readonly hold: string;
    readonly letOn: (part: string) => string;
    readonly holdHint: string;
    readonly pause: string;
    readonly run: string;
    readonly moment: string;
    readonly above: (volts: string) => string;
    readonly below: (volts: string) => string;
    readonly crossing: (volts: string) => string;
    readonly never: string;
    readonly sounding: string;
    readonly silent: string;
    readonly chattering: (perSecond: number) => string;
    readonly tone: (note: string, frequency: string) => string;
    readonly noTone: string;
    readonly slowedBy: (factor: string) => string;
  };
  readonly guess: {
    readonly slider: string;
    readonly mine: (lux: string) => string;
    readonly pupil: (lux: string) => string;
    readonly model: (lux: string) => string;
    readonly hint: string;
    readonly add: string;
    readonly takeBack: string;
    readonly axis: (marks: readonly string[]) => string;
    readonly recap: (answer: string) => string;
    readonly none: string;
    readonly hands: string;
    /** A slider of the sketch. */
    readonly at: (lux: string) => string;
    readonly sketch: string;
    readonly modelCurve: string;
    readonly nodeOverLight: (points: readonly string[]) => string;
    readonly point: (lux: string, volts: string) => string;
  };
  readonly controls: {
    readonly heading: string;
    readonly none: string;
    readonly fitted: string;
    readonly source: string;
    readonly standsIn: string;
    readonly turned: (rotation: string) => string;
    readonly reference: (volts: string, rotation: string) => string;
    readonly handSays: (voice: VoiceId, share: string, lux: string) => string;
  };
  readonly present: {
    readonly projector: string;
    readonly projectorEnd: string;
    readonly notes: string;
    readonly notesBlocked: string;
    readonly notesNotProjected: string;
    readonly printNotes: string;
    readonly soundOn: string;
    readonly soundOff: string;
    readonly keysHeading: string;
    readonly keys: readonly KeyLine[];
    /** Names of the two that stand on buttons; and others in a word each, for the foot of the projected lesson. */
    readonly enterKey: string;
    readonly spaceKey: string;
    readonly shortKeys: readonly KeyLine[];
    readonly soundKey: (on: boolean) => KeyLine;
    readonly keysOn: string;
    readonly vibrate: string;
    readonly vibrateHint: string;
    readonly noVibrate: string;
    readonly now: string;
    readonly next: string;
    readonly last: string;
  };
  readonly handOver: {
    readonly heading: string;
    readonly text: string;
    readonly lesson: string;
    readonly anyLesson: string;
    readonly sound: string;
    readonly sounds: { readonly off: string; readonly muted: string; readonly on: string };
    readonly soundHint: string;
    readonly link: string;
    readonly code: string;
    readonly copy: string;
    readonly copied: string;
    readonly cannotCopy: string;
    readonly hosted: string;
    readonly hostedHint: string;
    readonly hostedWrong: (read: string) => string;
    readonly why: {
      readonly 'one file': string;
      readonly 'this computer only': string;
      readonly 'not secure': string;
    };
    readonly oneFile: string;
    readonly alsoOneFile: string;
    readonly insecure: string;
  };
  readonly sheets: {
    readonly heading: string;
    readonly text: string;
    readonly from: string;
    readonly count: string;
    readonly word: string;
    readonly wordHint: string;
    /** At the head of a sheet; '' = no word was chosen. */
    readonly of: (word: string, date: string) => string;
    readonly page: string;
    readonly kind: string;
    readonly kinds: { readonly sheets: string; readonly answers: string; readonly both: string };
    readonly size: string;
    readonly sizes: { readonly plain: string; readonly large: string };
    readonly print: string;
    readonly preview: (number: number) => string;
  };
}

export const classPage: ClassPageWords = spoken('class page', {
  heading: 'Lessons',
  intro:
    'Each lesson shows the same picture from light to tone. The class guesses first, then tries in the model, hears it, and sees what came out. For a first visit take “Why does a shadow stop it?”. Your own design is put aside meanwhile and comes back untouched.',
  begin: (title) => `Begin: ${title}`,
  goOn: (title, step, of) => `Go on: ${title}, step ${step} of ${of}`,
  short: { begin: 'Begin', goOn: (step, of) => `Go on at step ${step} of ${of}` },
  step: (step, of) => `step ${step} of ${of}`,
  depth: 'formulas',
  depths: { plain: 'in words', algebra: 'as algebra' },
  settings: 'For the one who presents',
  finished: 'The lesson is finished.',
  finishedText: 'Now the class can say:',
  freeText:
    'Everything may be touched. The lesson waits as it was left, and what you play with here is kept for this step, too.',
  announceStep: (step, of, title) => `Step ${step} of ${of}: ${title}`,
  announceFree: 'Free play. The lesson waits.',
  announceLesson: 'Back in the lesson, as it was.',
  picture: {
    name: 'From light to tone',
    hidden: 'not in this step',
    frozen: 'frozen',
    waits: 'waits for its turn',
    inWords: 'The picture in words',
    tools: 'Show, hide, freeze or step the picture',
    modes: { shown: 'shown', hidden: 'hidden', frozen: 'frozen' },
    slowed: 'slowed',
    hold: 'Hold the picture',
    letOn: (part) => `Let it on to: ${part}`,
    holdHint: 'Hold it, change the light, then let the change through part by part.',
    pause: 'Pause the slow cycle',
    run: 'Let the slow cycle run',
    moment: 'One moment on',
    above: (volts) => `above ${volts}`,
    below: (volts) => `below ${volts}`,
    crossing: (volts) => `crossing ${volts}`,
    never: 'nothing changes it',
    sounding: 'sounding',
    silent: 'silent',
    chattering: (perSecond) => `chattering, ${perSecond} times a second`,
    tone: (note, frequency) => `${note}, ${frequency}`,
    noTone: 'no tone',
    slowedBy: (factor) => `${factor} × slowed`,
  },
  guess: {
    slider: 'your place',
    mine: (lux) => `guess ${lux}`,
    pupil: (lux) => lux,
    model: (lux) => `model ${lux}`,
    hint: 'Move the slider, or press on the light axis.',
    add: 'Mark one pupil’s place',
    takeBack: 'Take it back',
    axis: (marks) =>
      `Light axis from dark to bright. ${marks.length === 0 ? 'No place yet.' : `${marks.join(', ')}.`}`,
    recap: (answer) => `The guess: ${answer}`,
    none: 'No guess was made.',
    hands: 'The box beside an answer takes the hands that went up for it, 0 to 99.',
    at: (lux) => `at ${lux}`,
    sketch: 'sketch',
    modelCurve: 'model',
    nodeOverLight: (points) =>
      `Volts of the node over the light, dark at the left. ${points.length === 0 ? 'Nothing sketched yet.' : `${points.join(', ')}.`}`,
    point: (lux, volts) => `${volts} at ${lux}`,
  },
  controls: {
    heading: 'To touch',
    none: 'Nothing to touch in this step: watch and listen.',
    fitted: 'fitted',
    source: 'light from',
    standsIn: 'Until the camera is on, this lamp and these hands stand in for it.',
    turned: (rotation) => `turned ${rotation}`,
    reference: (volts, rotation) => `reference ${volts}, turned ${rotation}`,
    handSays: (voice, share, lux) => `${share} over ${voice}, ${lux} at the sensor`,
  },
  present: {
    projector: 'Projector',
    projectorEnd: 'End projector',
    notes: 'Notes',
    notesBlocked: 'The browser did not open a second window. Here are the notes; they can also be printed.',
    notesNotProjected:
      'The browser did not open a second window, and here the class would read along. Press N again to go on, or P to leave the projector: then the notes stand on the page.',
    printNotes: 'Print the notes',
    soundOn: 'Sound on',
    soundOff: 'Sound off',
    keysHeading: 'Keys of the presenter',
    keys: [
      ['Enter, →, Page down', 'on: stand by the guess, show what came out, next step'],
      ['←, Page up', 'one step back'],
      ['Space', 'show what came out, also before the class has done it'],
      ['F', 'free play, and back to the lesson'],
      ['R', 'set this step up again'],
      ['N', 'notes in a second window'],
      ['P', 'projector on and off'],
      ['S', 'sound on and off'],
    ],
    enterKey: 'Enter',
    spaceKey: 'Space',
    shortKeys: [
      ['←', 'back'],
      ['F', 'free'],
      ['N', 'notes'],
      ['P', 'end'],
    ],
    soundKey: (on) => ['S', on ? 'sound off' : 'sound on'],
    keysOn:
      'These keys are on (a slider, box or list in focus keeps the keys it needs; Enter goes on from a slider or an answer)',
    vibrate: 'Let this device vibrate when a voice starts or stops',
    vibrateHint: 'One long for A, two short for B.',
    noVibrate: 'This device or browser cannot vibrate.',
    now: 'Now',
    next: 'Then',
    last: 'This is the last step.',
  },
  handOver: {
    heading: 'For the pupils’ devices',
    text: 'The same lesson on their own devices: open the link, or point a camera at the code.',
    lesson: 'lesson',
    anyLesson: 'the list of lessons',
    sound: 'sound',
    sounds: { off: 'off', muted: 'muted', on: 'on' },
    soundHint:
      'Off: cannot be switched on. Muted: silent until Sound on is pressed. On: the first press starts it.',
    link: 'Link',
    code: 'QR code of the link',
    copy: 'Copy this link',
    copied: 'Copied.',
    cannotCopy: 'This browser does not let the page copy. Mark the link and copy it.',
    hosted: 'This page is also served at',
    hostedHint: 'An https address that the pupils can reach.',
    hostedWrong: (read) =>
      `Read “${read}”, which is no https address. Accepted: https://school.example/lampnote/`,
    why: {
      'one file': 'This page was opened from a file, so there is no address to hand on.',
      'this computer only':
        'This page is served on this computer only: other devices cannot reach this address.',
      'not secure':
        'This page is served over plain http. Browsers give sound and camera only to secure addresses (https), so pupils would see the picture but hear nothing.',
    },
    oneFile:
      'Give them the page as one file instead. It plays when opened from a disk, a stick or a shared folder. Or serve the page over https and type its address here.',
    alsoOneFile: 'For computers without a network, as one file that plays when opened from a disk:',
    insecure:
      'At this address the browser allows neither sound nor camera. Pictures, words and lessons work; for the sound open the one file, or an https address.',
  },
  sheets: {
    heading: 'Hand-outs',
    text: 'Every pupil number has values of its own; the answers are worked out by the model.',
    from: 'first pupil number',
    count: 'how many sheets',
    word: 'class word',
    wordHint:
      'Any word (no names, please). The same word and number always give the same sheet; another word gives others.',
    of: (word, date) => `${word === '' ? '' : `Class word: ${word}. `}Printed ${date}.`,
    page: 'The lessons on your own device:',
    kind: 'print',
    kinds: { sheets: 'work sheets', answers: 'answer sheets', both: 'both' },
    size: 'letters',
    sizes: { plain: 'usual', large: 'large' },
    print: 'Print',
    preview: (number) => `How sheet ${number} looks`,
  },
});
