/** The volume: one slider, wherever it is wanted. */
import { html, type TemplateResult } from 'lit';
import type { Lampnote } from '../app/lampnote.ts';
import { VOLUME } from '../app/session.ts';
import { words } from '../words/en.ts';
import type { SlideDetail } from './controls/events.ts';
import './controls/level-slider.ts';

export function volumeSlider(app: Lampnote, volumeDb: number): TemplateResult {
  return html`<level-slider
    label=${words.bar.volume}
    .value=${volumeDb}
    min=${VOLUME.min}
    max=${VOLUME.max}
    scale="linear"
    .readout=${words.bar.volumeShort(volumeDb)}
    .valuetext=${words.bar.volumeText(volumeDb)}
    @slide=${({ detail }: CustomEvent<SlideDetail>) => app.setSession({ volumeDb: detail.value })}
  ></level-slider>`;
}
