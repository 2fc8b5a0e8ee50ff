/** What is said of the keeping of the design in this browser, in English. */
import { spoken } from './spoken.ts';

export const keepingWords = spoken('keeping', {
  refused:
    'This browser does not keep what you do (its storage is full or forbidden). Everything works on; save the design as a file before you close the page.',
  save: 'Save the design',
  close: 'Close this note',

  elsewhere:
    'Another tab has changed the design that this browser keeps. You still see yours; until you choose, both are kept.',
  theirs: 'Take the other tab’s',
  theirsStep: 'take the other tab’s design',
  mine: 'Keep mine',

  aside: (name: string) =>
    `Another design is laid aside in this browser: “${name}”, from another tab or from before another was opened.`,
  unread:
    'The design kept in this browser does not read, so the page began with another. What was kept is laid aside as it is.',
  open: 'Open it',
  saveAside: 'Save it as a file',
  asideFile: 'laid aside',
  letGo: 'Let it go',

  forget: {
    told: 'The design, the settings of the page and the language are kept in this browser, and nowhere else.',
    press: 'Forget everything on this device…',
    asks: 'Forget the design kept in this browser, everything laid aside, and the settings of the page? What you see stays until you close it; files you saved stay, too.',
    yes: 'Forget everything',
    no: 'Keep it',
    done: 'Forgotten: this browser keeps nothing of this page now. It keeps again as soon as you change something.',
    failed:
      'The browser did not let everything go. Look in its own settings for the data of this site, and remove it there.',
  },
} as const);
