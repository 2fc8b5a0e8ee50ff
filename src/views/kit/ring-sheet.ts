/** Paper rings for the trimmers of the board that the page is: at their own size, on a printed sheet of their own. */
import { css, html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { derivedInstrument } from '../../app/derived.ts';
import { connectionList } from '../../app/kit-desk.ts';
import { type Design, trimmersOf } from '../../design/design.ts';
import { pitchRing, type TrimmerRing, thresholdRing } from '../../kit/trimmer-ring.ts';
import { TRIMMERS } from '../../parts/trimmers.ts';
import { nearestNote } from '../../plan/notes.ts';
import { VOICES, type VoiceId } from '../../quantity/units.ts';
import { words as pageWords } from '../../words/en.ts';
import { kitViewWords } from '../../words/en-kit.ts';
import { leastDegreesFor, type RingShapes, ringShapes } from '../plots/ring-shapes.ts';
import { markAt } from '../theme/voice-mark.ts';
import { checkBar } from './board-print.ts';

const words = kitViewWords.sound.rings;

interface Told {
  readonly ring: TrimmerRing;
  readonly name: string;
  readonly now: string;
}

export function ringSheet(design: Design, head: () => TemplateResult): TemplateResult {
  const told = ringsOf(design);
  const parts = [...new Set(told.map(({ ring }) => ring.part))];
  return html`<section class="rings" aria-labelledby="rings">
    <div class="ring-head">${head()}</div>
    <h3 id="rings">${words.heading}</h3>
    <p>${words.how} ${told.some(({ ring }) => ring.turns > 1) ? words.howStraight : ''}</p>
    <p class="small">${words.cents} ${parts.map((part) => words.angle[part]).join(' ')}</p>
    <div class="paper-only">${checkBar()}</div>
    <div class="all">
      ${told.map(
        (each) => html`<figure>
          ${picture(each)}
          <figcaption><strong>${each.name}</strong> ${each.now}</figcaption>
        </figure>`,
      )}
    </div>
  </section>`;
}

function ringsOf(design: Design): readonly Told[] {
  const { voices, railVolts } = derivedInstrument(design);
  const { a4Hertz } = design.pitch.wish;
  const { parts } = connectionList(design);
  const refOf = (role: 'pitch' | 'threshold', voice: VoiceId | null): string =>
    parts.find((part) => part.role === role && part.voice === voice)?.ref ?? '';
  const pitches = VOICES.flatMap((voice): Told[] => {
    const part = TRIMMERS[design.voices[voice].trimmer.part];
    const ring = pitchRing(design, voice, railVolts, a4Hertz, leastDegreesFor(part));
    if (ring === null) return [];
    const { frequency } = voices[voice].cycle;
    const { name, cents } = nearestNote(frequency, a4Hertz);
    return [
      {
        ring,
        name: words.pitch(voice, refOf('pitch', voice)),
        now: words.pitchNow(pageWords.strip.voice(name, cents, frequency)),
      },
    ];
  });
  const thresholds = trimmersOf(design).map((id): Told => {
    const part = TRIMMERS[design.threshold.trimmers[id].trimmer.part];
    const ring = thresholdRing(design, id, railVolts, leastDegreesFor(part));
    const its = ring.voice === null ? VOICES : [ring.voice];
    const starts = its.map((voice) => {
      const { on } = voices[voice].tripLux;
      return words.starts(voice, on === null ? null : pageWords.lux(on));
    });
    return {
      ring,
      name: words.threshold(ring.voice, refOf('threshold', ring.voice)),
      now: words.thresholdNow(pageWords.volts(voices[id].referenceVolts), starts.join(', ')),
    };
  });
  return [...pitches, ...thresholds];
}

function picture({ ring, name, now }: Told): TemplateResult {
  const shapes = ringShapes(ring, pageWords.notes.shown, words.stop);
  const { left, top, width, height, lines, texts } = shapes;
  return html`<svg
    class="ring"
    role="img"
    aria-label="${name} ${now}"
    viewBox="${left} ${top} ${width} ${height}"
    width="${width}mm"
    height="${height}mm"
  >
    ${shapes.cut === null ? '' : cut(shapes.cut)}
    ${lines.map(
      ({ x1, y1, x2, y2, isBold }) =>
        svg`<line class=${isBold ? 'tick bold' : 'tick'} x1=${x1} y1=${y1} x2=${x2} y2=${y2}></line>`,
    )}
    <path class="travel ${ring.voice === 'B' ? 'b' : ''}" d=${shapes.travel}></path>
    ${mark(ring, shapes)}
    ${texts.map(
      ({ text, x, y, turned, size }) =>
        svg`<text x=${x} y=${y} font-size=${size} transform="rotate(${turned} ${x} ${y})">${text}</text>`,
    )}
  </svg>`;
}

const cut = ({ hole, rim }: { readonly hole: number; readonly rim: number }): SVGTemplateResult =>
  svg`<circle class="cut" r=${hole}></circle><circle class="cut" r=${rim}></circle>`;

/** Where the trimmer stands: round for A, square for B, with the letter beside it; plain for both. */
function mark({ voice }: TrimmerRing, { now, cut: round }: RingShapes): SVGTemplateResult {
  const letter = round === null ? { x: now.x + 3.2, y: now.y + 4 } : { x: 0, y: round.rim - 17 };
  return svg`${voice === null ? svg`<path class="plain" d="M${now.x} ${now.y}m-1.6 0l1.6 -1.6l1.6 1.6l-1.6 1.6z"></path>` : markAt(voice, now.x, now.y, 1.5)}
    <text class="letter" x=${letter.x} y=${letter.y} font-size="5">${voice ?? ''}</text>`;
}

export const ringStyles = css`
  .rings .all {
    display: flex;
    flex-wrap: wrap;
    gap: 4mm;
    max-width: 100%;
    overflow-x: auto;
  }
  .rings figure {
    margin: 0;
    max-width: 100%;
    overflow-x: auto;
  }
  .rings figcaption {
    max-width: 66mm;
    font-size: var(--text-small);
  }
  svg.ring {
    display: block;
  }
  svg.ring text {
    fill: var(--ink);
    font-family: var(--font-text);
    text-anchor: middle;
    dominant-baseline: central;
  }
  svg.ring .letter {
    font-weight: 700;
  }
  svg.ring .tick {
    stroke: var(--ink);
    stroke-width: 0.15;
  }
  svg.ring .tick.bold {
    stroke-width: 0.35;
  }
  svg.ring .travel {
    fill: none;
    stroke: var(--ink);
    stroke-width: 0.6;
  }
  svg.ring .travel.b {
    stroke-dasharray: 2.4 1.2;
  }
  svg.ring .cut {
    fill: none;
    stroke: var(--muted);
    stroke-width: 0.15;
    stroke-dasharray: 1 1;
  }
  svg.ring .mark {
    stroke-width: 0.5;
  }
  svg.ring .plain {
    fill: var(--accent);
  }
  .paper-only {
    display: none;
  }
  @media print {
    .rings {
      break-before: page;
    }
    .paper-only {
      display: block;
    }
    .rings .all,
    .rings figure {
      overflow: visible;
    }
    .rings figure {
      break-inside: avoid;
    }
  }
`;
