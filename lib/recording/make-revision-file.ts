/** Makes a file of a published revision, once, and keeps it. Can be ended at any moment and begun again. */

import { createHash } from 'node:crypto';
import {
  type FileOfRevision,
  finishRevisionFile,
  giveUpRevisionFile,
  isRevisionFileKey,
  noteMaking,
  takeRevisionFile,
} from '#lib/data/revision-files.ts';
import { getRevision } from '#lib/data/revisions.ts';
import { drawLesson, shapeOfLesson } from '#lib/lesson/lesson-pictures.ts';
import type { MadeFileFault } from '#lib/lesson/made-files.ts';
import { plainLine } from '#lib/lesson/plain-line.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { invariant } from '#lib/result.ts';
import { withDerivedShapes } from '#lib/shapes/derive-own-shape.ts';
import { type CardPicture, drawCard } from './draw-card.ts';
import { drawPoster, LIGHT_POSTER } from './draw-poster.ts';
import { makeRemux, remuxKey, remuxParts } from './make-remux.ts';
import { type RecordingWork, withFolder } from './recording-work.ts';

/** How often progress is written at most, ms. */
const PROGRESS_MS = 500;

interface Attempt {
  readonly signal: AbortSignal;
  /** Whether the file is given up when this attempt fails. */
  readonly isLast: boolean;
}

/** What is thrown is for the queue to try again; the last failure is noted, for a person to see. */
export async function makeRevisionFile(
  work: RecordingWork,
  file: FileOfRevision,
  { signal, isLast }: Attempt,
): Promise<void> {
  if (!(await takeRevisionFile(work.db, file))) return;
  try {
    const storageKey = await makeFile(work, file, signal);
    const sizeBytes = await work.storage.size(storageKey);
    invariant(sizeBytes !== null, 'what was just made is stored');
    const noted = await finishRevisionFile(work.db, file, { storageKey, sizeBytes });
    if (!noted && !(await isRevisionFileKey(work.db, storageKey))) await work.storage.remove(storageKey);
  } catch (error) {
    const fault = faultOf(work, error);
    if (!signal.aborted && (isLast || fault !== 'gave-up')) await giveUpRevisionFile(work.db, file, fault);
    throw error;
  }
}

async function makeFile(work: RecordingWork, file: FileOfRevision, signal: AbortSignal): Promise<string> {
  const revision = await getRevision(work.db, file.revisionId);
  switch (file.name) {
    case 'card.png':
      return storeCard(work, file, revision, signal);
    case 'poster.webp':
      return storePoster(work, revision);
    case 'recording.mp4':
      return storeCopy(work, file, revision, 'mp4', signal);
    case 'recording.mkv':
      return storeCopy(work, file, revision, 'mkv', signal);
  }
}

/** The key of a file that is made from one thing, known by its id or its own key. */
const keyFor = (from: string, name: string): string =>
  `revisions/${createHash('sha256').update(from).digest('hex').slice(0, 32)}/${name}`;

async function storeCard(
  work: RecordingWork,
  file: FileOfRevision,
  revision: Revision,
  signal: AbortSignal,
): Promise<string> {
  const { title, weave, difficulty } = revision.content;
  const facts = [weave, difficulty].map((fact) => plainLine(fact)).filter((fact) => fact !== '');
  const words = {
    title: plainLine(title),
    workshop: plainLine(revision.workshop.name),
    facts: facts.join(' · '),
  };
  const key = keyFor(file.revisionId, 'card.png');
  await work.storage.put(key, await drawCard(words, await cardPicture(work, revision, signal)));
  return key;
}

/** Revisions with the same poster share one. */
async function storePoster(work: RecordingWork, { recording }: Revision): Promise<string> {
  invariant(recording?.posterKey, 'a poster is asked for where there is one');
  // How light it is drawn belongs to the key: a stored file never changes.
  const key = keyFor(`${recording.posterKey} in ${LIGHT_POSTER} bytes`, 'poster.webp');
  if ((await work.storage.size(key)) === null)
    await work.storage.put(key, await drawPoster(await storedBytes(work, recording.posterKey)));
  return key;
}

async function storedBytes({ storage }: RecordingWork, key: string): Promise<Uint8Array> {
  const end = (await storage.size(key)) ?? 0;
  return new Response(storage.read(key, { start: 0, end })).bytes();
}

/** The lesson's poster, or its piece as it is computed; null where it has neither. */
async function cardPicture(
  work: RecordingWork,
  { recording, content }: Revision,
  signal: AbortSignal,
): Promise<CardPicture | null> {
  if (recording?.posterKey) return { bytes: await storedBytes(work, recording.posterKey), how: 'photograph' };
  const pictured = await withDerivedShapes(work, content, signal);
  const piece = drawLesson(pictured, shapeOfLesson, { of: 'piece', roll: 0, side: 'front' });
  return piece && { bytes: new TextEncoder().encode(piece.svg), how: 'drawing' };
}

async function storeCopy(
  work: RecordingWork,
  file: FileOfRevision,
  { recording, content, cues }: Revision,
  ending: 'mp4' | 'mkv',
  signal: AbortSignal,
): Promise<string> {
  invariant(recording !== null, 'copies are asked for where there is a recording');
  const parts = remuxParts(ending, { recording, content, cues });
  const key = remuxKey(ending, recording, parts);
  if ((await work.storage.size(key)) !== null) return key;
  const { ffmpeg } = work;
  if (!ffmpeg) throw new Error('ffmpeg is missing: copies cannot be made');
  await withFolder(work, async (folder) => {
    const path = await work.storage.lend(recording.mediaKey, folder, 'input');
    const copy = await makeRemux(ffmpeg, ending, {
      recording,
      parts,
      path,
      folder,
      signal,
      onPercent: nowAndThen((percent) => noteMaking(work.db, file, percent)),
    });
    await work.storage.adopt(key, copy);
  });
  return key;
}

/** Lets a few calls through; a write that fails is not worth the attempt. */
function nowAndThen(write: (percent: number) => Promise<void>): (percent: number) => void {
  let writtenAt = Number.NEGATIVE_INFINITY;
  return (percent) => {
    if (performance.now() - writtenAt < PROGRESS_MS) return;
    writtenAt = performance.now();
    write(percent).catch(() => {});
  };
}

function faultOf(work: RecordingWork, error: unknown): MadeFileFault {
  if (!work.ffmpeg) return 'converter-missing';
  const code = error instanceof Error && 'code' in error ? error.code : null;
  // ffmpeg has no code for it, but says so in the system's words.
  const said = /No space left on device|Disk quota exceeded/.test(String(error));
  return said || code === 'ENOSPC' || code === 'EDQUOT' ? 'disk-full' : 'gave-up';
}
