import { html } from 'lit';
import type { Lampnote } from '../../app/lampnote.ts';
import { AppElement } from '../app-element.ts';
export class PlacePitch extends AppElement {
  protected override bind(_app: Lampnote): void {}
  protected override render() {
    return html``;
  }
}
customElements.define('place-pitch', PlacePitch);
