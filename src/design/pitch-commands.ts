/** Changes a person makes in choosing parts for notes, as pure functions. Nothing changed returns the same object. */
import type { Fraction, Pair } from '../quantity/units.ts';
import { pairOf } from '../quantity/units.ts';
import type { Command } from './commands.ts';
import type { Design, Voice } from './design.ts';
import { equalValues } from './entries.ts';
import {
  type Candidate,
  type Drawer,
  MOST_SHORTLISTED,
  type Pitch,
  type VoiceParts,
  type Wish,
} from './pitch.ts';

const inPitch =
  (change: (pitch: Pitch) => Partial<Pitch>): Command =>
  (design) => {
    const pitch = { ...design.pitch, ...change(design.pitch) };
    return equalValues(pitch, design.pitch) ? design : { ...design, pitch };
  };

/** Changes entries of the wish. */
export const changeWish = (change: Partial<Wish>): Command =>
  inPitch(({ wish }) => ({ wish: { ...wish, ...change } }));

/** Changes entries of the drawer; whole lists are given anew. */
export const changeDrawer = (change: Partial<Drawer>): Command =>
  inPitch(({ drawer }) => ({ drawer: { ...drawer, ...change } }));

/** Puts a candidate at the end of the shortlist; one that stands there already, or finds it full, changes nothing. */
export const shortlist = (candidate: Candidate): Command =>
  inPitch(({ shortlist: kept }) =>
    kept.length >= MOST_SHORTLISTED || kept.some((other) => equalValues(other, candidate))
      ? {}
      : { shortlist: [...kept, candidate] },
  );

/** Takes the candidate at a place off the shortlist. */
export const unlist = (place: number): Command =>
  inPitch(({ shortlist: kept }) => ({ shortlist: kept.filter((_, i) => i !== place) }));

/**
 * A candidate becomes the design in one step: RA, the fixed part of RB, the trimmer turned to its place, and the
 * capacitor of both voices. `rotations` is where the model puts the target (`plan/timing.ts`).
 */
export const takeCandidate =
  (candidate: Candidate, rotations: Pair<Fraction>): Command =>
  (design) => {
    const voices: Design['voices'] = pairOf((id) =>
      fitted(design.voices[id], candidate.parts[id], rotations[id]),
    );
    return equalValues(voices, design.voices) ? design : { ...design, voices };
  };

function fitted(voice: Voice, parts: VoiceParts, rotation: Fraction): Voice {
  const { part, ohms, tolerance } = parts.trimmer;
  return {
    ...voice,
    raOhms: parts.ra.ohms,
    rbFixedOhms: parts.rbFixed.ohms,
    trimmer: { part, ohms, tolerance, rotation },
    capacitor: parts.capacitor,
  };
}
