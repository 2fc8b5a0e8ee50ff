/** `<qr-code>`: an address as a QR code, black on white in every look, so that any camera reads it. */
import { css, html, LitElement, type TemplateResult } from 'lit';
import { encode } from 'uqr';

/** Light modules around the code: ISO/IEC 18004 asks for four. */
const QUIET = 4;

export class QrCode extends LitElement {
  static override properties = { text: { type: String }, label: { type: String } };
  static override styles = css`
    :host {
      display: block;
    }
    svg {
      display: block;
      width: 100%;
      height: auto;
      background: #ffffff;
      forced-color-adjust: none;
    }
    path {
      fill: #000000;
    }
  `;

  declare text: string;
  /** Its accessible name. */
  declare label: string;

  constructor() {
    super();
    this.text = '';
    this.label = '';
  }

  protected override render(): TemplateResult {
    const { data, size } = encode(this.text, { ecc: 'M', border: QUIET });
    const modules = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : [])));
    return html`<svg viewBox="0 0 ${size} ${size}" role="img" aria-label=${this.label} shape-rendering="crispEdges">
      <path d=${modules.join('')}></path>
    </svg>`;
  }
}

customElements.define('qr-code', QrCode);

declare global {
  interface HTMLElementTagNameMap {
    'qr-code': QrCode;
  }
}
