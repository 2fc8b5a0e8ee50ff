/** Whether the stage has to light the sensors because the camera that should is not on. */
import type { Lampnote } from './lampnote.ts';

export function cameraStands({ session, light }: Lampnote): boolean {
  return session.current.light === 'camera' && light.camera.view.current.state.kind !== 'on';
}
