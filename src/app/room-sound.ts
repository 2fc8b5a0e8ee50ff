/** What can be heard of a room, as light to play and designs that follow one another while it plays. */
import type { Design } from '../design/design.ts';
import { type LightProgram, lengthOf, underLamp } from '../light/program.ts';
import { tripsOf } from '../plan/day.ts';
import { chatterShow, dayInAMinute, eventAtTheMargin } from '../plan/day-sound.ts';
import type { RoomAnswer } from '../plan/room-answer.ts';
import type { DayWay } from '../plan/room-day.ts';
import { levelsNear, stretchDesigns } from '../plan/room-shown.ts';
import { pairOf, type Seconds } from '../quantity/units.ts';

export const ROOM_PIECES = ['day', 'margin', 'chatter'] as const;
export type RoomPiece = (typeof ROOM_PIECES)[number];

export interface RoomSound {
  readonly program: LightProgram;
  readonly steps: readonly { readonly design: Design; readonly seconds: Seconds }[];
}

const MINUTE: Seconds = 60;
/** Four passes of 0.7 s of light and 0.5 s of shade go well before those at the margin (`day-sound.ts`). */
export const MARGIN_FROM: Seconds = 4 * (0.7 + 0.5);

/** `shown`: with the trimmers as recommended, as they are, or set again in between (the day only). */
export function roomSound(piece: RoomPiece, answer: RoomAnswer, design: Design, shown: DayWay): RoomSound {
  const { set, levels, stretches, disturbance } = answer;
  const heard = shown === 'now' ? design : set;
  switch (piece) {
    case 'day': {
      const program = underLamp(dayInAMinute(levels, { seconds: MINUTE }), disturbance.ripple);
      const first = levels[0]!.hour;
      const long = levels.at(-1)!.hour - first;
      const steps =
        shown === 'resets'
          ? stretchDesigns(set, stretches).map(({ from, to, design: turned }) => ({
              design: turned,
              seconds: (MINUTE * (to - from)) / long,
            }))
          : [{ design: heard, seconds: MINUTE }];
      return { program, steps };
    }
    case 'margin': {
      const { lit, shadeShare } = levelsNear(levels, (levels[0]!.hour + levels.at(-1)!.hour) / 2);
      const middle = pairOf((voice) => lit[voice].middle);
      const smooth = eventAtTheMargin(tripsOf(heard, disturbance), middle, shadeShare);
      return {
        program: underLamp(smooth, disturbance.ripple),
        steps: [{ design: heard, seconds: lengthOf(smooth.times) }],
      };
    }
    case 'chatter': {
      const { program, seconds, steps } = chatterShow(heard, tripsOf(heard, disturbance), disturbance.ripple);
      return {
        program,
        steps: steps.map(({ design: fitted, startsAt }, i) => ({
          design: fitted,
          seconds: (steps[i + 1]?.startsAt ?? seconds) - startsAt,
        })),
      };
    }
  }
}
