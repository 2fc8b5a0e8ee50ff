/** All lists of words in German, by the names they are told under. Loaded when German is first chosen. */
import { germanAbout } from './de-about.ts';
import { germanCautions } from './de-cautions.ts';
import { germanClassPage } from './de-class.ts';
import { germanEar, germanFaults, germanFinder } from './de-faults.ts';
import { germanKeeping } from './de-keeping.ts';
import { germanKit } from './de-kit.ts';
import {
  germanBench,
  germanColours,
  germanKitLists,
  germanKitLog,
  germanLeads,
  germanNets,
  germanPartNames,
  germanRoles,
  germanSlipLights,
  germanSlipPoints,
  germanSoundCheck,
  germanUses,
} from './de-kit-lists.ts';
import { germanLessons } from './de-lessons.ts';
import {
  germanLamps,
  germanLightLog,
  germanLink,
  germanLogs,
  germanScenes,
  germanTakes,
} from './de-listen.ts';
import { germanOrder, germanOrderLines } from './de-order.ts';
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
  keeping: germanKeeping,
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
  kit: germanKit,
  nets: germanNets,
  'part roles': germanRoles,
  'part names': germanPartNames,
  leads: germanLeads,
  'kit lists': germanKitLists,
  'order lines': germanOrderLines,
  order: germanOrder,
  'band colours': germanColours,
  'part uses': germanUses,
  bench: germanBench,
  'slip points': germanSlipPoints,
  'slip lights': germanSlipLights,
  'kit log': germanKitLog,
  'sound check': germanSoundCheck,
  faults: germanFaults,
  ear: germanEar,
  finder: germanFinder,
};
