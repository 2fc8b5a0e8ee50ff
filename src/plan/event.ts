/**
 * What an event does to the light at the sensors, by the shadow laws of `light/hand.ts`, and as a scene that can be
 * played. Shares of the light 0…1, metres, seconds, lux.
 */
import type { Room, RoomEvent } from '../design/room.ts';
import { HAND_RADIUS, lampLeft, skyLeft, tubeBlocked, tubeCutOff } from '../light/hand.ts';
import { lampRipple, MAINS_LAMPS } from '../light/mains-lamp.ts';
import type { LightProgram, PointsProgram } from '../light/program.ts';
import type { Ripple } from '../light/ripple.ts';
import { SCENES, type Scene } from '../light/scene.ts';
import { type Fraction, type Lux, type Metres, type Pair, pairOf, type Seconds } from '../quantity/units.ts';

/** Share of the light that an event leaves at its deepest, at each sensor. */
export function shadeLeft(event: RoomEvent, tube: Room['tube'] = null): Pair<Fraction> {
  const left = eventLeft(event, tube);
  return { A: left, B: left };
}

function eventLeft(event: RoomEvent, tube: Room['tube']): Fraction {
  switch (event.kind) {
    case 'hand':
      return handLeft(event, tube);
    case 'card':
      // A slot narrower than the sensor's opening never lets all the light in: the contrast shrinks by that.
      return Math.min(1, event.left / Math.min(1, event.slotMetres / event.apertureMetres));
    case 'person':
    case 'lantern':
    case 'lid':
      return event.left;
  }
}

/** A hand straight above the sensor: the lamp's share past it, and the share of all that comes from round about. */
function handLeft(hand: Extract<RoomEvent, { kind: 'hand' }>, tube: Room['tube']): Fraction {
  const lamp = lampLeft({
    handRadius: HAND_RADIUS,
    height: hand.heightMetres,
    offset: 0,
    lampDiameter: hand.lampDiameterMetres,
    lampDistance: hand.lampDistanceMetres,
  });
  const round =
    tube === null
      ? skyLeft(HAND_RADIUS, hand.heightMetres, 0)
      : 1 - tubeBlocked(tubeCutOff(tube.boreRadiusMetres, tube.depthMetres), HAND_RADIUS, hand.heightMetres);
  return hand.roundShare * round + (1 - hand.roundShare) * lamp;
}

/** Time the light stays low (or, of a slot, high) at half depth, for each pass; null where the event's own pace says nothing. */
export interface EventTimes {
  /** What comes past: a shadow in light, or a slot of light in shade. */
  readonly brings: 'shade' | 'light';
  /** At half depth. */
  readonly seconds: Seconds;
  /** From one edge to being fully there: the softness of the edge. */
  readonly edgeSeconds: Seconds;
  /** Until the next one; null = single. */
  readonly betweenSeconds: Seconds | null;
  /** From sensor A to sensor B; null where both are reached at once or only one is. */
  readonly apartSeconds: Seconds | null;
}

export function eventTimes(event: RoomEvent, spacingMetres: Metres): EventTimes {
  switch (event.kind) {
    case 'hand': {
      // The hand's disc crosses the sensor on its way from rest to rest.
      const way = 0.48 + spacingMetres;
      const pace = way / event.crossSeconds;
      const soft = (event.lampDiameterMetres * event.heightMetres) / event.lampDistanceMetres;
      return {
        brings: 'shade',
        seconds: (2 * HAND_RADIUS) / pace,
        edgeSeconds: soft / pace,
        betweenSeconds: null,
        apartSeconds: spacingMetres / pace,
      };
    }
    case 'person':
      return {
        brings: 'shade',
        seconds: event.shadowMetres / event.metresPerSecond,
        edgeSeconds: event.softMetres / event.metresPerSecond,
        betweenSeconds: null,
        apartSeconds: spacingMetres / event.metresPerSecond,
      };
    case 'card':
      return {
        brings: 'light',
        seconds: event.slotMetres / event.metresPerSecond,
        edgeSeconds: event.apertureMetres / event.metresPerSecond,
        betweenSeconds: event.gapMetres / event.metresPerSecond,
        apartSeconds: spacingMetres / event.metresPerSecond,
      };
    case 'lantern': {
      const turn = 60 / event.rpm;
      const seconds = (event.slotDegrees / 360) * turn;
      const far = Math.max(event.sensorMetres, event.drumMetres);
      const blur =
        (event.filamentMetres * (far - event.drumMetres)) / event.drumMetres + event.apertureMetres;
      return {
        brings: 'light',
        seconds,
        edgeSeconds: (blur / (2 * Math.PI * far)) * turn,
        betweenSeconds: turn / event.slots - seconds,
        apartSeconds: (event.apartDegrees / 360) * turn,
      };
    }
    case 'lid':
      return {
        brings: 'light',
        seconds: Number.POSITIVE_INFINITY,
        edgeSeconds: event.openSeconds,
        betweenSeconds: null,
        apartSeconds: null,
      };
  }
}

/** The event as a program over this lit light, without unevenness; a hand and a lid over both sensors. */
export function eventProgram(
  event: RoomEvent,
  lit: Pair<Lux>,
  spacingMetres: Metres,
  tube: Room['tube'] = null,
): LightProgram {
  const scene = sceneOf(event, lit, spacingMetres);
  if (scene) return { kind: 'scene', scene };
  const left = shadeLeft(event, tube);
  const times = eventTimes(event, spacingMetres);
  const edge = Math.max(0.001, times.edgeSeconds);
  if (event.kind === 'lid') return alternating(lit, left, { first: 'shade', edge, rows: [1, 3] });
  const apart = times.apartSeconds ?? 0;
  return alternating(lit, left, { first: 'lit', edge, rows: [1, 1 + times.seconds], apart });
}

/** As a scene where there is one of its kind. Scenes have one lit level: the middle of both sensors' by ratio. */
function sceneOf(event: RoomEvent, lit: Pair<Lux>, spacingMetres: Metres): Scene | null {
  const litLux = Math.sqrt(lit.A * lit.B);
  switch (event.kind) {
    case 'card':
      return {
        ...SCENES['slotted-card'],
        ...withoutLeft(event),
        kind: 'slotted-card',
        spacingMetres: Math.min(0.5, spacingMetres),
        litLux,
        shadeLux: litLux * event.left,
        irregular: 0,
      };
    case 'lantern':
      return {
        ...SCENES.lantern,
        ...withoutLeft(event),
        litLux,
        shadeLux: litLux * event.left,
        irregular: 0,
      };
    case 'person':
      return {
        ...SCENES['passer-by'],
        metresPerSecond: event.metresPerSecond,
        shadowMetres: event.shadowMetres,
        softMetres: event.softMetres,
        direction: 'a-to-b',
        spacingMetres,
        litLux,
        shadeLux: litLux * event.left,
        irregular: 0,
      };
    case 'hand':
    case 'lid':
      return null;
  }
}

function withoutLeft<E extends RoomEvent & { readonly left: Fraction }>({
  left: _,
  ...rest
}: E): Omit<E, 'left'> {
  return rest;
}

interface Alternation {
  readonly first: 'lit' | 'shade';
  /** Seconds of a change. */
  readonly edge: Seconds;
  /** When the middle of each change is. */
  readonly rows: readonly Seconds[];
  /** Later at B. */
  readonly apart?: Seconds;
}

/** Straight changes between lit and shade, each as long as an edge. */
function alternating(
  lit: Pair<Lux>,
  left: Pair<Fraction>,
  { first, edge, rows, apart = 0 }: Alternation,
): PointsProgram {
  const middles = rows.flatMap((t) => [
    { t, voice: 'A' as const },
    { t: t + apart, voice: 'B' as const },
  ]);
  const knots = [
    ...new Set([0, ...middles.flatMap(({ t }) => [Math.max(0, t - edge / 2), t + edge / 2])]),
  ].sort((a, b) => a - b);
  const levelAt = (voice: 'A' | 'B', t: Seconds): Lux => {
    const [low, high] = [lit[voice] * left[voice], lit[voice]];
    let level = first === 'lit' ? 1 : 0;
    for (const row of rows) {
      const middle = voice === 'A' ? row : row + apart;
      const share = Math.min(1, Math.max(0, (t - middle) / edge + 0.5));
      level += share * (level > 0.5 ? -1 : 1);
      if (share < 1) break;
    }
    return low + (high - low) * Math.min(1, Math.max(0, level));
  };
  const last = knots.at(-1)! + 1;
  const times = Float64Array.from([...knots, last]);
  return {
    kind: 'points',
    times,
    lux: pairOf((voice) => times.map((t) => levelAt(voice, t))),
  };
}

/** Depths of several lamps add by their shares; shape and frequency are those of the deepest one. Null = steady. */
export function rippleOf(room: Pick<Room, 'lamps' | 'mainsHertz'>): Ripple | null {
  const lamps = room.lamps.map(({ lamp, share }) => ({ lamp, depth: share * MAINS_LAMPS[lamp].depth }));
  const deepest = lamps.reduce<(typeof lamps)[number] | null>(
    (best, next) => (best === null || next.depth > best.depth ? next : best),
    null,
  );
  if (deepest === null || deepest.depth <= 0) return null;
  const depth = Math.min(
    1,
    lamps.reduce((sum, each) => sum + each.depth, 0),
  );
  return { ...lampRipple(deepest.lamp, room.mainsHertz), depth };
}
