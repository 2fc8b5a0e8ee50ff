/** The design a new document starts from: the first of the ready ones, a careful build whose values hang together. */
import lantern from '../../presets/lantern-on-the-landing-stage.json' with { type: 'json' };
import { decode } from './decode.ts';
import type { Design } from './design.ts';

function readyDesign(file: unknown): Design {
  const decoded = decode(file);
  if (!decoded.ok) throw new Error(`A ready design does not read: ${JSON.stringify(decoded.complaints)}`);
  return decoded.design;
}

export const DEFAULT_DESIGN: Design = readyDesign(lantern);
