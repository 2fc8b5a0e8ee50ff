/** Words for what the place Room answers: the setting, the day's chart, parts, batch, cell, card, meter, sound. In English. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import type { Pair, VoiceId } from '../quantity/units.ts';
import { legible } from './excerpt.ts';
import { roomWords } from './room.ts';
import { spoken } from './spoken.ts';

const { lux, clock } = roomWords;
const SPACE = '\u00A0';
const volts = (value: number): string => formatFixed(value, 2, 'V');
const ohms = (value: number | null): string => (value === null ? 'none' : formatQuantity(value, 'Ω', 3));
const times = (value: number): string => {
  if (value > 99) return `over 99${SPACE}×`;
  // Near 1 the second decimal tells right from wrong.
  const decimals = value < 1.1 ? 2 : value < 10 ? 1 : 0;
  return `${formatFixed(value, decimals)}${SPACE}×`;
};
const percent = (value: number): string => {
  // A share that is not whole never reads as if it were.
  if (value > 0.995 && value < 1) return `over 99${SPACE}%`;
  if (value > 0 && value < 0.005) return `under 1${SPACE}%`;
  return formatShare(value);
};
const milliseconds = (seconds: number): string =>
  seconds >= 1 ? `${formatNumber(seconds, 3)}${SPACE}s` : `${formatNumber(seconds * 1000, 2)}${SPACE}ms`;
const chatter = (hertz: number): string =>
  hertz < 1 / 3600
    ? 'none'
    : hertz < 0.1
      ? `${formatNumber(hertz * 3600, 2)} an hour`
      : `${formatNumber(hertz, 2)} a second`;

const STATES = { right: 'right', marginal: 'marginal', wrong: 'wrong', unknown: 'not known' } as const;

export const answerWords = spoken('room answer', {
  why: {
    heading: 'Why',
    question: 'Where must the threshold stand in that room, and until when does it hold?',
    nothing:
      'A voice is gated by the ratio of two lights: the sensor lit, and the sensor under the event’s shadow. Read both once, and the volts to set follow.',
    between: (lit: string, shade: string) =>
      `The threshold must lie between ${shade}, the brightest shade of the day, and ${lit}, its least light.`,
    band: 'The grey band is the light at the sensors, from half to double the sky model. The dotted band below is the event’s shadow in it.',
    crossed: (lit: string, shade: string) =>
      `The day’s brightest shade is ${shade}, its least light ${lit}: no one threshold lies between them.`,
    alike: 'Without daylight every hour is like the other: the light is what was read.',
    betweenAlike: (lit: string, shade: string) =>
      `The threshold must lie between ${shade}, the shade, and ${lit}, the light.`,
    crossedAlike: (lit: string, shade: string) =>
      `The shade is ${shade}, the light ${lit}: no one threshold lies between them.`,
    steady: 'Without daylight the light follows the readings alone.',
    holds: 'One setting holds all day.',
    resets: (hours: readonly number[]) =>
      `One setting does not hold all day: set again at ${hours.map(clock).join(', ')}.`,
    none: 'At some hours no setting will do: the brightest shade is brighter than the least light, or beyond what the trimmer reaches.',
    relative: 'The readings are a guess: trust the ratios and the “just on” way, not the volts.',
    ripple: (depth: number) =>
      `The lamps ripple ${formatShare(depth)} deep; the cell smooths most of it, hysteresis must cover the rest.`,
  },

  title: {
    hours: (from: number, to: number) =>
      clock(from) === clock(to) ? 'day and night' : `${clock(from)} to ${clock(to)}`,
    room: 'The room',
    change: 'change',
    lamp: (hertz: number, depth: number) =>
      `ripple ${formatShare(depth)} at ${formatFixed(hertz, 0)}${SPACE}Hz`,
    noLamp: 'no ripple',
    noDaylight: 'no daylight',
    tooFew: 'not read yet',
  },

  set: {
    heading: 'Set it to',
    unanswered:
      'Type the lux with nothing in the way, and with the shadow on the sensor: the setting follows at once.',
    later: 'Follows once there is a reading.',
    shared: 'both voices',
    own: (voice: VoiceId) => `trimmer ${voice}`,
    from: (hour: number) => `from ${clock(hour)}`,
    volts,
    about: (value: number) => `about ${volts(value)}`,
    place: (rotation: number, turns: number, of: number) =>
      of > 1
        ? `${formatShare(rotation)} of the way, ${formatNumber(turns, 3)} of ${formatNumber(of, 3)} turns from the stop`
        : `${formatShare(rotation)} of the turn from the stop`,
    share: (rotation: number) => formatShare(rotation),
    noWindow: 'No setting suits all the hours. The nearest:',
    noneThen: 'no setting will do',
    take: 'Take this setting',
    taken: 'The trimmers stand there now.',
    takeStep: 'setting for the room',
    margins: {
      lit: 'the light may fall by',
      shade: 'the shade may grow by',
      ripple: 'clear of the ripple by',
      noRipple: 'no ripple',
      inRipple: 'not clear of it',
      contrast: 'lit over shaded, at worst',
      window: 'window',
      trips: 'counts as light above, as shade below',
    },
    window: (low: number, high: number) => `${volts(low)} to ${volts(high)}`,
    trips: (upper: number, lower: number) =>
      Math.abs(upper - lower) < 0.02 * upper ? lux(upper) : `${lux(upper)}, ${lux(lower)}`,
    times,
    outlook: {
      chatter: 'chatter at the trip point',
      settable: 'kits that can be set',
      mark: 'kits right at one common mark',
      phantoms: 'what must not gate, and does',
      gating: (count: number, of: number) => (of === 0 ? 'nothing named' : `${count} of ${of}`),
      recorded: 'recorded minutes right',
      changes: 'notes nobody meant, A and B',
      anHour: (a: number, b: number) => `${formatNumber(a, 2)} and ${formatNumber(b, 2)} an hour`,
    },
    edges: 'What bounds the window',
    remedies: 'What would help',
    stored: (share: number) => `Through the open hours: ${percent(share)} of the time right.`,
    now: (share: number) => `As the trimmers stand now: ${percent(share)} of the time right.`,
    turnTo: (volts_: number) => `wiper unloaded ${volts(volts_)}`,
  },

  chart: {
    heading: 'Through the day',
    shown: 'setting',
    ways: { recommended: 'recommended', now: 'as it stands', resets: 'set again in between' },
    sensor: 'sensor',
    axis: 'lux at the sensors',
    axisOf: (voice: VoiceId) => `lux at sensor ${voice}`,
    lit: 'lit',
    shaded: 'shaded',
    threshold: (upper: number, lower: number) =>
      Math.abs(upper - lower) < 0.02 * upper
        ? `threshold ${lux(upper)}`
        : `threshold ${lux(lower)} to ${lux(upper)}`,
    thresholdShort: (upper: number, lower: number) =>
      Math.abs(upper - lower) < 0.02 * upper ? lux(upper) : `${lux(lower)} to ${lux(upper)}`,
    states: STATES,
    run: (state: keyof typeof STATES, from: number, to: number) =>
      `${clock(from)} to ${clock(to)} ${STATES[state]}`,
    summary: (low: string, high: string, runs: readonly string[]) =>
      `Light at the sensors from ${low} to ${high}; ${runs.join(', ')}.`,
    figure: (right: number, way: 'recommended' | 'now' | 'resets', sets: number) => {
      const how =
        way === 'now'
          ? 'as the trimmers stand'
          : way === 'recommended'
            ? 'with the recommended setting'
            : sets <= 1
              ? 'with one setting'
              : `set ${sets} times`;
      return `Light through the day against the threshold. ${how[0]!.toUpperCase()}${how.slice(1)}, ${percent(right)} of the minutes are right.`;
    },
    legend: 'Right: the whole band gates. Marginal: only its middle does. Wrong: not even that.',
    cursor: 'Hour',
    cursorHint: 'Left and right arrow move through the day.',
    moment: (
      hour: number,
      { low, high }: { readonly low: number; readonly high: number },
      shade: number,
      state: keyof typeof STATES,
    ) =>
      `${clock(hour)}: ${low < 0.98 * high ? `${lux(low)} to ${lux(high)}` : lux(high)} lit, up to ${lux(shade)} shaded. ${STATES[state][0]!.toUpperCase()}${STATES[state].slice(1)}.`,
    table: 'Table of the day',
    heads: ['hour', 'lit, least', 'lit, middle', 'lit, most', 'shade, most', 'gates'],
    row: (
      hour: number,
      { low, middle, high }: { low: number; middle: number; high: number },
      shade: number,
      state: keyof typeof STATES,
    ) => [clock(hour), lux(low), lux(middle), lux(high), lux(shade), STATES[state]],
    changes: 'When it changes',
    change: (hour: number, state: keyof typeof STATES) => `${clock(hour)}, ${STATES[state]}`,
    noChange: 'Nothing changes all day.',
    reset: (hour: number) => `set again at ${clock(hour)}`,
    hour: (hour: number) => clock(hour),
    empty: 'The day is drawn once there is a reading.',
  },

  parts: {
    heading: 'Parts for this room',
    working: 'Working it out…',
    failed: 'That did not come to an end. Change any value to try again.',
    heads: ['', 'A', 'B'],
    hysteresis: 'hysteresis',
    hysteresisOf: (ohmsNow: number | null, low: number, high: number) =>
      ohmsNow === null ? 'none fitted' : `${ohms(ohmsNow)}: ${lux(low)} to ${lux(high)}`,
    chatter: 'chatter at the trip point',
    chatterOf: chatter,
    advice: 'advice',
    enough: 'enough as it is',
    fit: (value: number | null, ratio: number) =>
      `fit ${ohms(value)} (${formatNumber(ratio, 3)} between start and stop)`,
    tooMuch: (ratio: number, contrast: number) =>
      `no resistor calms it: it would take ${times(ratio)}, the event gives ${times(contrast)}. See to the lamps, or deepen the shadow`,
    divider: 'divider resistor',
    dividerOf: (value: number, cell: 'top' | 'bottom') =>
      `${ohms(value)}, cell ${cell === 'top' ? 'above' : 'below'} it`,
    mean: 'geometric mean of the cell lit and shaded',
    degrees: 'trimmer between lit and shade',
    degreesOf: (degrees: number) => `${formatFixed(degrees, 0)}° of turn`,
    lost: (share: number) => `, ${percent(share)} lost to the comparator’s range or a stop`,
    better: (value: number, cell: 'top' | 'bottom', degrees: number) =>
      `${ohms(value)} with the cell ${cell === 'top' ? 'above' : 'below'} it would give ${formatFixed(degrees, 0)}°`,
    keep: 'keep it',
    fitButton: (voice: VoiceId) => `Fit it for ${voice}`,
    fitStep: (voice: VoiceId) => `parts of ${voice} for the room`,
    gains: 'What would gain',
    contrast: (now: number, then: number) => `lit over shaded ${times(now)} becomes ${times(then)}`,
    tube: (bore: number, depth: number, contrast: string, left: number) =>
      `A tube of ${formatFixed(bore * 1000, 0, 'mm')} bore, ${formatFixed(depth * 1000, 0, 'mm')} deep, in light from all round, by geometry and not by the readings: ${contrast}; ${percent(left)} of the light is left.`,
    lamp: (candela: number, metres: number, more: number, contrast: string) =>
      `A lamp of its own, ${formatNumber(candela, 2)}${SPACE}cd at ${formatFixed(metres * 100, 0, 'cm')}, hidden by the event: ${lux(more)} more, ${contrast}.`,
    enoughContrast: 'The contrast needs no lamp of its own.',
    sharing: (canShare: boolean) =>
      canShare
        ? 'One shared trimmer can serve both sensors.'
        : 'One shared trimmer cannot serve both sensors: give each its own.',
  },

  timing: {
    heading: 'In time',
    note: 'shortest note',
    gap: 'shortest gap',
    fastest: 'fastest in turns',
    longer: 'note against light',
    heard: 'one pass is heard for',
    length: milliseconds,
    rate: (hertz: number) => `${formatNumber(hertz, 2)} a second`,
    longerBy: (seconds: number) =>
      Math.abs(seconds) < 0.0005
        ? 'as long'
        : seconds > 0
          ? `${milliseconds(seconds)} longer`
          : `${milliseconds(-seconds)} shorter`,
    every: 'passes',
    works: { true: 'each one gates', false: 'not every one gates' },
    silent: 'does not answer',
    order: (seconds: number | null) =>
      seconds === null
        ? 'Both at once, or only one of them.'
        : Math.abs(seconds) < 0.002
          ? 'A and B together.'
          : `${seconds > 0 ? 'A' : 'B'} first, ${seconds > 0 ? 'B' : 'A'} ${milliseconds(Math.abs(seconds))} later.`,
    phantom: (name: string, number: number) => `${number}. ${name}`,
    verdict: (
      verdict:
        | { readonly kind: 'too shallow'; readonly margin: number }
        | { readonly kind: 'too short'; readonly seconds: number; readonly neededSeconds: number }
        | { readonly kind: 'gates'; readonly margin: number },
    ) => {
      switch (verdict.kind) {
        case 'too shallow':
          return `stays clear by ${times(verdict.margin)}`;
        case 'too short':
          return `too quick: ${milliseconds(verdict.seconds)}, it takes ${milliseconds(verdict.neededSeconds)}`;
        case 'gates':
          return 'gates, though it must not';
      }
    },
  },

  batch: {
    heading: 'For the batch',
    kits: 'kits drawn',
    kitsHint: 'Drawn to find the shares below, however many are built: more draws, surer shares.',
    seed: 'seed',
    spread: 'parts lie',
    spreads: {
      uniform: 'anywhere within tolerance',
      'two-sigma': 'bell-shaped, tolerance = 2 σ',
      'three-sigma': 'bell-shaped, tolerance = 3 σ',
    },
    resistors: 'resistors ±',
    offset: 'comparator offset ±',
    progress: (share: number) => `Drawing kits, ${formatShare(share)}`,
    progressName: 'Kits drawn',
    stop: 'Stop',
    again: 'Draw again',
    stopped: 'Stopped. What is shown is from before.',
    anew: 'A fault broke the drawing off; it has begun anew by itself.',
    failed: 'A fault broke the drawing off. What is shown is from before.',
    heads: ['', 'cells as they come', 'sorted into three'],
    settable: 'can be set, each by itself',
    comfortable: 'with room for hysteresis to spare',
    mark: 'right at one common mark',
    markAt: 'the mark',
    spreadOf: 'right places, 90 of 100 kits',
    percent,
    marks: (marks: readonly number[]) => marks.map((mark) => formatShare(mark)).join(' / '),
    places: (low: number, high: number) => `${formatShare(low)} to ${formatShare(high)} of the turn`,
    gain: (each: number, mark: number, sorted: number) =>
      each === 0
        ? 'Not one kit can be set in these hours: see what would help.'
        : each - mark < 0.005
          ? 'One common mark does for every kit that can be set: mark the panel and be done.'
          : `Setting each kit by itself instead of at a common mark: ${percent(mark)} become ${percent(each)}. Sorting the cells into three lots, each with a mark of its own: ${percent(sorted)}.`,
    strip: 'Where the right place of the trimmer lies',
    stripSummary: (p5: number, p50: number, p95: number) =>
      `Of a hundred kits ninety are right between ${formatShare(p5)} and ${formatShare(p95)} of the turn, the middle one at ${formatShare(p50)}.`,
  },

  cell: {
    heading: 'The real cell',
    hint: 'Read a cell in two lights or more: its ohms out of the circuit, or the volts at its node in the circuit. The curve through them takes the place of the maker’s.',
    which: 'cell of',
    read: 'read as',
    kinds: { ohms: 'lux and ohms', volts: 'lux and node volts' },
    lux: 'light',
    ohms: 'resistance',
    volts: 'node',
    add: 'Add this reading',
    step: (voice: VoiceId) => `cell of ${voice}`,
    remove: (n: number) => `Take away reading ${n}`,
    removeShort: 'Take away',
    row: (value: number, reading: string) => `${lux(value)}: ${reading}`,
    tooFew: (count: number) =>
      count === 0 ? 'No cell was read yet.' : 'One more reading, in another light, and the curve is known.',
    oneLight: (value: number, r: number) =>
      `All in one light: ${ohms(r)} at ${lux(value)}. Read it in a light three times as bright or dark, too.`,
    wrongWay: 'More light reads as more ohms: are two readings interchanged, or the leads on the other part?',
    impossible: (n: number) =>
      `Reading ${n} is beyond what any cell gives at that node. Check the rail and the legs.`,
    fit: (r10: number, r10Share: number, gamma: number, deviation: number) =>
      `${ohms(r10)} ± ${percent(r10Share)} at 10${SPACE}lx, slope ${formatFixed(gamma, 2)} ± ${formatFixed(deviation, 2)}`,
    from: {
      residuals: 'The uncertainty is from how far the readings lie off the line.',
      meter: 'The uncertainty is a hand-held lux meter’s, 5 % (common practice).',
    },
    outside: 'That is outside the maker’s grade: another type, or the meter is off.',
    use: 'Use this cell',
  },

  card: {
    heading: 'Setting-up card',
    at: 'set up at',
    print: 'Print the card',
    for: (name: string) => legible(name) || 'Instrument without a name',
    on: (date: string | null, from: number, to: number) =>
      `${date === null ? '' : `${date}, `}${clock(from)} to ${clock(to)}`,
    printed: (date: string) => `printed ${date}`,
    empty: 'The card is written once there is a reading.',
    tools: 'A voltmeter, a small screwdriver, something to make the shadow with.',
  },

  meter: {
    heading: 'At the bench',
    hint: 'Meter between 0 V and the trimmer’s wiper, both sensors lit. Type what it says.',
    reads: { shared: 'the meter reads', own: (voice: VoiceId) => `trimmer ${voice} reads` },
    hour: 'it is now',
    restAlike: (holds: boolean) =>
      holds ? 'As you read it, it holds all day.' : 'As you read it, it is wrong all day.',
    rest: (share: number, from: number) =>
      share === 1
        ? `As you read it, it holds from ${clock(from)} to closing.`
        : `As you read it, ${percent(share)} of the time from ${clock(from)} to closing is right.`,
    closed: 'Nothing is open after that hour.',
    breaks: (hour: number) => `It goes wrong at ${clock(hour)}.`,
  },

  hear: {
    heading: 'Hear it',
    pieces: {
      day: 'The day in a minute',
      margin: 'The event, well set and at the margin',
      chatter: 'Chatter, and hysteresis growing',
    },
    hints: {
      day: 'The open hours in a minute with the setting shown above; a shadow over A, then B, every two seconds.',
      margin: 'Four passes in your room’s light, then four with the light just past the trip points.',
      chatter: 'One slow pass under your lamps without hysteresis, then with 2.2 MΩ, 680 kΩ and 270 kΩ.',
    },
    stop: 'Stop',
    now: {
      day: (hour: number) => `Now ${clock(hour)}.`,
      margin: (isGood: boolean) => (isGood ? 'Well inside.' : 'At the margin.'),
      chatter: (value: number | null) => (value === null ? 'No hysteresis.' : `Hysteresis ${ohms(value)}.`),
    },
  },

  lux,
  ohms,
  date: (date: string): string =>
    new Intl.DateTimeFormat('en-GB', {
      day: 'numeric',
      month: 'long',
      year: 'numeric',
      timeZone: 'UTC',
    }).format(new Date(`${date}T00:00:00Z`)),
  list: (parts: readonly string[]): string => parts.join(' · '),
  pair: (label: string, voices: Pair<string>) => `${label}: A ${voices.A}, B ${voices.B}`,
} as const);
