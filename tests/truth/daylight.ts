/** Rows about daylight: the sun's place, the skies, the share that comes in, and the middle between two lights. */
import { averageDaylightFactor } from '../../src/light/daylight.ts';
import { extraterrestrialLux, genskyBeamLux, outdoors } from '../../src/light/sky.ts';
import { refraction, sunAt, sunCourse } from '../../src/light/sun.ts';
import { windowsFor } from '../../src/plan/window.ts';
import { designWith } from '../circuit/building.ts';
import { CALM, levels } from '../plan/rooms.ts';
import type { Evaluators, Inputs } from './rows.ts';

const dayOf = (inputs: Inputs, utcOffset: number) => ({
  place: { latitude: inputs.number('latitude'), longitude: inputs.number('longitude') },
  date: inputs.text('date'),
  utcOffset,
});

export const daylight: Evaluators = {
  'sun position': (inputs) => ({ ...sunAt(dayOf(inputs, 0), inputs.number('utcHour')) }),
  refraction: (inputs) => ({ lift: refraction(inputs.number('trueAltitude')) }),
  "sun's day": (inputs) => {
    const course = sunCourse(dayOf(inputs, inputs.number('utcOffset')));
    if (course.kind !== 'rises') throw new Error(course.kind);
    return { rise: course.rise, noon: course.noon, set: course.set };
  },

  skies: (inputs) => {
    const altitude = inputs.number('altitude');
    const clear = outdoors('clear', altitude);
    return {
      clear: clear.skyLux,
      partly: outdoors('partly', altitude).skyLux,
      overcast: outdoors('overcast', altitude).skyLux,
      beam: clear.beamLux,
      total: clear.totalLux,
    };
  },
  'sun outside the air': (inputs) => {
    const day = inputs.number('dayOfYear');
    return {
      outside: extraterrestrialLux(day),
      beam: outdoors('clear', inputs.number('altitude'), day).beamLux,
    };
  },
  'gensky beam': (inputs) => ({ beam: genskyBeamLux(inputs.number('altitude')) }),
  'partly cloudy beam': (inputs) => ({ beam: outdoors('partly', inputs.number('altitude')).beamLux }),
  twilight: (inputs) => ({ lux: outdoors('clear', inputs.number('altitude')).skyLux }),

  'daylight factor': (inputs) => {
    const factor = averageDaylightFactor({
      glassArea: inputs.number('glassArea'),
      transmittance: inputs.number('transmittance'),
      maintenance: inputs.number('maintenance'),
      skyAngle: inputs.number('skyAngle'),
      length: inputs.number('length'),
      width: inputs.number('width'),
      height: inputs.number('height'),
      reflectance: inputs.number('reflectance'),
    });
    return { percent: 100 * factor, lux: factor * inputs.number('outdoorLux') };
  },
  'daylight share': (inputs) => ({
    lux: inputs.number('share') * outdoors('overcast', inputs.number('altitude')).skyLux,
  }),

  // A plain comparator set as recommended tips in that light.
  'middle light': (inputs) => {
    const design = designWith({ voices: { hysteresisOhms: null } });
    const [answer] = windowsFor(design, levels(inputs.number('lit'), inputs.number('shade')), CALM);
    if (answer?.kind !== 'window') throw new Error('There is a window.');
    return { lux: answer.recommended.trips.A.upper };
  },
};
