/** The lessons there are, in their line, and the design their steps are made from. */
import comparison from '../../presets/lessons/comparison.json' with { type: 'json' };
import duty from '../../presets/lessons/duty-and-timbre.json' with { type: 'json' };
import hysteresis from '../../presets/lessons/hysteresis-and-chatter.json' with { type: 'json' };
import ripple from '../../presets/lessons/lamp-ripple.json' with { type: 'json' };
import light from '../../presets/lessons/light-becomes-resistance.json' with { type: 'json' };
import firstCycle from '../../presets/lessons/the-first-cycle.json' with { type: 'json' };
import kits from '../../presets/lessons/thirty-kits.json' with { type: 'json' };
import room from '../../presets/lessons/this-very-room.json' with { type: 'json' };
import tone from '../../presets/lessons/tone-and-trimmer.json' with { type: 'json' };
import divider from '../../presets/lessons/two-resistors-share.json' with { type: 'json' };
import shadow from '../../presets/lessons/why-a-shadow-stops-it.json' with { type: 'json' };
import { DEFAULT_DESIGN } from '../design/defaults.ts';
import type { Design } from '../design/design.ts';
import { decodeLesson } from './decode.ts';
import type { Lesson } from './lesson.ts';

function lessonFrom(file: unknown): Lesson {
  const decoded = decodeLesson(file);
  if (!decoded.ok) throw new Error(`A lesson does not read: ${JSON.stringify(decoded.complaints)}`);
  return decoded.lesson;
}

const files: readonly unknown[] = [
  comparison,
  duty,
  hysteresis,
  ripple,
  light,
  firstCycle,
  kits,
  room,
  tone,
  divider,
  shadow,
];

export const LESSONS: readonly Lesson[] = files.map(lessonFrom).toSorted((a, b) => a.order - b.order);

/** Every step is made from this one design, so that a class meets one instrument. */
export const LESSON_DESIGN: Design = DEFAULT_DESIGN;
