/** Words of the place Kit: its sheets, the order, the connection list, the board plan. In English. */
import { formatFixed, formatNumber, formatShare } from '../quantity/format.ts';
import type { Fraction, VoiceId } from '../quantity/units.ts';

const count = (n: number, one: string, many = `${one}s`): string =>
  `${formatNumber(n, 6)} ${n === 1 ? one : many}`;
export const millimetres = (value: number): string =>
  `${formatFixed(value, value % 1 === 0 ? 0 : 1)}\u00A0mm`;

export const kitViewWords = {
  why: 'Why',
  sheets: 'Sheets',
  sheetNames: {
    order: 'order list',
    connections: 'connection list',
    board: 'board plan',
    slip: 'test slip',
  },
  print: 'Print this sheet',
  printHint: 'Print at 100 %, not “fit to page”: where a ruler matters, a bar of 100 mm tells.',
  printed: (name: string, date: string) => `${name === '' ? 'Without a name' : name} · ${date}`,
  link: 'Opens this design:',
  qr: 'The same link as a code for a camera',
  checkBar: 'This bar is 100 mm long. If it is not, print at 100 %.',
  accept: {
    whole: 'a whole number, such as 30',
    price: 'a price, such as 1.90',
    none: 'nothing',
  },

  order: {
    heading: (kits: number) => `Order list for ${count(kits, 'kit')}`,
    why: [
      'What to buy, and how many, so that nobody sits without a part.',
      'Parts get lost, bent and broken. The spares follow from your loss rates: the whole basket is enough with a chance of 99 % or more.',
      'Write down what you have, what a pack holds and what it costs; the rest follows.',
    ],
    kits: 'kits',
    region: 'handed out in',
    regions: { eu: 'the European Union', uk: 'the United Kingdom', elsewhere: 'another country' },
    sockets: 'chips in sockets',
    losses: 'What gets lost or spoilt',
    lossHint: 'Judgement, not measurement: put your own figures here after the first class.',
    csv: 'Save as CSV',
    csvName: (name: string) => `${name} order`,
    caption:
      'Alternates were put into this design and the model asked again. The chance of each line is for that line alone.',
    heads: [
      'Part',
      'Per kit',
      'Needed',
      'To have',
      'In stock',
      'Pack of',
      'Packs to buy',
      'Price of a pack',
      'Cost',
    ],
    used: (uses: string) => `For: ${uses}.`,
    match: (text: string) => `Must match: ${text}.`,
    vary: (text: string) => `May vary: ${text}.`,
    stock: (name: string) => `In stock: ${name}`,
    pack: (name: string) => `Pack of: ${name}`,
    price: (name: string) => `Price of a pack: ${name}`,
    step: (what: string) => `order: ${what}`,
    more: (name: string) => `Look closer: ${name}`,
    moreShort: 'Look closer',
    enough: (chance: Fraction) => `Chance that this is enough: ${formatShare(chance, 2)}.`,
    hopeless: 'At this loss rate no number is safe: lower the rate.',
    alternates: 'Instead of it',
    noAlternates: 'No alternate is worked out for this line.',
    basket: (chance: Fraction) => `Chance that nothing at all runs short: ${formatShare(chance, 1)}`,
    total: (cost: number) => `Total: ${formatFixed(cost, 2)}`,
    unpriced: (lines: number) => `${count(lines, 'line')} without a price`,
    noPrices: 'No prices written down yet.',
    cautions: 'Before you order',
  },

  check: {
    bandsFive: 'five bands, 1 %',
    bandsFour: 'four bands, 5 %',
    bandsSix: 'six bands, 1 % and 50 ppm/K',
    bandsLabel: (words: string, bands: string) => `${words}: ${bands}`,
    notOnFour: 'Four bands cannot say this value.',
    typedBands: 'Bands you see, one after another',
    typedBandsHint: 'Such as “brown red black red brown”. Then press Enter.',
    code: (code: string) => `Printed as ${code}.`,
    codeHint: 'What is printed on it, such as 683K, 104 or 47n. Then press Enter.',
    typedCode: 'Printing you see',
    noCode: (read: string) => `“${read}” is no capacitor code that can be read.`,
    polarity: {
      electrolytic: 'Polarity matters: the stripe and the shorter leg are minus.',
      diode: 'Polarity matters: the band is the cathode, the end the current leaves by.',
      chip: 'The notch, or the dot, marks the end of pin 1. Reversed, it gets hot at once.',
      lead: 'Red is plus, black is minus. Look twice before you connect.',
      none: 'Fits either way round.',
    },
  },

  connections: {
    why: [
      'Every joint of the circuit, by chip pin and part lead.',
      'The board plan is checked against this list before it is shown; so can your board be, with a meter that beeps.',
    ],
    nets: 'What joins what',
    netHeads: ['Net', 'Joins'],
    parts: 'Parts',
    partHeads: ['Part', 'Value', 'What it is for', 'Leads and their nets'],
    points: 'Test pins',
    pointHeads: ['Pin', 'Net'],
    save: 'Save as text',
    saveName: (name: string) => `${name} connections`,
    count: (nets: number, joints: number, parts: number) =>
      `${count(nets, 'net')}, ${count(joints, 'lead')}, ${count(parts, 'part')}.`,
  },

  board: {
    heading: { component: 'Board plan, component side', copper: 'Board plan, copper side' },
    why: [
      'A plan worked out from the connection list, and read back from its own holes, leads, links and cuts before it is shown.',
      'Holes are counted from the marked corner. Strips have letters, without I and O; holes along them have numbers.',
    ],
    whyCopper: 'The copper side is mirrored: this is the board turned over, as you see it when you solder.',
    planning: 'The board is being planned…',
    replanning: 'Being planned anew…',
    sides: { component: 'component side', copper: 'copper side' },
    side: 'Seen from the',
    only: 'Stand out',
    onlys: { all: 'all alike', cuts: 'cuts', links: 'links', parts: 'parts' },
    options: 'Board',
    size: 'size',
    fit: 'a piece cut to fit',
    sizeName: (strips: number, holes: number) => `${strips} strips of ${holes} holes`,
    free: 'keep this hole free',
    freeHint: 'Such as C7: no lead, no cut, nothing over it. Then press Enter.',
    freeBad: (read: string) =>
      `Read “${read}”. Accepted: a strip’s letter and a hole’s number, such as C7, on the board.`,
    kept: 'Kept free:',
    giveBack: (name: string) => `Use ${name} again`,
    step: (what: string) => `board: ${what}`,
    figure: (strips: number, holes: number, cuts: number, links: number, height: string, width: string) =>
      `${strips} strips of ${holes} holes (${width} by ${height}), ${count(cuts, 'cut')}, ${count(links, 'link')}. Nets read back from this plan equal the connection list. Figures beside links are their length in mm.`,
    pictureLabel: {
      component: 'Board seen from the component side',
      copper: 'Board seen from the copper side, mirrored',
    },
    corner: 'marked corner',
    joint: 'Joint',
    jointText: (place: number, all: number, text: string) => `Joint ${place} of ${all}: ${text}`,
    lead: (name: string, hole: string, net: string) => `${name} in ${hole}, net ${net}`,
    linkEnd: (id: string, hole: string, net: string) => `link ${id} in ${hole}, net ${net}`,
    jointHint:
      'Arrow keys step through the joints in the order they are soldered; Home and End go to the first and the last.',
    cutHeads: ['Cut at', 'Where'],
    linkHeads: ['Link', 'From', 'To', 'Length', 'Net'],
    partHeads: ['Part', 'Value', 'Holes', 'How it sits'],
    widenHeads: ['Hole', 'For', 'Widen to'],
    cutList: 'Cuts',
    linkList: 'Links',
    partList: 'Parts in their holes',
    widenList: 'Holes to widen',
    stances: {
      flat: 'lies flat',
      upright: 'stands upright',
      standing: 'stands',
      chip: 'across its cuts',
      edge: 'at the edge',
      pin: 'pin',
    },
    standsOn: (hole: string) => `body over ${hole}`,
    plusAt: (hole: string) => `plus in ${hole}`,
    bandAt: (hole: string) => `band toward ${hole}`,
    pin1At: (hole: string) => `pin 1 in ${hole}, notch toward strip A`,
    wiperAt: (hole: string) => `wiper in ${hole}`,
    pair: 'Print both sides on one sheet, turned over on its long edge: the two outlines lie on each other.',
    actual: 'At its own size (1 : 1)',
    larger: 'Larger, to read',
    mirroredNote: 'Mirrored: the board turned over about its long edge of the sheet.',
  },

  slip: {
    heading: 'Test slip',
    why: [
      'What a meter should show on this very design, and how far off a healthy board may be.',
      'Black probe on TP0, red probe on the point. Type what you read: it is judged at once, and written into the log of this kit.',
      'Once you have typed the rail, everything is told for that rail.',
    ],
    kit: 'kit number',
    lit: 'light on an open sensor',
    shaded: 'on a shaded sensor',
    lux: 'lx',
    rail: (volts: string) => `Told for a rail of ${volts}.`,
    caption: 'Readings of this board',
    heads: ['Where', 'Should be', 'Healthy between', 'You read', 'Judged'],
    reading: (where: string) => `Reading: ${where}`,
    step: (where: string) => `reading at ${where}`,
    unread: (read: string) =>
      `Read “${read}”, which is no reading. Accepted: 1.54, 1,54 V, 760 mV, 15 mA or 220 Hz.`,
    good: (good: number, all: number) => `${good} of ${all} read so far are good.`,
    none: 'Nothing read yet.',
    clear: 'Take all readings of this kit away',
  },

  refusal: {
    heading: 'No board plan',
    'part missing': (ref: string) => `${ref} is not made with leads in this value and kind.`,
    'board too small': (needs: string, has: string) => `The plan needs ${needs}; the board has ${has}.`,
    'in the way': (ref: string) => `The holes kept free leave no place for ${ref}.`,
    'net impossible': (names: string) => `No arrangement was found that joins ${names}.`,
    'not proved': 'The plan that was found does not read back as the connection list, so it is not shown.',
    change: {
      board: (size: string) => `Smallest change that helps: a board of ${size}.`,
      capacitor: (ref: string, to: string) => `Smallest change that helps: ${ref} as ${to}.`,
      'free hole': (hole: string) => `Smallest change that helps: let ${hole} be used.`,
      effort: 'Smallest change that helps: try more arrangements.',
    },
    take: {
      board: 'Take that board',
      'free hole': 'Let it be used',
      effort: 'Try more',
    },
  },

  body: {
    chip: (pins: number) => `${pins} pins`,
    cell: 'light cell',
    jack: 'jack',
    diode: 'Schottky',
  },
  voice: (voice: VoiceId) => `voice ${voice}`,
} as const;

const PREFIXES: readonly (readonly [number, string])[] = [
  [1e6, 'M'],
  [1e3, 'k'],
  [1, ''],
  [1e-3, 'm'],
  [1e-6, 'µ'],
  [1e-9, 'n'],
  [1e-12, 'p'],
];

/** A value as it is printed on parts, the prefix in the place of the decimal point: `3k9`, `12k`, `68n`, `470`. */
export function shortValue(value: number): string {
  const [scale, prefix] = PREFIXES.find(([size]) => value >= size * 0.99999) ?? [1, ''];
  const text = formatFixedShort(value / scale);
  return text.includes('.') ? (prefix === '' ? text : text.replace('.', prefix)) : `${text}${prefix}`;
}

const formatFixedShort = (value: number): string => String(Number(value.toPrecision(4)));
