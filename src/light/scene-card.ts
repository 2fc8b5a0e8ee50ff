/**
 * A slotted card pulled past two sensors, A first. Gap and slot take turns along the card, a gap at both ends;
 * where no card is, the sensor is open. A sensor sees a stretch of the track as long as its aperture, and the
 * light is the open share of that stretch: a slot gives a trapezoid over time. Metres, lux, seconds.
 */
import type { Fraction, Lux, Metres, Seconds, VoiceId } from '../quantity/units.ts';
import { VOICES } from '../quantity/units.ts';
import { mixed, type Passing, paceOf, passAt, periodOf, sooner, startOf } from './irregular.ts';

export interface SlottedCard extends Passing {
  readonly kind: 'slotted-card';
  readonly slots: number;
  readonly slotMetres: Metres;
  readonly gapMetres: Metres;
  readonly metresPerSecond: number;
  /** Size of the sensor as seen along the track. */
  readonly apertureMetres: Metres;
  readonly spacingMetres: Metres;
  readonly litLux: Lux;
  readonly shadeLux: Lux;
}

interface CardTimes {
  /** Time over half light, over none, and wholly open, for one slot; rise or fall of one edge. */
  readonly halfLight: Seconds;
  readonly anyLight: Seconds;
  readonly full: Seconds;
  readonly ramp: Seconds;
  /** From a slot to the next. */
  readonly pitch: Seconds;
  /** Most of the aperture that one slot ever opens. */
  readonly peak: Fraction;
}

/** What one slot gives at the usual pace, with gaps no shorter than the aperture. */
export function cardTimes(card: SlottedCard): CardTimes {
  const { slotMetres: slot, gapMetres, apertureMetres: aperture, metresPerSecond: speed } = card;
  const peak = Math.min(1, slot / aperture);
  return {
    halfLight: peak >= 0.5 ? slot / speed : 0,
    anyLight: (slot + aperture) / speed,
    full: Math.max(0, slot - aperture) / speed,
    ramp: Math.min(slot, aperture) / speed,
    pitch: (slot + gapMetres) / speed,
    peak,
  };
}

export function slottedCardLux(card: SlottedCard, voice: VoiceId, t: Seconds): Lux {
  const usual = trackOf(card) / card.metresPerSecond;
  const period = periodOf(card, usual);
  const pass = passAt(t, period);
  const pace = paceOf(card, pass);
  const start = startOf(card, pass, period, usual / pace);
  const end = card.metresPerSecond * pace * (t - start) - lagOf(card, voice);
  const open = openLength(card, end) - openLength(card, end - card.apertureMetres);
  return mixed(card.shadeLux, card.litLux, open / card.apertureMetres);
}

/** An edge of the card or of a slot comes to, or leaves, what a sensor sees. */
export function slottedCardBreak(card: SlottedCard, t: Seconds): Seconds {
  const usual = trackOf(card) / card.metresPerSecond;
  const period = periodOf(card, usual);
  const now = passAt(t, period);
  let best = Number.POSITIVE_INFINITY;
  for (let pass = now; pass <= now + 1; pass++) {
    const pace = paceOf(card, pass);
    const speed = card.metresPerSecond * pace;
    const start = startOf(card, pass, period, usual / pace);
    for (const voice of VOICES) {
      const lag = lagOf(card, voice);
      for (let side = 0; side < 2; side++) {
        const ahead = lag + side * card.apertureMetres;
        let time = t;
        // Rounding can put the nearest edge at t itself: then the one after it.
        for (let edge = speed * (t - start) - ahead; time <= t; time = start + (edge + ahead) / speed)
          edge = nextEdge(card, edge);
        best = sooner(best, time, t);
      }
    }
  }
  return best;
}

/** From first to last touch at either sensor. */
function trackOf(card: SlottedCard): Metres {
  return lengthOf(card) + card.apertureMetres + card.spacingMetres;
}

function lengthOf({ slots, slotMetres, gapMetres }: SlottedCard): Metres {
  return slots * (slotMetres + gapMetres) + gapMetres;
}

function lagOf(card: SlottedCard, voice: VoiceId): Metres {
  return voice === 'A' ? 0 : card.spacingMetres;
}

/** Open length of the track from the card's front edge (0) to a place; negative before the card. */
function openLength(card: SlottedCard, place: Metres): Metres {
  const { slots, slotMetres, gapMetres } = card;
  if (place <= 0) return place;
  const length = lengthOf(card);
  if (place >= length) return slots * slotMetres + place - length;
  const pitch = slotMetres + gapMetres;
  const whole = Math.min(slots, Math.floor(place / pitch));
  return whole * slotMetres + Math.max(0, Math.min(slotMetres, place - whole * pitch - gapMetres));
}

/** The next edge beyond a place; Infinity past the card's end. */
function nextEdge(card: SlottedCard, place: Metres): Metres {
  if (place < 0) return 0;
  const { slots, slotMetres, gapMetres } = card;
  const pitch = slotMetres + gapMetres;
  const whole = Math.floor(place / pitch);
  for (let cell = whole; cell <= Math.min(slots, whole + 1); cell++) {
    if (cell * pitch > place) return cell * pitch;
    if (cell * pitch + gapMetres > place) return cell * pitch + gapMetres;
  }
  const next = (whole + 1) * pitch;
  return whole < slots && next > place ? next : Number.POSITIVE_INFINITY;
}
