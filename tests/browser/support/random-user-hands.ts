/** Eyes, ears and hands of the person in the page: what can be worked, how it is worked, how loud it is. */
import type { Lampnote } from '../../../src/app/lampnote.ts';

/** Carried into the page as text: it uses nothing from outside itself. */
export function makeHands(mostOfBound: number) {
  const app = () => (document.querySelector('lamp-note') as (HTMLElement & { app: Lampnote }) | null)!.app;
  const frame = () => new Promise((next) => requestAnimationFrame(next));
  const moment = () => new Promise((next) => setTimeout(next));

  const isThere = (element: Element): element is HTMLElement =>
    element instanceof HTMLElement && element.checkVisibility() && !element.matches(':disabled');

  /** Everything that can be worked on the page now, through all roots. */
  function controls(selector: string): HTMLElement[] {
    const found: HTMLElement[] = [];
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.matches(selector) && isThere(element)) found.push(element);
        if (element.shadowRoot) visit(element.shadowRoot);
      }
    };
    visit(document);
    return found;
  }

  const labelOf = (element: HTMLElement): string | null | undefined =>
    element instanceof HTMLInputElement ? element.labels?.[0]?.textContent : null;

  const told = (element: HTMLElement): string =>
    `${element.tagName.toLowerCase()} ${(element.getAttribute('aria-label') ?? labelOf(element) ?? element.textContent ?? '').trim().replaceAll(/\s+/g, ' ').slice(0, 40)}`;

  const fire = (element: EventTarget, type: string) =>
    element.dispatchEvent(new Event(type, { bubbles: true, composed: type === 'input' }));

  /** What a keyboard gets into a box: of some types nothing that is none of theirs, and never more than it holds. */
  function entered({ type, maxLength }: HTMLInputElement, text: string): string {
    const own = { number: /^-?\d+(\.\d+)?$/, time: /^\d\d:\d\d$/, date: /^\d{4}-\d\d-\d\d$/ };
    if (type in own && !own[type as keyof typeof own].test(text)) return '';
    return maxLength < 0 ? text : text.slice(0, maxLength);
  }

  function press(element: EventTarget, key: string, held: KeyboardEventInit = {}): void {
    for (const type of ['keydown', 'keyup'])
      element.dispatchEvent(
        new KeyboardEvent(type, { key, bubbles: true, composed: true, cancelable: true, ...held }),
      );
  }

  function drop(name: string, text: string): void {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], name));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
  }

  /** Loudest that may be heard: the voices at most so much of full scale, the note to compare and a chorus beside them. */
  const allowances: { readonly at: number; readonly most: number }[] = [];
  function allowed(): number {
    const { volumeDb, reference } = app().session.current;
    const chorus = app().audition.playing.current?.piece.kind === 'together' ? 1 : 0;
    const most = 10 ** (volumeDb / 20) * (mostOfBound + (reference.sounds ? 0.5 : 0) + chorus);
    const now = performance.now();
    allowances.push({ at: now, most });
    // What is heard now may have been made up to a second ago, and ramps take a moment.
    while (allowances.length > 1 && now - allowances[0]!.at > 3000) allowances.shift();
    return Math.max(...allowances.map((one) => one.most));
  }
  const heard = new Float32Array(32_768);
  function loudness(): number {
    const most = allowed();
    const tap: unknown = Reflect.get(globalThis, 'soundTap');
    if (!(tap instanceof AnalyserNode) || tap.context.state !== 'running') return 0;
    tap.getFloatTimeDomainData(heard);
    let peak = 0;
    for (const sample of heard) peak = Math.max(peak, Math.abs(sample));
    return peak / most;
  }

  /** What is being typed is typed. */
  function letGo(): void {
    let focused = document.activeElement;
    while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
    if (focused instanceof HTMLElement) focused.blur();
  }

  return { app, frame, moment, controls, told, fire, entered, press, drop, allowed, loudness, letGo };
}

export type Hands = ReturnType<typeof makeHands>;
