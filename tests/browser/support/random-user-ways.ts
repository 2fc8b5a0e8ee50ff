/** What the person in the page may do next, and how often which. */
import type { Hands } from './random-user-hands.ts';

/** `calm`: only what leaves nothing behind, turning, choosing, going about, taking back. */
export type Manner = 'anything' | 'calm';

/** One action; says what it was. */
export type Step = (manner: Manner) => Promise<string>;

/** Carried into the page as text: it uses nothing from outside itself. */
export function makeUser(uniform: () => number, hands: Hands): Step {
  const { app, controls, told, fire, entered, press, drop } = hands;
  const TYPED = [
    ...['4k7', '100n', '12', '0', '0,5', '440', 'A4', 'c#3', '300 lx', '12:30', '2026-11-28', '9 V', '50 %'],
    ...['', ' ', '-5', '1e999', 'NaN', '∞', '4k7k7', '1..2', '<b>x</b>', '{"a":1}', '𝄞𝄞', 'x'.repeat(5000)],
  ];
  const KEYS = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'Home', 'End', 'PageUp', 'Enter', ' '];
  const PLACES = ['listen', 'pitch', 'room', 'class', 'kit'];
  const SPOILT = [
    '',
    '#',
    '#/nowhere',
    '#/listen?d=',
    '#/pitch?d=AAAA',
    '#/class?lesson=none',
    '#/%E0%A4%A?d=x',
  ];
  const LOG = 'seconds,lux A,lux B\n0,300,300\n1,2,300\n2,300,2\n3,300,300\n';

  const below = (count: number) => Math.floor(uniform() * count);
  const pick = <T>(options: readonly T[]): T | undefined => options[below(options.length)];

  function click(selector: string): string {
    const element = pick(controls(selector));
    element?.click();
    return element ? `press ${told(element)}` : 'nothing to press';
  }

  function type(): string {
    const field = pick(
      controls(
        'input[type=text], input:not([type]), input[type=number], input[type=time], input[type=date], textarea',
      ),
    ) as HTMLInputElement | undefined;
    if (!field) return 'nowhere to type';
    const text = uniform() < 0.4 ? field.value + pick(['0', 'x', ' ', '-'])! : pick(TYPED)!;
    field.focus();
    field.value = entered(field, text);
    fire(field, 'input');
    if (uniform() < 0.2) press(field, pick(['Enter', 'Escape', 'ArrowUp', 'ArrowDown'])!);
    fire(field, 'change');
    if (uniform() < 0.5) field.blur();
    return `type ${JSON.stringify(text.slice(0, 20))} into ${told(field)}`;
  }

  function slide(): string {
    const slider = pick(controls('input[type=range], [role=slider]'));
    if (!slider) return 'nothing to turn';
    slider.focus();
    if (slider instanceof HTMLInputElement) {
      const [min, max] = [Number(slider.min), Number(slider.max || 100)];
      slider.value = String(min + uniform() * (max - min));
      fire(slider, 'input');
      if (uniform() < 0.7) fire(slider, 'change');
      return `slide ${told(slider)} to ${slider.value}`;
    }
    const key = pick(KEYS)!;
    press(slider, key, { shiftKey: uniform() < 0.2 });
    return `${key} on ${told(slider)}`;
  }

  function choose(): string {
    const select = pick(controls('select')) as HTMLSelectElement | undefined;
    if (!select) return 'nothing to choose';
    select.selectedIndex = below(select.options.length);
    fire(select, 'input');
    fire(select, 'change');
    return `choose ${JSON.stringify(select.value)} of ${told(select).slice(0, 30)}`;
  }

  function key(): string {
    const name = pick([...KEYS, 'Escape', 'z', 'y', 'n', 'b', '1', '?'])!;
    const held = { ctrlKey: uniform() < 0.3, shiftKey: uniform() < 0.2 };
    press(pick(controls('button, input, [tabindex]')) ?? document.body, name, held);
    return `key ${JSON.stringify(held)} ${name}`;
  }

  function takeBack(): string {
    const times = 1 + below(4);
    const isRedo = uniform() < 0.4;
    for (let i = 0; i < times; i += 1) press(document.body, isRedo ? 'y' : 'z', { ctrlKey: true });
    return `${isRedo ? 'redo' : 'undo'} ${times} times`;
  }

  /** A letter of a text changed, taken out or put twice. */
  function spoil(text: string): string {
    const at = below(text.length);
    return text.slice(0, at) + pick(['', '0', '"', 'ü', text.slice(at, at + 9)])! + text.slice(at + 1);
  }

  async function follow(): Promise<string> {
    const way = uniform();
    const place = pick(PLACES)!;
    if (way < 0.6) location.hash = `#/${place}`;
    else if (way < 0.7) location.hash = pick(SPOILT)!;
    else if (way < 0.8)
      location.hash = `#/${place}?${pick(['sound=muted', 'sound=on', 'lang=de', 'lang=en', 'lang=xx'])}`;
    else {
      const link = await app().link();
      location.hash = way < 0.9 ? link : spoil(link);
    }
    return `follow ${location.hash.slice(0, 60)}`;
  }

  function bring(): string {
    const text = app().fileText();
    const way = uniform();
    if (way < 0.4) drop('good.json', text);
    else if (way < 0.7) drop('spoilt.json', spoil(text));
    else drop('log.csv', way < 0.85 ? LOG : spoil(LOG));
    return `bring a file (${way.toFixed(2)})`;
  }

  const sound = (): string => {
    const isOn = app().sound.state.current.kind === 'on';
    void (isOn ? app().sound.off() : app().sound.on());
    return isOn ? 'sound off' : 'sound on';
  };

  const CHOICES = '[role=radio], input[type=radio], input[type=checkbox]';
  const PRESSED = `button, summary, ${CHOICES}, a[href^="#"]`;

  /** Each way to act with its share. */
  const ways: readonly (readonly [number, () => string | Promise<string>])[] = [
    [36, () => click(PRESSED)],
    [22, type],
    [12, slide],
    [8, choose],
    [6, key],
    [6, takeBack],
    [6, follow],
    [2, bring],
    [2, sound],
  ];
  const calmWays: typeof ways = [
    [20, () => click(CHOICES)],
    [12, () => click('nav a')],
    [50, slide],
    [8, takeBack],
    [2, sound],
  ];

  return async (manner: Manner): Promise<string> => {
    const open = manner === 'calm' ? calmWays : ways;
    let left = uniform() * open.reduce((sum, [share]) => sum + share, 0);
    for (const [share, way] of open) {
      left -= share;
      if (left < 0) return await way();
    }
    return 'rest';
  };
}
