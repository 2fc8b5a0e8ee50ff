/** `<lamp-note>`: the page. A slim bar, the live strip, and the place. */
import { html, nothing, type TemplateResult } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { keyed } from 'lit/directives/keyed.js';
import { PLACES, type Place } from '../app/address.ts';
import type { Lampnote, Notice } from '../app/lampnote.ts';
import { PRESETS } from '../app/presets.ts';
import type { Look, Session } from '../app/session.ts';
import type { SoundState } from '../app/sound-desk.ts';
import type { History } from '../app/store.ts';
import * as commands from '../design/commands.ts';
import type { Design } from '../design/design.ts';
import { NAME_LENGTH } from '../design/limits.ts';
import { cautionsAt } from '../words/cautions.ts';
import { words } from '../words/en.ts';
import { lightLogWords } from '../words/light-log.ts';
import { LANGUAGES } from '../words/spoken.ts';
import { AppElement } from './app-element.ts';
import './controls/choice-row.ts';
import { barStyles, noticeStyles } from './bar-styles.ts';
import { complaintList } from './complaints.ts';
import { choicesOf } from './controls/choices.ts';
import type { ChooseDetail } from './controls/events.ts';
import { droppedFile, offerFile, readFile } from './files.ts';
import './forget-device.ts';
import './keeping-note.ts';
import './live-strip.ts';
import './load-again.ts';
import { oneFileLink } from './one-file.ts';
import { SHOWN_PLACES } from './places.ts';
import { CALMLY, Selected } from './select.ts';
import { common } from './theme/shared.ts';
import { volumeSlider } from './volume.ts';

export class LampNote extends AppElement {
  static override properties = {
    ...AppElement.properties,
    loading: { state: true },
    unfolded: { state: true },
  };
  static override styles = [common, barStyles, noticeStyles];

  /** How far the code of the present place is: there, on its way, or not to be had. */
  declare loading: 'there' | 'coming' | 'missing';
  /** On a narrow page: whether what is needed less often is shown, too. */
  declare unfolded: boolean;
  #loaded: Place = PLACES[0];

  #design!: Selected<Design, Design>;
  #session!: Selected<Session, Session>;
  #sound!: Selected<SoundState, SoundState>;
  #notice!: Selected<Notice | null, Notice | null>;

  constructor() {
    super();
    this.loading = 'there';
    this.unfolded = false;
  }

  protected override bind(app: Lampnote): void {
    this.#design = new Selected(this, app.design, (design) => design, CALMLY);
    this.#session = new Selected(this, app.session, (session) => session);
    this.#sound = new Selected(this, app.sound.state, (sound) => sound);
    this.#notice = new Selected(this, app.notice, (notice) => notice);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.#key);
    window.addEventListener('pointerdown', this.#wake);
    // To many browsers a finger has pressed only when it lifts.
    window.addEventListener('pointerup', this.#wake);
    document.addEventListener('visibilitychange', this.#shown);
    window.addEventListener('pagehide', this.#left);
    window.addEventListener('hashchange', this.#openLink);
    window.addEventListener('dragover', this.#over);
    window.addEventListener('drop', this.#drop);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('keydown', this.#key);
    window.removeEventListener('pointerdown', this.#wake);
    window.removeEventListener('pointerup', this.#wake);
    document.removeEventListener('visibilitychange', this.#shown);
    window.removeEventListener('pagehide', this.#left);
    window.removeEventListener('hashchange', this.#openLink);
    window.removeEventListener('dragover', this.#over);
    window.removeEventListener('drop', this.#drop);
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const { look, place, language } = this.#session.value;
    const page = document.documentElement;
    // Written when they change only: an attribute set again, to the same word, has every drawing made anew.
    if (page.dataset['look'] !== look) page.dataset['look'] = look;
    if (page.lang !== language) page.lang = language;
    if (this.dataset['place'] !== place) this.dataset['place'] = place;
    const title = words.places.title(words.places.names[place]);
    if (document.title !== title) document.title = title;
    if (place !== this.#loaded) void this.#load(place);
  }

  protected override render(): TemplateResult {
    const design = this.#design.value;
    const { place } = this.#session.value;
    return html`<header class=${classMap({ [place]: true, unfolded: this.unfolded })}>
        <div class="bar">
          <h1>${words.product}</h1>
          <button
            type="button"
            class="more"
            aria-expanded=${this.unfolded ? 'true' : 'false'}
            aria-label=${words.bar.moreOf}
            @click=${() => {
              this.unfolded = !this.unfolded;
            }}
          >
            ${words.bar.more}
          </button>
          ${this.#places()} ${this.#soundControls()}
          <div class="group document">
            <input
              class="name"
              type="text"
              maxlength=${NAME_LENGTH}
              aria-label=${words.bar.name}
              title=${words.bar.name}
              .value=${design.name}
              @change=${(event: Event) =>
                this.app.change(
                  words.labels.rename,
                  commands.rename((event.currentTarget as HTMLInputElement).value.trim()),
                )}
            />
            ${this.#documentControls(this.app.design.history)}
          </div>
        </div>
        ${this.#soundWords()} ${this.#noticeWords()}
        <keeping-note .app=${this.app}></keeping-note>
      </header>
      ${keyed(this.#session.value.language, html`<live-strip class=${place} .app=${this.app}></live-strip>${this.#place()}`)}
      <footer>
        <label>
          <input
            type="checkbox"
            .checked=${this.#session.value.exhibition}
            @change=${(event: Event) =>
              this.app.setSession({ exhibition: (event.currentTarget as HTMLInputElement).checked })}
          />
          ${words.sound.exhibition}
        </label>
        <p class="small">${words.bar.shortcuts}</p>
        <p>${this.#link('about')}</p>
        <forget-device .app=${this.app}></forget-device>
      </footer>`;
  }

  #places(): TemplateResult {
    return html`<nav aria-label=${words.places.heading}>
      ${PLACES.filter((place) => SHOWN_PLACES[place].from === 'bar').map((place) => this.#link(place))}
    </nav>`;
  }

  #link(place: Place): TemplateResult {
    const isHere = place === this.#session.value.place;
    return html`<a href="#/${place}" aria-current=${isHere ? 'page' : nothing}>${words.places.names[place]}</a>`;
  }

  #place(): TemplateResult {
    const { place } = this.#session.value;
    switch (this.loading) {
      case 'there':
        return SHOWN_PLACES[place].view(this.app);
      case 'coming':
        return html`<main><p class="coming" role="status">${words.places.coming(words.places.names[place])}</p></main>`;
      case 'missing':
        return html`<main>
          <load-again
            class="coming"
            .app=${this.app}
            text=${words.places.missing(words.places.names[place])}
            .again=${() => this.#load(place)}
          ></load-again>
        </main>`;
    }
  }

  /** Whether its code is there now. */
  async #load(place: Place): Promise<boolean> {
    const { load } = SHOWN_PLACES[place];
    // What was missing keeps saying so until it is there.
    if (this.#loaded !== place) this.loading = load === null ? 'there' : 'coming';
    this.#loaded = place;
    const isThere = await (load?.() ?? Promise.resolve()).then(
      () => true,
      () => false,
    );
    if (this.#loaded === place) this.loading = isThere ? 'there' : 'missing';
    return isThere;
  }

  #soundControls(): TemplateResult {
    const { kind, trouble } = this.#sound.value;
    const { volumeDb } = this.#session.value;
    const label = { off: words.bar.soundOn, starting: words.bar.soundStarting, on: words.bar.soundOff }[kind];
    return html`<div class="group sound">
      <button
        type="button"
        class="primary"
        ?disabled=${trouble === 'insecure' || this.#session.value.soundByLink === 'off'}
        @click=${(event: MouseEvent) => {
          if (kind === 'off') void this.app.sound.on();
          // The second half of a double press takes nothing back.
          else if (kind === 'on' || event.detail < 2) void this.app.sound.off();
        }}
      >
        ${label}
      </button>
      ${volumeSlider(this.app, volumeDb)}
    </div>`;
  }

  async #soundAgain(): Promise<boolean> {
    await this.app.sound.on();
    // Whoever stopped it meanwhile wants no page anew.
    return this.app.sound.state.current.trouble !== 'module';
  }

  #documentControls({ undo, redo }: History): TemplateResult {
    return html`<button type="button" ?disabled=${undo === null} title=${words.bar.undoWhat(undo)} @click=${() => this.app.design.undo()}>
          ${words.bar.undo}
        </button>
        <button type="button" ?disabled=${redo === null} title=${words.bar.redoWhat(redo)} @click=${() => this.app.design.redo()}>
          ${words.bar.redo}
        </button>
        <button type="button" @click=${this.#open}>${words.bar.open}</button>
        <button type="button" @click=${() => offerFile(this.#design.value.name, 'json', 'application/json', this.app.fileText())}>
          ${words.bar.save}
        </button>
        <button type="button" @click=${this.#copyLink}>${words.bar.copyLink}</button>
        <select
          aria-label=${words.bar.designs}
          @change=${(event: Event) => {
            const select = event.currentTarget as HTMLSelectElement;
            const preset = PRESETS[Number(select.value)];
            select.value = '';
            if (preset) this.app.openText(preset.name, preset.text, words.labels.opened(preset.name));
          }}
        >
          <option value="" selected>${words.bar.designs}</option>
          ${PRESETS.map(({ name }, i) => html`<option value=${i}>${name}</option>`)}
        </select>`;
  }

  #soundWords(): TemplateResult {
    const { kind, trouble, faded } = this.#sound.value;
    const { soundByLink } = this.#session.value;
    const byLink = kind === 'off' && (soundByLink === 'off' || soundByLink === 'on') ? soundByLink : null;
    const text = trouble
      ? words.sound.trouble[trouble]
      : faded
        ? words.sound.faded
        : kind === 'on'
          ? words.sound.hint
          : byLink
            ? `${words.bar.soundByLink[byLink]} ${cautionsAt('headphones')[0]!.words}`
            : `${words.sound.off} ${cautionsAt('headphones')[0]!.words}`;
    return html`<div class="says">
      ${
        trouble === 'module'
          ? html`<load-again .app=${this.app} text=${text} .again=${() => this.#soundAgain()}></load-again>`
          : html`<p class=${trouble ? 'fault' : ''} role="status">${text}</p>`
      }
      ${trouble === 'insecure' ? oneFileLink() : ''}
      <choice-row
        class="look"
        legend=${words.bar.look}
        .choices=${choicesOf(words.bar.looks)}
        value=${this.#session.value.look}
        @choose=${({ detail }: CustomEvent<ChooseDetail>) => this.app.setSession({ look: detail.value as Look })}
      ></choice-row>
      <choice-row
        class="language"
        legend=${words.bar.language}
        .choices=${choicesOf(words.bar.languages)}
        value=${this.#session.value.language}
        @choose=${({ detail }: CustomEvent<ChooseDetail>) => {
          const chosen = LANGUAGES.find((one) => one === detail.value);
          if (chosen) void this.app.choose(chosen);
        }}
      ></choice-row>
    </div>`;
  }

  #noticeWords(): TemplateResult | string {
    const notice = this.#notice.value;
    if (!notice) return '';
    return html`<div class="notice" role="alert">
      ${this.#noticeText(notice)}
      <button type="button" @click=${() => this.app.notice.dispatch(() => null)}>${words.notice.dismiss}</button>
    </div>`;
  }

  #noticeText(notice: Notice): TemplateResult {
    switch (notice.kind) {
      case 'opened':
        return html`<p>${words.notice.opened(notice.name)} ${notice.leftLesson ? words.notice.leftLesson : ''}</p>`;
      case 'refused link':
        return html`<p class="fault">${notice.sentence}</p>`;
      case 'copied':
        return notice.link === null
          ? html`<p>${words.notice.linkCopied}</p>`
          : html`<p>${words.notice.linkShown} <code>${notice.link}</code></p>`;
      case 'no words': {
        const { language } = notice;
        return html`<load-again
          .app=${this.app}
          text=${words.notice.noWords(words.bar.languages[language])}
          .again=${() => this.app.speak(language)}
        ></load-again>`;
      }
      case 'part missing':
        return html`<load-again .app=${this.app} text=${words.places.partMissing}></load-again>`;
      case 'refused file':
        return html`<p class="fault">${words.notice.refused(notice.name)}</p>
          ${complaintList(notice.complaints)}`;
      case 'unread file':
        return html`<p class="fault">${words.notice.unread(notice.name)}</p>`;
      case 'refused log':
        return html`<p class="fault">${words.notice.refusedLog(notice.name)} ${lightLogWords.refusal(notice.refusal)}</p>`;
      case 'log in lesson':
        return html`<p class="fault">${words.notice.logInLesson(notice.name)}</p>`;
    }
  }

  readonly #open = async (): Promise<void> => {
    const file = await readFile(this.app, '.json,application/json,.csv,.tsv,.txt,text/csv,text/plain');
    if (file) this.app.openFile(file.name, file.text, words.labels.opened(file.name));
  };

  readonly #copyLink = async (): Promise<void> => {
    const hash = await this.app.link().catch((reason) => this.app.tellNoLink(reason));
    if (hash === undefined) return;
    const link = new URL(hash, location.href).href;
    const copied = await navigator.clipboard?.writeText(link).then(
      () => true,
      () => false,
    );
    this.app.notice.dispatch(() => ({ kind: 'copied', link: copied ? null : link }));
  };

  readonly #openLink = (): Promise<void> => this.app.openLink(location.hash, words.labels.link);

  readonly #over = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  };

  readonly #drop = async (event: DragEvent): Promise<void> => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    const file = await droppedFile(this.app, event);
    if (file) this.app.openFile(file.name, file.text, words.labels.opened(file.name));
  };

  readonly #shown = (): void => {
    // A tablet put aside may never tell more than this.
    if (document.hidden) this.app.keeping.flush();
    else this.app.sound.shown();
  };

  /** What is still being typed counts as typed. */
  readonly #left = (): void => {
    let focused = document.activeElement;
    while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
    if (focused instanceof HTMLElement) focused.blur();
  };

  readonly #wake = (event: Event): void => {
    // Its own button may be wanted to end a sound that has broken off; other keys do not press it.
    const presses = !(event instanceof KeyboardEvent) || event.key === 'Enter' || event.key === ' ';
    if (presses && event.composedPath().includes(this.renderRoot.querySelector('.sound button')!)) return;
    const { soundByLink } = this.app.session.current;
    if (soundByLink === 'on' && this.app.sound.state.current.kind === 'off') {
      // Once: whoever switches it off again has decided.
      this.app.setSession({ soundByLink: null });
      void this.app.sound.on();
      return;
    }
    this.app.sound.wake();
  };

  readonly #key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && event.shiftKey) {
      void this.app.sound.off();
      return;
    }
    this.#wake(event);
    if (event.key === 'Escape' && !event.defaultPrevented) {
      this.app.light.setStage({ cover: { A: 0, B: 0 } });
      return;
    }
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    // A text box has its own undo for what is being typed.
    const inText = event
      .composedPath()
      .some(
        (one) =>
          one instanceof HTMLTextAreaElement || (one instanceof HTMLInputElement && one.type === 'text'),
      );
    if (inText) return;
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) this.app.design.undo();
    else if (key === 'y' || (key === 'z' && event.shiftKey)) this.app.design.redo();
    else return;
    event.preventDefault();
  };
}

customElements.define('lamp-note', LampNote);

declare global {
  interface HTMLElementTagNameMap {
    'lamp-note': LampNote;
  }
}
