/**
 * A visit of the person who tries everything, played again by its address, to be watched: `npm run dev`, then
 * tests/browser/support/random-user.html?seed=7 there. Forgets first what this browser keeps for that address. What
 * was done stands below; what should not be is an error in the console.
 */
import { decodeText } from '../../../src/design/decode.ts';
import { uniformFrom } from '../../../src/quantity/random.ts';
import { MOST_OF_BOUND } from '../../../src/sound/settings.ts';
import { batchSeed, type InPage, install, SINGLE_PRECISION, stub, VISIT } from './random-user.ts';
import { makeHands } from './random-user-hands.ts';
import { makeUser } from './random-user-ways.ts';
import { tapLoudspeaker } from './tap.ts';

const asked = new URLSearchParams(location.search);
const seed = Number(asked.get('seed') ?? 1);
const sitting = Number(asked.get('sitting') ?? 0);
if (sitting === 0) localStorage.clear();

tapLoudspeaker();
Object.assign(globalThis, { uniformFrom, makeUser, hands: makeHands(MOST_OF_BOUND) });
stub();
install();
await import('../../../src/main.ts');
const person = Reflect.get(globalThis, 'randomUser') as InPage;

const uniform = uniformFrom(seed);
for (let drawn = 0; drawn < sitting * VISIT.batches; drawn += 1) batchSeed(uniform);
await person.begin();
for (let batch = 0; batch < VISIT.batches; batch += 1) {
  const { done, texts, loudest } = await person.act(batchSeed(uniform), VISIT.actions, 'anything');
  const told = document.createElement('pre');
  told.textContent = `seed ${seed}, sitting ${sitting}, batch ${batch}:\n${done.join('\n')}`;
  document.body.append(told);
  if (!texts.every((text) => decodeText(text).ok)) throw new Error('A kept design does not read');
  if (loudest > 1 + SINGLE_PRECISION) throw new Error(`Louder than set: ${loudest} times`);
}
const { same } = await person.backAndForth();
if (same.includes(false)) throw new Error('Taken back and done again, the design is another');
if (sitting + 1 < VISIT.sittings) location.search = `?seed=${seed}&sitting=${sitting + 1}`;
else document.title = 'The visit is over';
