/** The margin's explanation of the answer, sentence by sentence; the question first. */
import type { Design } from '../../design/design.ts';
import type { RoomAnswer } from '../../plan/room-answer.ts';
import { isAlikeAllDay } from '../../plan/window.ts';
import { VOICES } from '../../quantity/units.ts';
import { answerWords } from '../../words/en-room-answer.ts';
import { roomWords } from '../../words/room.ts';

const words = answerWords.why;

export function whyWords(design: Design, answer: RoomAnswer | null): readonly string[] {
  if (answer === null) return [words.question, words.nothing];
  const { extremes, light, stretches, disturbance, windows } = answer;
  const darkest = VOICES.map((voice) => extremes[voice].lit).reduce((a, b) => (b.lux < a.lux ? b : a));
  const brightest = VOICES.map((voice) => extremes[voice].shade).reduce((a, b) => (b.lux > a.lux ? b : a));
  const usable = stretches.every(({ settings }) => settings !== null);
  const holds = windows.every(({ kind }) => kind === 'window')
    ? words.holds
    : usable
      ? words.resets(stretches.slice(1).map(({ from }) => from))
      : words.none;
  const isAlike = isAlikeAllDay(extremes);
  const fits = brightest.lux < darkest.lux;
  const bounds = isAlike
    ? fits
      ? words.betweenAlike
      : words.crossedAlike
    : fits
      ? words.between
      : words.crossed;
  return [
    words.question,
    light.day !== null ? words.band : isAlike ? words.alike : words.steady,
    bounds(roomWords.atHour(darkest.lux, darkest.hour), roomWords.atHour(brightest.lux, brightest.hour)),
    holds,
    ...(disturbance.ripple === null ? [] : [words.ripple(disturbance.ripple.depth)]),
    ...(design.room.readingsAre === 'guessed' ? [words.relative] : []),
  ];
}
