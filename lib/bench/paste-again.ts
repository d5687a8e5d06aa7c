/** Where something of a lesson has to be pasted again after a revision, and ticking it off. */
import type { Database } from '#lib/data/database.ts';
import {
  type CopiedText,
  findCopiedTexts,
  findDescriptionSetup,
  saveCopiedText,
} from '#lib/data/description-texts.ts';
import { findKitBatches } from '#lib/data/kit-batches.ts';
import { findDraft } from '#lib/data/lessons.ts';
import { findPlaceMarks, type PlaceMark, putPlaceMark, removePlaceMark } from '#lib/data/place-marks.ts';
import { getRevision, listRevisions } from '#lib/data/revisions.ts';
import {
  COPIED_FORMATS,
  type DraftFile,
  isDraftFile,
  PLACES,
  type Place,
  type PlaceState,
  placeState,
  standsIn,
  type Wording,
} from '#lib/description/places.ts';
import type { RecordedBatch } from '#lib/kit/recorded-batch.ts';
import { batchChange, changesKits } from '#lib/lesson/batch-change.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';
import { frozenRecordingOf } from './frozen-recording.ts';

/** Whose places they are. */
export interface PlacesOf {
  readonly lessonId: string;
  /** The workshop's slug. */
  readonly workshop: string;
  /** Of the lesson page, whole. */
  readonly lessonAddress: string;
}

/** When something was last taken to a place. */
export interface Since {
  /** Number of the revision; null for what was taken from a draft. */
  readonly revision: number | null;
  readonly at: Date;
}

export interface PlaceRead {
  readonly place: Place;
  readonly state: PlaceState;
  /** What should stand there. */
  readonly now: string;
  readonly since: Since | null;
}

export interface BatchPlaceRead {
  readonly batch: RecordedBatch;
  /** The revision that its kits are known to be brought to: by a tick, or as they were packed. */
  readonly upTo: number;
  readonly stale: boolean;
}

export interface PlacesRead {
  /** Number of the latest revision. */
  readonly latest: number;
  readonly places: readonly PlaceRead[];
  readonly batches: readonly BatchPlaceRead[];
}

/** Null where nothing is published. Places for which the lesson has nothing are left out. */
export async function readPlaces(db: Database, of: PlacesOf): Promise<PlacesRead | null> {
  const marks = await listRevisions(db, of.lessonId);
  const [mark] = marks;
  if (!mark) return null;
  const [latest, wording, copied, placeMarks, batches] = await Promise.all([
    getRevision(db, mark.id),
    wordingOf(db, of),
    findCopiedTexts(db, of.lessonId),
    findPlaceMarks(db, of.lessonId),
    findKitBatches(db, of.lessonId),
  ]);
  const revisionOf = async (number: number): Promise<Revision | null> => {
    const found = marks.find((one) => one.number === number);
    return found ? getRevision(db, found.id) : null;
  };
  const takenTo = async (place: Place): Promise<Taken | null> => {
    const mark = placeMarks.find((one) => one.place === place);
    const format = COPIED_FORMATS[place];
    if (format) return textTaken(copied[format], mark);
    const drafted = isDraftFile(place) ? copied[place] : undefined;
    if (drafted && !(mark && mark.at >= drafted.copiedAt)) return textTaken(drafted, undefined);
    return fileTaken(mark, revisionOf, (revision) => standsIn(place, revision, wording));
  };
  const places: PlaceRead[] = [];
  for (const place of PLACES) {
    const now = standsIn(place, latest, wording);
    const taken = await takenTo(place);
    if (now !== '' || taken !== null) places.push(placeRead(place, now, taken));
  }
  const batchReads: BatchPlaceRead[] = [];
  for (const batch of batches) {
    const upTo = placeMarks.find(({ place }) => place === batchPlace(batch.id))?.revision ?? batch.revision;
    const held = upTo === latest.number ? null : await revisionOf(upTo);
    const stale = held !== null && changesKits(batchChange(batch, held.content, latest.content));
    batchReads.push({ batch, upTo, stale });
  }
  return { latest: latest.number, places, batches: batchReads };
}

const placeRead = (place: Place, now: string, taken: Taken | null): PlaceRead => ({
  place,
  now,
  since: taken?.since ?? null,
  state: placeState(place, taken?.text ?? null, now, taken?.ticked ?? false),
});

/** What is known to stand in a place. */
interface Taken {
  readonly text: string;
  readonly ticked: boolean;
  readonly since: Since;
}

/** The text as it was copied last; the tick holds for what was copied before it. */
function textTaken(copied: CopiedText | undefined, mark: PlaceMark | undefined): Taken | null {
  if (!copied) return null;
  const ticked = mark?.ticked === true && mark.at >= copied.copiedAt;
  return {
    text: copied.text,
    ticked,
    since: { revision: ticked ? mark.revision : null, at: copied.copiedAt },
  };
}

async function fileTaken(
  mark: PlaceMark | undefined,
  revisionOf: (number: number) => Promise<Revision | null>,
  standing: (revision: Revision) => string,
): Promise<Taken | null> {
  const revision = mark && (await revisionOf(mark.revision));
  return mark && revision
    ? { text: standing(revision), ticked: mark.ticked, since: { revision: mark.revision, at: mark.at } }
    : null;
}

/** A batch's place, as marks name it. */
export const batchPlace = (id: string): string => `batch-${id}`;

const wordingOf = async (db: Database, { workshop, lessonAddress }: PlacesOf): Promise<Wording> => ({
  setup: await findDescriptionSetup(db, workshop),
  lessonAddress,
});

export type PlaceFault = { readonly code: 'place-not-found' } | { readonly code: 'revision-not-found' };

/** Notes that a revision was taken to a place, or is there. */
export async function markPlace(
  { db, now }: Bench,
  of: PlacesOf,
  { place, revision, ticked }: Pick<PlaceMark, 'place' | 'revision' | 'ticked'>,
): Promise<Result<null, PlaceFault>> {
  const known = PLACES.find((one) => one === place);
  if (!known) {
    const batches = await findKitBatches(db, of.lessonId);
    if (!batches.some(({ id }) => batchPlace(id) === place)) return failed({ code: 'place-not-found' });
  }
  const mark = (await listRevisions(db, of.lessonId)).find(({ number }) => number === revision);
  if (!mark) return failed({ code: 'revision-not-found' });
  const at = now();
  const format = known && COPIED_FORMATS[known];
  if (format) {
    // What stands there now is what this revision gives.
    const text = standsIn(known, await getRevision(db, mark.id), await wordingOf(db, of));
    await saveCopiedText(db, { lessonId: of.lessonId, format, text, copiedAt: at });
  }
  await putPlaceMark(db, of.lessonId, { place, revision, ticked, at });
  return ok(null);
}

/**
 * Notes that captions or chapters were taken out of the draft: as the latest
 * revision's where it says the same, else word for word as they are.
 */
export async function markDraftFile(
  bench: Bench,
  of: PlacesOf & { readonly workshopId: string },
  place: DraftFile,
): Promise<Result<null, PlaceFault>> {
  const { db, now } = bench;
  const draft = await findDraft(db, of);
  const [mark] = await listRevisions(db, of.lessonId);
  if (!draft) return failed({ code: 'place-not-found' });
  const wording = await wordingOf(db, of);
  const recording = await frozenRecordingOf(db, of.lessonId);
  const text = standsIn(place, { ...draft, recording }, wording);
  if (mark && standsIn(place, await getRevision(db, mark.id), wording) === text)
    return markPlace(bench, of, { place, revision: mark.number, ticked: false });
  await saveCopiedText(db, { lessonId: of.lessonId, format: place, text, copiedAt: now() });
  return ok(null);
}

/** Forgets what was taken to a place; a place that is not known stays so. */
export async function forgetPlace(db: Database, lessonId: string, place: string): Promise<void> {
  await removePlaceMark(db, lessonId, place);
  const format = isDraftFile(place)
    ? place
    : PLACES.filter((one) => one === place).map((one) => COPIED_FORMATS[one])[0];
  if (format) await db.copiedText.deleteMany({ where: { lessonId, format } });
}
