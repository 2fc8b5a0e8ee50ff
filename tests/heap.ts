/** What the objects in use take, once all that is not wanted has gone. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** Bytes. */
export function heapInUse(): number {
  collect();
  return process.memoryUsage().heapUsed;
}
