/**
 * Reads one lesson of a portable copy: every document against its schema,
 * every recording decoded whole, every picture looked at. What is kept lies
 * in the storage under keys of ours; rows are written by bring-in-copy.ts.
 */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { statfs } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { CopyRefused } from '#lib/copies/copy-fault.ts';
import type { OpenCopy } from '#lib/copies/read-zip.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { revision } from '#lib/lesson/revision.ts';
import { BENCH_FILE, benchFault, type PortableBench, portableBench } from '#lib/portable/portable-bench.ts';
import {
  DRAFT_FILE,
  type KeptRecording,
  LESSON_FILE,
  PORTABLE_SCHEMA,
  type PortableDraft,
  type PortableLesson,
  portableDraft,
  portableLesson,
} from '#lib/portable/portable-lesson.ts';
import { type Renaming, renameFiles } from '#lib/portable/rename-files.ts';
import { type Examined, examine } from '#lib/recording/examine.ts';
import { type RecordingWork, withFolder } from '#lib/recording/recording-work.ts';
import { recordingKey } from '#lib/storage/storage-key.ts';

const MIB = 1024 * 1024;
/** A lesson of 20,000 cues takes 6 MiB. */
const MOST_DOCUMENT_BYTES = 64 * MIB;
const MOST_PICTURE_BYTES = 16 * MIB;
const MOST_TRANSCRIPT_BYTES = 20 * MIB;
/** Room that is left on the disk: a database cannot work without any, bytes. */
const ROOM_LEFT_BYTES = 300 * MIB;

export interface ReadRecording {
  readonly id: string;
  readonly kept: KeptRecording;
  readonly sizeBytes: number;
  readonly sha256: string;
  readonly mediaKey: string;
  readonly posterKey: string | null;
  readonly peaksKey: string | null;
  readonly examined: Pick<Examined, 'facts' | 'sound' | 'loudnessLufs'>;
  readonly pictures: readonly { readonly key: string; readonly atMs: number | null }[];
}

export interface ReadLesson {
  readonly id: string;
  readonly manifest: PortableLesson;
  readonly draft: PortableDraft | null;
  readonly bench: PortableBench | null;
  readonly recordings: readonly ReadRecording[];
  /** The recording that the draft is about, by its new id. */
  readonly currentId: string | null;
  /** A revision's document with keys of ours; read anew each time, since a lesson may have many. */
  readonly revision: (at: PortableLesson['revisions'][number]) => Promise<Revision>;
  readonly transcriptFile: (file: string) => Promise<Buffer>;
}

interface Reading {
  readonly work: RecordingWork;
  readonly zip: OpenCopy;
  /** Folder of the lesson in the archive, with a slash at its end, or empty. */
  readonly root: string;
  /** What new ids are made from: the same in every attempt. */
  readonly seed: string;
  readonly largestBytes: number;
  readonly signal: AbortSignal;
  readonly onStep: (step: string) => Promise<void>;
  /** Told before a file is stored, so that a refusal can take it away again. */
  readonly onStore: (key: string) => void;
}

/** @throws CopyRefused */
export async function readLessonCopy(reading: Reading): Promise<ReadLesson> {
  const { zip, root, seed } = reading;
  const manifest = await readDocument(zip, root + LESSON_FILE, portableLesson);
  checkManifest(manifest, root);
  const draft = manifest.draft ? await readDocument(zip, root + manifest.draft, portableDraft) : null;
  if (draft && !areOnce(draft.cues)) throw refused(root + DRAFT_FILE, 'cues');
  const bench = manifest.bench ? await readDocument(zip, root + manifest.bench, portableBench) : null;
  const where = bench && benchFault(bench, manifest.revisions.length);
  if (where) throw refused(root + BENCH_FILE, where);
  for (const { file } of manifest.transcriptFiles) checkThere(zip, root + file);
  for (const { file, pictures } of manifest.recordings)
    for (const name of [file, ...pictures.map((picture) => picture.file)]) checkThere(zip, root + name);

  const recordings: ReadRecording[] = [];
  for (const [index, kept] of manifest.recordings.entries()) {
    recordings.push(await takeRecording(reading, kept, idFrom(`${seed} ${root} ${index}`)));
  }
  const naming = namingBack(recordings);
  const document = async ({ number, publishedAt, file }: PortableLesson['revisions'][number]) => {
    const read = await readDocument(zip, root + file, revision);
    const renamed = renameFiles(read, naming);
    const at = !renamed ? 'recording' : renamed.number !== number ? 'number' : differs(renamed, recordings);
    if (!renamed || at) throw refused(root + file, at || 'recording');
    if (!areOnce(renamed.cues)) throw refused(root + file, 'cues');
    if (renamed.publishedAt !== publishedAt) throw refused(root + file, 'publishedAt');
    return renamed;
  };
  // All of them once before anything is written.
  for (const at of manifest.revisions) await document(at);
  return {
    id: idFrom(`${seed} ${root} lesson`),
    manifest,
    draft,
    bench,
    recordings,
    currentId: recordings.find(({ kept }) => kept.file === manifest.current)?.id ?? null,
    revision: document,
    transcriptFile: (file) => zip.read(root + file, MOST_TRANSCRIPT_BYTES),
  };
}

/** A document of an archive against its schema. @throws CopyRefused */
export async function readDocument<S extends z.ZodType>(
  zip: OpenCopy,
  name: string,
  schema: S,
): Promise<z.infer<S>> {
  const bytes = await zip.read(name, MOST_DOCUMENT_BYTES);
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes), storable);
  } catch {
    throw refused(name, '');
  }
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const told = z.object({ schema: z.int() }).safeParse(value);
  if (told.success && told.data.schema > PORTABLE_SCHEMA) throw new CopyRefused({ code: 'newer-form', name });
  throw refused(name, parsed.error.issues[0]?.path.join('.') ?? '');
}

/** Texts that no database keeps: with a NUL, or with half a character. */
function storable(_key: string, value: unknown): unknown {
  if (typeof value === 'string' && (value.includes('\0') || !value.isWellFormed())) throw new SyntaxError();
  return value;
}

const refused = (name: string, where: string): CopyRefused =>
  new CopyRefused({ code: 'not-as-described', name, where: where.slice(0, 300) });

/** What a schema cannot say: revisions count up from 1, and nothing stands twice. */
function checkManifest({ recordings, revisions, current, draft }: PortableLesson, root: string): void {
  const name = root + LESSON_FILE;
  const isInOrder = revisions.every(({ number, publishedAt, file }, index) => {
    const before = revisions[index - 1];
    const isLater = !before || Date.parse(publishedAt) >= Date.parse(before.publishedAt);
    return number === index + 1 && isLater && file === `revisions/${number}.json`;
  });
  if (!isInOrder) throw new CopyRefused({ code: 'revisions-out-of-order', name });
  if (revisions.length === 0 && !draft) throw refused(name, 'draft');
  const files = recordings.flatMap(({ file, pictures }) => [
    file,
    ...pictures.map((picture) => picture.file),
  ]);
  if (new Set(files).size < files.length) throw refused(name, 'recordings');
  const areOwn = recordings.every(({ file, poster, pictures }) => {
    const moments = pictures.flatMap(({ atMs }) => (atMs === null ? [] : [atMs]));
    const below = `stills/${stemOf(file)}/`;
    return (
      new Set(moments).size === moments.length &&
      pictures.every((picture) => picture.file.startsWith(below)) &&
      (poster === null || pictures.some((picture) => picture.file === poster))
    );
  });
  if (!areOwn) throw refused(name, 'recordings');
  if (current !== null && !recordings.some(({ file }) => file === current)) throw refused(name, 'current');
}

const areOnce = (things: readonly { readonly id: string }[]): boolean =>
  new Set(things.map(({ id }) => id)).size === things.length;

/** `media/recording-1.mp4` is of `recording-1`. */
const stemOf = (file: string): string => file.slice(file.indexOf('/') + 1, file.lastIndexOf('.'));

function checkThere(zip: OpenCopy, name: string): void {
  if (zip.size(name) === null) throw new CopyRefused({ code: 'file-missing', name });
}

async function takeRecording(reading: Reading, kept: KeptRecording, id: string): Promise<ReadRecording> {
  const { work, zip, root, largestBytes, signal, onStep, onStore } = reading;
  const name = root + kept.file;
  const sizeBytes = zip.size(name) ?? 0;
  await onStep(name);
  await checkRoom(work.filesFolder, sizeBytes);
  const { ffmpeg } = work;
  if (!ffmpeg)
    throw new CopyRefused({ code: 'recording-not-taken', name, fault: { code: 'converter-missing' } });
  const store = async (key: string, bytes: Uint8Array): Promise<string> => {
    onStore(key);
    await work.storage.put(key, bytes);
    return key;
  };
  return withFolder(work, async (folder) => {
    const path = join(folder, 'input');
    await zip.extract(name, path, largestBytes, signal);
    const sha256 = await hashFile(path, signal);
    const examined = await examine(ffmpeg, { path, folder, signal, onStep: () => {} });
    if (!examined.ok) throw new CopyRefused({ code: 'recording-not-taken', name, fault: examined.fault });
    const { facts, sound, loudnessLufs } = examined.value;
    if (facts.playable.made !== 'original' || facts.playable.type !== kept.mediaType)
      throw new CopyRefused({ code: 'recording-not-for-pages', name });
    const mediaKey = recordingKey(id, 'original');
    onStore(mediaKey);
    await work.storage.adopt(mediaKey, path);
    const pictures: { file: string; key: string; atMs: number | null }[] = [];
    for (const { file, atMs } of kept.pictures) {
      const bytes = await zip.read(root + file, MOST_PICTURE_BYTES);
      if (!isJpeg(bytes)) throw new CopyRefused({ code: 'not-a-picture', name: root + file });
      pictures.push({ file, atMs, key: await store(pictureKey(id, file), bytes) });
    }
    return {
      id,
      kept,
      sizeBytes,
      sha256,
      mediaKey,
      posterKey: kept.poster && pictureKey(id, kept.poster),
      peaksKey: sound && (await store(recordingKey(id, 'peaks.bin'), sound.peaks)),
      examined: { facts, sound, loudnessLufs },
      pictures,
    };
  });
}

const pictureKey = (id: string, file: string): string =>
  recordingKey(id, file.slice(file.lastIndexOf('/') + 1));

/** Begins with a JPEG's start of image and ends with its end (ITU-T T.81, B.1.1.3). */
const isJpeg = (bytes: Buffer): boolean =>
  bytes.length > 4 &&
  bytes.readUInt32BE(0) >>> 8 === 0xffd8ff &&
  bytes.readUInt16BE(bytes.length - 2) === 0xffd9;

function namingBack(recordings: readonly ReadRecording[]): Renaming {
  const ids = new Map(recordings.map(({ id, kept }) => [stemOf(kept.file), id]));
  const keys = new Map(
    recordings.flatMap(({ id, kept, mediaKey }) => [
      [kept.file, mediaKey] as const,
      ...kept.pictures.map(({ file }) => [file, pictureKey(id, file)] as const),
    ]),
  );
  return { recordingId: (id) => ids.get(id) ?? null, file: (name) => keys.get(name) ?? null };
}

/** Where a revision claims of its recording what was not found in it; empty where nowhere. */
function differs({ recording }: Revision, recordings: readonly ReadRecording[]): string {
  if (!recording) return '';
  const found = recordings.find(({ id, mediaKey }) => id === recording.id && mediaKey === recording.mediaKey);
  if (!found) return 'recording';
  const { facts } = found.examined;
  if (facts.playable.type !== recording.mediaType) return 'recording.mediaType';
  return (facts.video !== null) === recording.hasVideo ? '' : 'recording.hasVideo';
}

async function checkRoom(folder: string, bytes: number): Promise<void> {
  const { bavail, bsize } = await statfs(folder);
  if (bavail * bsize < bytes + ROOM_LEFT_BYTES) throw new CopyRefused({ code: 'disk-full' });
}

async function hashFile(path: string, signal: AbortSignal): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path, { highWaterMark: MIB, signal })) hash.update(chunk);
  return hash.digest('hex');
}

/** An id made from a text: the same text gives the same one (RFC 9562, version 8). */
export function idFrom(text: string): string {
  const hex = createHash('sha256').update(text).digest('hex');
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `8${hex.slice(17, 20)}`,
    hex.slice(20, 32),
  ].join('-');
}
