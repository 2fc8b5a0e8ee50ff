/** All lists of words in German, by the names they are told under. Loaded when German is first chosen. */
import { germanBoard, germanIntervals } from './de-board.ts';
import { germanCautions } from './de-cautions.ts';
import { germanClassPage } from './de-class.ts';
import { germanLessons } from './de-lessons.ts';
import {
  germanLamps,
  germanLightLog,
  germanLink,
  germanLogs,
  germanScenes,
  germanTakes,
} from './de-listen.ts';
import { germanPage } from './de-page.ts';
import { germanWarnings, germanWho } from './de-warnings.ts';
import type { Lists } from './spoken.ts';

export const germanLists: Lists = {
  page: germanPage,
  scenes: germanScenes,
  lamps: germanLamps,
  logs: germanLogs,
  takes: germanTakes,
  'light log': germanLightLog,
  link: germanLink,
  warnings: germanWarnings,
  'warnings who': germanWho,
  cautions: germanCautions,
  dielectrics: germanBoard.dielectrics,
  'trimmer kinds': germanBoard.trimmerKinds,
  intervals: germanIntervals,
  'class page': germanClassPage,
  lessons: germanLessons,
};
