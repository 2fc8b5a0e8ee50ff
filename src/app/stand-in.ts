/** Whether the stage has to light the sensors because the camera that should is not on, or shows nothing. */
import type { Lampnote } from './lampnote.ts';

export function cameraStands({ session, light }: Lampnote): boolean {
  const { state, missing } = light.camera.view.current;
  return session.current.light === 'camera' && (state.kind !== 'on' || missing !== null);
}
