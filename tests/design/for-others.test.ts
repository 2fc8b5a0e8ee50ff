import { expect, test } from 'vitest';
import { linkFor, readLink } from '../../src/app/address.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { forOthers } from '../../src/design/for-others.ts';
import { seededDocuments } from '../fuzz/any-document.ts';

test('what is handed on sounds and is built alike, holds nothing of the organiser’s, and reads back from its link', async () => {
  for (let seed = 1; seed <= 20; seed += 1) {
    const whole = seededDocuments(seed).anyMeant();
    const handed = forOthers(whole);
    const { pitch, room, batch, ...instrument } = handed;
    expect(whole).toMatchObject(instrument);
    expect(batch.board).toBe(whole.batch.board);
    expect([pitch.shortlist, room.readings, batch.lines, batch.log]).toEqual([[], [], [], []]);
    expect(pitch.drawer).toBe(DEFAULT_DESIGN.pitch.drawer);
    expect(await readLink(await linkFor(handed, 'kit'))).toMatchObject({ ok: true, design: handed });
  }
});
