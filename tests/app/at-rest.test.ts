import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { AtRest } from '../../src/app/at-rest.ts';

let kept: string[] = [];
let keeper: AtRest<string>;

beforeEach(() => {
  vi.useFakeTimers();
  kept = [];
  keeper = new AtRest((value) => kept.push(value));
});
afterEach(() => vi.useRealTimers());

test('a single change is written at once', () => {
  keeper.now('one');
  expect(kept).toEqual(['one']);
  vi.runAllTimers();
  expect(kept).toEqual(['one']);
});

test('of changes that follow one another only the last is written, when they rest', () => {
  for (const value of ['a', 'b', 'c']) {
    keeper.soon(value);
    vi.advanceTimersByTime(50);
  }
  expect(kept).toEqual([]);
  vi.runAllTimers();
  expect(kept).toEqual(['c']);
});

test('leaving does not wait for the rest, and writes nothing twice', () => {
  keeper.soon('a');
  keeper.flush();
  expect(kept).toEqual(['a']);
  keeper.flush();
  vi.runAllTimers();
  expect(kept).toEqual(['a']);
});

test('what is written at once overtakes what still waits', () => {
  keeper.soon('old');
  keeper.now('new');
  vi.runAllTimers();
  expect(kept).toEqual(['new']);
});

test('what is dropped is never written', () => {
  keeper.soon('a');
  keeper.drop();
  vi.runAllTimers();
  expect(kept).toEqual([]);
});
