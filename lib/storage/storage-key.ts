/** Names of stored files, as `recordings/ID/what.ext`. */
import { invariant } from '#lib/result.ts';

const PART = /^[a-z0-9][a-z0-9-]{0,63}$/;
const NAME = /^[a-z0-9][a-z0-9-]{0,63}(\.[a-z0-9]{1,5})?$/;

/** Whether a text could be a key of ours: lower-case parts, no dots but before one short ending. */
export function isStorageKey(text: string): boolean {
  const parts = text.split('/');
  const name = parts.pop() ?? '';
  return parts.length >= 1 && parts.length <= 4 && parts.every((part) => PART.test(part)) && NAME.test(name);
}

/**
 * The key of something that belongs to a recording.
 * @param name `original`, `playable-1f3c.mp4`, `poster-2000.jpg`
 */
export function recordingKey(recordingId: string, name: string): string {
  const key = `recordings/${recordingId}/${name}`;
  invariant(isStorageKey(key), `storage keys are made of our own ids, not ${key}`);
  return key;
}
