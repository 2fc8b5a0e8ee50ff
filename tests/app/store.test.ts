/** The one door through which values change, and what can be taken back. */
import { describe, expect, test } from 'vitest';
import { DocumentStore, Store } from '../../src/app/store.ts';

interface Doc {
  readonly n: number;
}
const set = (n: number) => () => ({ n });

describe('a store', () => {
  test('tells every listener once for each change, and none when nothing changed', () => {
    const store = new Store<Doc>({ n: 0 });
    const heard: number[] = [];
    const stop = store.subscribe(() => heard.push(store.current.n));
    store.subscribe(() => heard.push(100 + store.current.n));
    store.dispatch(set(1));
    store.dispatch((value) => value);
    stop();
    store.dispatch(set(2));
    expect(heard).toEqual([1, 101, 102]);
  });

  test('refuses a change made from inside a notification, and works again afterwards', () => {
    const store = new Store<Doc>({ n: 0 });
    const stop = store.subscribe(() => store.dispatch(set(9)));
    expect(() => store.dispatch(set(1))).toThrow(/still being told/);
    stop();
    expect(store.current.n).toBe(1);
    store.dispatch(set(2));
    expect(store.current.n).toBe(2);
  });

  test('a listener that stops another one does not lose the rest', () => {
    const store = new Store<Doc>({ n: 0 });
    let heard = 0;
    const stop = store.subscribe(() => stop());
    store.subscribe(() => heard++);
    store.dispatch(set(1));
    store.dispatch(set(2));
    expect(heard).toBe(2);
  });
});

describe('a document', () => {
  test('undo gives back the identical object, redo the identical later one', () => {
    const first = { n: 0 };
    const store = new DocumentStore<Doc>(first);
    store.change('one', set(1));
    const second = store.current;
    store.change('two', set(2));
    store.undo();
    expect(store.current).toBe(second);
    store.undo();
    expect(store.current).toBe(first);
    store.redo();
    expect(store.current).toBe(second);
    expect(store.history).toEqual({ undo: 'one', redo: 'two' });
  });

  test('nothing left to take back or to do again changes nothing', () => {
    const first = { n: 0 };
    const store = new DocumentStore<Doc>(first);
    store.undo();
    store.redo();
    expect(store.current).toBe(first);
    expect(store.history).toEqual({ undo: null, redo: null });
  });

  test('a change that changes nothing is no step', () => {
    const store = new DocumentStore<Doc>({ n: 0 });
    store.change('nothing', (value) => value);
    expect(store.history.undo).toBeNull();
  });

  test('a new change forgets what could have been done again', () => {
    const store = new DocumentStore<Doc>({ n: 0 });
    store.change('one', set(1));
    store.undo();
    store.change('other', set(5));
    expect(store.history).toEqual({ undo: 'other', redo: null });
  });

  test('all changes of one gesture are one step', () => {
    const first = { n: 0 };
    const store = new DocumentStore<Doc>(first);
    const gesture = {};
    for (let n = 1; n <= 50; n++) store.change('turn', set(n), gesture);
    store.endGesture();
    store.change('turn', set(60), {});
    store.undo();
    expect(store.current.n).toBe(50);
    store.undo();
    expect(store.current).toBe(first);
  });

  test('listeners are told when a gesture ends, once, and may ask whether one is under way', () => {
    const store = new DocumentStore<Doc>({ n: 0 });
    const told: [number, boolean][] = [];
    store.subscribe(() => told.push([store.current.n, store.isMoving]));
    store.change('turn', set(1), {});
    store.endGesture();
    store.endGesture();
    store.change('typed', set(2));
    expect(told).toEqual([
      [1, true],
      [1, false],
      [2, false],
    ]);
  });

  test('after its end the same gesture is a step of its own', () => {
    const store = new DocumentStore<Doc>({ n: 0 });
    const gesture = {};
    store.change('turn', set(1), gesture);
    store.endGesture();
    store.change('turn', set(2), gesture);
    store.undo();
    expect(store.current.n).toBe(1);
  });

  test('a gesture interrupted by an undo does not merge into the step before', () => {
    const store = new DocumentStore<Doc>({ n: 0 });
    const gesture = {};
    store.change('turn', set(1), gesture);
    store.undo();
    store.change('turn', set(2), gesture);
    store.undo();
    expect(store.current.n).toBe(0);
  });

  test('a cancelled gesture restores the identical object and leaves no step', () => {
    const first = { n: 0 };
    const store = new DocumentStore<Doc>(first);
    const gesture = {};
    store.change('turn', set(1), gesture);
    store.change('turn', set(2), gesture);
    store.cancel(gesture);
    expect(store.current).toBe(first);
    expect(store.history).toEqual({ undo: null, redo: null });
  });

  test('cancelling another gesture, or one that did nothing, changes nothing', () => {
    const store = new DocumentStore<Doc>({ n: 0 });
    store.change('one', set(1));
    store.cancel({});
    store.cancel(null);
    expect(store.current.n).toBe(1);
    const idle = {};
    store.change('idle', (value) => value, idle);
    store.cancel(idle);
    expect(store.current.n).toBe(1);
  });

  test('a cancelled gesture leaves what could be done again as it was', () => {
    const store = new DocumentStore<Doc>({ n: 0 });
    store.change('one', set(1));
    store.undo();
    const gesture = {};
    store.change('turn', set(5), gesture);
    store.cancel(gesture);
    expect(store.history).toEqual({ undo: null, redo: 'one' });
  });

  test('a change refused inside a notification leaves document and history as they were', () => {
    const store = new DocumentStore<Doc>({ n: 0 });
    store.change('one', set(1));
    store.undo();
    let faults = 0;
    const stop = store.subscribe(() => {
      for (const attempt of [() => store.change('inner', set(9)), () => store.undo(), () => store.redo()])
        try {
          attempt();
        } catch {
          faults++;
        }
    });
    store.redo();
    stop();
    expect(faults).toBeGreaterThan(0);
    expect(store.current.n).toBe(1);
    expect(store.history).toEqual({ undo: 'one', redo: null });
  });

  test('tells its listeners on undo and redo', () => {
    const store = new DocumentStore<Doc>({ n: 0 });
    store.change('one', set(1));
    const heard: number[] = [];
    store.subscribe(() => heard.push(store.current.n));
    store.undo();
    store.redo();
    expect(heard).toEqual([0, 1]);
  });
});
