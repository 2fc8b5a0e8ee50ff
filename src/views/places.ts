/** The places of the page: what is loaded for each when it is first gone to, and what it shows. */
import { html, type TemplateResult } from 'lit';
import type { Place } from '../app/address.ts';
import type { Lampnote } from '../app/lampnote.ts';
import './listen/place-listen.ts';

export interface ShownPlace {
  /** Where it is gone to from. */
  readonly from: 'bar' | 'foot';
  /** Null: part of the first view. */
  readonly load: (() => Promise<unknown>) | null;
  readonly view: (app: Lampnote) => TemplateResult;
}

export const SHOWN_PLACES: Readonly<Record<Place, ShownPlace>> = {
  listen: { from: 'bar', load: null, view: (app) => html`<place-listen .app=${app}></place-listen>` },
  pitch: {
    from: 'bar',
    load: () => import('./pitch/place-pitch.ts'),
    view: (app) => html`<place-pitch .app=${app}></place-pitch>`,
  },
  room: {
    from: 'bar',
    load: () => import('./room/place-room.ts'),
    view: (app) => html`<place-room .app=${app}></place-room>`,
  },
  class: {
    from: 'bar',
    load: () => import('./class/place-class.ts'),
    view: (app) => html`<place-class .app=${app}></place-class>`,
  },
  kit: {
    from: 'bar',
    load: () => import('./kit/place-kit.ts'),
    view: (app) => html`<place-kit .app=${app}></place-kit>`,
  },
  about: {
    from: 'foot',
    load: () => import('./about/place-about.ts'),
    view: (app) => html`<place-about .app=${app}></place-about>`,
  },
};
