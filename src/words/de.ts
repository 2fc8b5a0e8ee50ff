/** All lists of words in German, by the names they are told under. Loaded when German is first chosen. */
import { germanAbout } from './de-about.ts';
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
import { dielectricNames, intervalNames, pitch, trimmerNames } from './de-pitch.ts';
import { pitchFound } from './de-pitch-found.ts';
import { room } from './de-room.ts';
import { roomAnswer } from './de-room-answer.ts';
import { roomWords } from './de-room-words.ts';
import { germanWarnings, germanWho } from './de-warnings.ts';
import type { Lists } from './spoken.ts';

export const germanLists: Lists = {
  page: germanPage,
  about: germanAbout,
  scenes: germanScenes,
  lamps: germanLamps,
  logs: germanLogs,
  takes: germanTakes,
  'light log': germanLightLog,
  link: germanLink,
  warnings: germanWarnings,
  'warnings who': germanWho,
  cautions: germanCautions,
  dielectrics: dielectricNames,
  'trimmer kinds': trimmerNames,
  intervals: intervalNames,
  pitch,
  'pitch found': pitchFound,
  room,
  'room answer': roomAnswer,
  'room words': roomWords,
  'class page': germanClassPage,
  lessons: germanLessons,
};
