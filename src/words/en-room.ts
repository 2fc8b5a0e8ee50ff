/** Words for describing a room in the place Room: readings, lamps, daylight, the recording, events. In English. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import { roomWords } from './room.ts';
import { spoken } from './spoken.ts';

const { lux, clock } = roomWords;
const SPACE = '\u00A0';

const roomTypes = {
  'entrance-hall': 'entrance hall',
  corridor: 'corridor',
  stairs: 'stairs',
  'lecture-hall': 'lecture hall',
  canteen: 'canteen',
  cloakroom: 'cloakroom',
  classroom: 'classroom',
  'art-room': 'art room',
  workshop: 'workshop',
  'technical-drawing': 'technical drawing',
  'electronics-assembly': 'electronics bench',
  'dressing-room': 'dressing room',
  'rehearsal-room': 'rehearsal room',
  foyer: 'foyer',
  'gallery-sensitive': 'gallery, delicate objects',
  'gallery-moderate': 'gallery',
  'living-room-evening': 'living room, evening',
  'escape-lighting': 'escape lighting only',
};

const lamps = {
  incandescent: 'filament lamp',
  halogen: 'halogen',
  'fluorescent-magnetic': 'fluorescent tube, magnetic ballast',
  'compact-magnetic': 'compact fluorescent, magnetic',
  'compact-electronic': 'compact fluorescent, electronic',
  'metal-halide': 'metal halide',
  'sodium-high-pressure': 'sodium, high pressure',
  'led-smooth': 'LED, smooth',
  'led-poor': 'LED, poor driver or dimmed by pulses',
  'led-rectified': 'LED, straight from the mains',
};

const events = {
  hand: 'a hand over the sensor',
  person: 'a person passing',
  card: 'a card with slots pulled past',
  lantern: 'a turning paper lantern',
  lid: 'a lid opened',
};

export const describeWords = spoken('room', {
  heading: 'Describe the room',
  step: (label: string) => `room: ${label}`,
  noNames: 'No names of people, please: the room’s kind and hours will do.',

  readings: {
    heading: 'Readings',
    hint: 'A lux meter or a phone flat on the sensor’s place, facing the way the sensor faces. One row is enough; rows at other hours, and one with the lamps off, tell lamps from daylight.',
    none: 'No light has been read yet.',
    add: 'Add a reading',
    addStep: 'reading',
    full: 'That is as many readings as are kept.',
    remove: (hour: number) => `Take away the reading of ${clock(hour)}`,
    removeShort: 'Take away',
    row: (hour: number) => `Reading of ${clock(hour)}`,
    hour: 'hour',
    level: {
      lit: (voice: string) => `${voice} lit`,
      shaded: (voice: string) => `${voice} shaded`,
      dark: (voice: string) => `${voice} lamps off`,
    },
    type: 'room type',
    noType: 'not chosen',
    types: roomTypes,
    typical: (value: number, source: string, fromMemory: boolean) =>
      `Typically ${lux(value)} with its lamps on (${source}${fromMemory ? ', from memory' : ''}). New lamps give about a quarter more.`,
    are: 'they are',
    kinds: { measured: 'measured in lux', guessed: 'a guess (camera, phone)' },
    opens: 'open from',
    closes: 'until',
    spacing: 'sensors apart',
  },

  lamps: {
    heading: 'Lamps',
    none: 'No lamp on the mains: light without ripple.',
    mains: 'mains',
    mainsNames: { 50: `50${SPACE}Hz`, 60: `60${SPACE}Hz` },
    lamp: 'lamp',
    names: lamps,
    share: 'share of the lamps’ light',
    add: 'Add a lamp',
    remove: 'Take away',
    removeLamp: (name: string) => `Take away ${name}`,
    full: 'Four kinds of lamp are enough.',
    ripple: (hertz: number, depth: number, index: string) =>
      `Together: ripple at ${formatFixed(hertz, 0)}${SPACE}Hz, ${formatShare(depth)} deep${index}.`,
    index: (min: number, max: number) =>
      `, flicker index ${min === max ? formatNumber(min, 2) : `${formatNumber(min, 2)} to ${formatNumber(max, 2)}`}`,
    verdict: {
      'no effect': 'People are not known to notice that (IEEE 1789-2015); the comparator may.',
      'low risk': 'Low risk for people (IEEE 1789-2015).',
      'above both':
        'More than IEEE 1789-2015 counts as low risk for people: see to the lamps, not only to the gate.',
    },
  },

  daylight: {
    heading: 'Daylight',
    comes: 'Daylight comes in',
    latitude: 'latitude',
    longitude: 'longitude',
    placeHint: 'Degrees, north and east positive; south and west with a minus. Half a degree is near enough.',
    noPlace: 'Type both, and the sun is known.',
    date: 'date',
    offset: 'clock ahead of UTC',
    zone: (zone: string, offset: string) => `Here (${zone}) that is ${offset} on that date.`,
    useZone: 'Use it',
    sky: 'sky',
    skies: { clear: 'clear', partly: 'partly cloudy', overcast: 'overcast', measured: 'measured' },
    outdoor: 'outdoors, in the open',
    outdoorHour: 'read at',
    factor: 'daylight factor',
    factorKinds: { typed: 'known', window: 'from the window' },
    share: 'indoors of outdoors',
    shareHint: 'A reading at the sensor over one outdoors under an overcast sky, lamps off.',
    glassArea: 'glass area',
    transmittance: 'glass lets through',
    maintenance: 'for dirt and frames',
    skyAngle: 'angle of sky seen',
    length: 'room length',
    width: 'room width',
    height: 'room height',
    reflectance: 'mean reflectance',
    comesTo: (share: number) =>
      `That comes to ${formatShare(share, share < 0.1 ? 1 : 0)} on average (BS 8206-2, wording from memory). Near the window it is several times that, at the back less.`,
    sun: (rise: number, noon: number, set: number) =>
      `Sun up at ${clock(rise)}, highest at ${clock(noon)}, down at ${clock(set)}.`,
    altitude: (degrees: number) => `At its highest it stands ${formatFixed(degrees, 0)}° high.`,
    band: 'A sky model is an average: an instant may have half or twice as much, so the chart carries that band.',
    narrowed: (darker: number, brighter: number) =>
      `The recording narrows the band to ${formatNumber(darker, 2)} to ${formatNumber(brighter, 2)} times.`,
  },

  log: {
    heading: 'A recorded day',
    hint: 'A log of a real day narrows the band of the daylight, counts the right minutes and the notes nobody meant. It plays in Listen, too.',
    start: 'first row at',
    known: (hour: number) => `The recording’s own clock begins at ${clock(hour)}.`,
    unknown: 'The recording tells no hour: type when it began.',
    take: 'Take readings from it',
    takeHint: 'One row for each open hour it covers, in place of the readings above.',
    takeStep: 'readings from the recording',
    share: (right: number, minutes: number, known: number) =>
      `Right in ${formatShare(right, 1)} of ${formatNumber(known, 5)} recorded minutes (${formatNumber(minutes, 5)} are open).`,
    phantoms: (a: number, b: number) =>
      `Changes that the room’s own light made: A ${formatNumber(a, 2)}, B ${formatNumber(b, 2)} an hour.`,
    chatter: (a: number, b: number) =>
      `Time spent chattering under the lamps: A ${formatNumber(a, 3)}${SPACE}s, B ${formatNumber(b, 3)}${SPACE}s.`,
  },

  event: {
    heading: 'What should gate',
    is: 'event',
    kinds: events,
    leaves: (share: number) =>
      `It leaves ${formatShare(share, share < 0.1 ? 1 : 0)} of the light at its deepest.`,
    fromReadings: (voice: string, share: number) =>
      `Sensor ${voice}: the readings say ${formatShare(share, share < 0.1 ? 1 : 0)}, and they count.`,
    tube: 'A tube around each sensor',
    bore: 'bore radius',
    depth: 'depth',
    phantoms: 'What must not',
    phantomsHint: 'Shadows that fall there all day: they must leave the voices as they are.',
    add: 'Add one',
    remove: (name: string) => `Take away ${name}`,
    removeShort: 'Take away',
    which: (number: number) => `Number ${number}`,
    none: 'Nothing else comes near the sensors.',
    full: 'Six are enough.',
    values: {
      heightMetres: 'height of the hand',
      roundShare: 'light from all round',
      lampDiameterMetres: 'lamp’s diameter',
      lampDistanceMetres: 'lamp to sensor',
      crossSeconds: 'crossing takes',
      left: 'light that is left',
      shadowMetres: 'shadow wide',
      softMetres: 'soft edge',
      metresPerSecond: 'pace',
      slots: 'slots',
      slotMetres: 'slot',
      gapMetres: 'bar between',
      apertureMetres: 'sensor opening',
      slotDegrees: 'slot, degrees',
      rpm: 'turns a minute',
      drumMetres: 'drum radius',
      sensorMetres: 'sensor from axle',
      filamentMetres: 'filament',
      apartDegrees: 'sensors apart, degrees',
      openSeconds: 'opening takes',
    },
  },

  field: {
    hour: (read: string) => `Read “${read}”. An hour of the clock is typed as 14:30, 14.5 or 2:30 pm.`,
    date: (read: string) => `Read “${read}”. A date is typed as 2026-06-21.`,
    clock,
    seconds: (value: number) => `${formatNumber(value, 4)}${SPACE}s`,
    degrees: (value: number) => `${formatNumber(value, 6)}°`,
    pace: (value: number) => `${formatNumber(value, 4)}${SPACE}m/s`,
    area: (value: number) => `${formatNumber(value, 4)}${SPACE}m²`,
    metres: (value: number) => formatQuantity(value, 'm', 4),
    hours: (value: number) => `${value < 0 ? '−' : ''}${formatNumber(Math.abs(value), 4)}${SPACE}h`,
    share: (value: number) => `${formatNumber(value * 100, 4)}${SPACE}%`,
    plain: (value: number) => formatNumber(value, 6).replaceAll('\u202F', ''),
    lux,
  },
} as const);
