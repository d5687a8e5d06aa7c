/**
 * What a zip's directory may say before a byte of any file is read. Pure: the
 * claims of the directory in, the first fault out.
 */
import type { CopyFault } from './copy-fault.ts';

/** One line of the directory, as the archive claims it. */
export interface ClaimedEntry {
  readonly name: string;
  readonly isLocked: boolean;
  /** 0 stored, 8 deflated; APPNOTE.TXT 4.4.5. */
  readonly method: number;
  /** Upper half of the external attributes: a Unix mode, where the archive was made on one. */
  readonly mode: number;
  readonly packedBytes: number;
  readonly bytes: number;
  /** Where its local header begins. */
  readonly at: number;
  /** Bytes of the local header without the name's own claims: 30 and the name. */
  readonly headBytes: number;
}

/** A workshop with many lessons and all their pictures has less. */
export const MOST_FILES = 100_000;
/** Deflate packs at most 1,032 to 1; text of ours packs 20 to 1. */
const MOST_RATIO = 200;
const RATIO_FROM_BYTES = 1024 * 1024;
const FORMAT_MASK = 0o170000;
const LINK = 0o120000;
const FOLDER = 0o040000;
const FILE = 0o100000;

/** Letters that Windows keeps for itself, and controls. */
const NOT_PLAIN = /[\p{Cc}\\<>:"|?*\uFFFD]/u;

/** The first reason not to read an archive with this directory; null where there is none. */
export function entriesFault(entries: readonly ClaimedEntry[]): CopyFault | null {
  if (entries.length > MOST_FILES) return { code: 'too-many-files', most: MOST_FILES };
  const seen = new Set<string>();
  for (const entry of entries) {
    const { name } = entry;
    const fault = entryFault(entry);
    if (fault) return { ...fault, name: shown(name) };
    const folded = name.normalize('NFC').toLowerCase();
    if (seen.has(folded)) return { code: 'name-twice', name: shown(name) };
    seen.add(folded);
  }
  const inOrder = entries.toSorted((one, other) => one.at - other.at);
  for (const [index, entry] of inOrder.entries()) {
    const next = inOrder[index + 1];
    if (next && entry.at + entry.headBytes + entry.packedBytes > next.at)
      return { code: 'files-overlap', name: shown(next.name) };
  }
  return null;
}

type NamedCode = 'name-not-plain' | 'is-a-link' | 'is-locked' | 'packed-otherwise' | 'blown-up';

function entryFault(entry: ClaimedEntry): { readonly code: NamedCode } | null {
  if (!isPlainName(entry.name)) return { code: 'name-not-plain' };
  const format = entry.mode & FORMAT_MASK;
  // Devices and pipes are no more welcome than links.
  if (format === LINK || (format !== 0 && format !== FOLDER && format !== FILE)) return { code: 'is-a-link' };
  if (entry.isLocked) return { code: 'is-locked' };
  if (entry.method !== 0 && entry.method !== 8) return { code: 'packed-otherwise' };
  const isTight = entry.bytes > RATIO_FROM_BYTES && entry.bytes > entry.packedBytes * MOST_RATIO;
  return isTight ? { code: 'blown-up' } : null;
}

/** A name below a folder that every machine can keep: relative, no way up, no drive, no controls. */
export function isPlainName(name: string): boolean {
  if (name === '' || name.length > 400 || NOT_PLAIN.test(name) || name.startsWith('/')) return false;
  const parts = (name.endsWith('/') ? name.slice(0, -1) : name).split('/');
  return parts.length <= 12 && parts.every((part) => part !== '' && part !== '.' && part !== '..');
}

/** A name that can be shown: cut, without controls. */
export const shown = (name: string): string =>
  name.toWellFormed().replaceAll(/\p{C}/gu, '\uFFFD').slice(0, 200);
