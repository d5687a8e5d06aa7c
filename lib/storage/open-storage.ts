/** The storage that the environment names. */
import { environment } from '#lib/config/environment.ts';
import { openLocalDisk } from './local-disk.ts';
import type { Storage } from './storage.ts';

let opened: Storage | undefined;

/** The running program's storage. */
export function openStorage(): Storage {
  opened ??= openLocalDisk(environment().BENCHLEAF_FILES);
  return opened;
}
