/** `<place-about>`: what the page is, keeps and rests on, and whose work is in it. */

import { topics } from 'virtual:figure-sources';
import { notices, noticesFile, version } from 'virtual:this-build';
import { html, type TemplateResult } from 'lit';
import { aboutWords } from '../../words/en-about.ts';
import { AppElement } from '../app-element.ts';
import { marginStyles } from '../theme/margin.ts';
import { common } from '../theme/shared.ts';
import { aboutStyles } from './about-styles.ts';

export class PlaceAbout extends AppElement {
  static override styles = [common, marginStyles, aboutStyles];

  /** Nothing here follows the application. */
  protected override bind(): void {}

  protected override render(): TemplateResult {
    const { heading, what, network, trust } = aboutWords;
    return html`<main>
      <div class="page">
        <div class="margin">
          <p class="why">${what}</p>
          <p>${aboutWords.version(version)}</p>
        </div>
        <div class="text">
          <h2>${heading}</h2>
          ${section(network.heading, lines(network.lines))} ${section(aboutWords.kept.heading, kept())}
          ${section(trust.heading, lines(trust.lines))} ${section(aboutWords.sources.heading, sources())}
          ${section(aboutWords.licences.heading, licences())}
        </div>
      </div>
    </main>`;
  }
}

const section = (heading: string, content: TemplateResult): TemplateResult =>
  html`<section aria-label=${heading}><h3>${heading}</h3>${content}</section>`;

const lines = (all: readonly string[]): TemplateResult =>
  html`<ul>${all.map((line) => html`<li>${line}</li>`)}</ul>`;

function kept(): TemplateResult {
  const { heads, rows, shared } = aboutWords.kept;
  return html`<table>
      <thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
      <tbody>
        ${rows.map(
          ([what, where, until]) =>
            html`<tr><th scope="row">${what}</th><td>${where}</td><td>${until}</td></tr>`,
        )}
      </tbody>
    </table>
    <p>${shared}</p>`;
}

function sources(): TemplateResult {
  const { intro, rest, topics: names, topic } = aboutWords.sources;
  const figures = topics.reduce((sum, { rows }) => sum + rows, 0);
  return html`<p>${intro(figures)}</p>
    ${topics.map(
      (one) => html`<details class="topic">
        <summary>${topic(names[one.topic]!, one.rows)}</summary>
        <ul lang="en">${one.sources.map((source) => html`<li>${source}</li>`)}</ul>
      </details>`,
    )}
    <p>${rest}</p>`;
}

function licences(): TemplateResult {
  const { own, others, show, file } = aboutWords.licences;
  return html`<p>${own}</p>
    <p>${others}</p>
    <details>
      <summary>${show}</summary>
      <pre lang="en" role="region" tabindex="0" aria-label=${show}>${notices}</pre>
    </details>
    ${noticesFile === null ? '' : html`<p><a href=${noticesFile} target="_blank">${file}</a></p>`}`;
}

customElements.define('place-about', PlaceAbout);

declare global {
  interface HTMLElementTagNameMap {
    'place-about': PlaceAbout;
  }
}
