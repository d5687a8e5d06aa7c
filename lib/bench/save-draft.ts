/**
 * Saves changes of a lesson's draft. A save names the version it started from:
 * on that version it is written whole or not at all; on an older one nothing
 * is written and the newer state is handed back. The same save sent again
 * gets the same answer, so that a lost answer costs nothing.
 */
import { z } from 'zod';
import type { Queries } from '#lib/data/database.ts';
import {
  countOtherCues,
  findSave,
  type LessonAddress,
  lockLesson,
  type PastSave,
  readDraft,
  savesSince,
  type VersionedDraft,
  writeDraft,
} from '#lib/data/lessons.ts';
import {
  applyChange,
  type Change,
  type ChangeFault,
  change,
  checkContent,
  type Draft,
} from '#lib/lesson/change.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import { type Cue, MOST_CUES } from '#lib/transcript/cue.ts';
import type { Bench } from './bench.ts';

/** What a browser sends. */
export const saveRequest = z.object({
  saveId: z.uuid(),
  baseVersion: z.int().min(1),
  changes: z.array(change).min(1).max(5_000),
});
export type SaveRequest = z.infer<typeof saveRequest>;

export interface SaveDraftInput extends SaveRequest, LessonAddress {
  readonly userId: string;
}

export type SaveDraftFault =
  | { readonly code: 'not-found' }
  /** The id of the save was used for another lesson. */
  | { readonly code: 'save-id-taken' }
  /** Someone saved after `baseVersion`; nothing was written. */
  | { readonly code: 'draft-is-newer'; readonly newer: VersionedDraft; readonly saves: readonly PastSave[] }
  /** What was sent cannot stand; nothing was written. */
  | { readonly code: 'changes-not-valid'; readonly faults: readonly ChangeFault[] };

/** Saves; see the head of this file. @returns the draft's version after the save. */
export const saveDraft = (
  bench: Bench,
  input: SaveDraftInput,
): Promise<Result<{ readonly version: number }, SaveDraftFault>> =>
  // Waiting for another save of the same lesson is the common case here, not a failure.
  bench.db.$transaction((tx) => saveDraftIn(tx, bench.now(), input));

/** As `saveDraft`, inside a transaction that another action holds. */
export async function saveDraftIn(
  tx: Queries,
  at: Date,
  input: SaveDraftInput,
): Promise<Result<{ readonly version: number }, SaveDraftFault>> {
  const lesson = await lockLesson(tx, input);
  if (!lesson) return failed({ code: 'not-found' });

  const earlier = await findSave(tx, input.saveId);
  if (earlier) {
    return earlier.lessonId === input.lessonId
      ? ok({ version: earlier.version })
      : failed({ code: 'save-id-taken' });
  }
  if (input.baseVersion !== lesson.version) {
    const newer = await readDraft(tx, input);
    if (!newer) return failed({ code: 'not-found' });
    return failed({
      code: 'draft-is-newer',
      newer,
      saves: await savesSince(tx, input.lessonId, input.baseVersion),
    });
  }

  const checked = checkContent(contentAfter(lesson.content, input.changes));
  const faults = [...unstorableText(input.changes), ...(checked.ok ? [] : checked.fault)];
  const { put, remove } = cuesAfter(input.changes);
  const others = await countOtherCues(tx, input.lessonId, [...put.map((c) => c.id), ...remove]);
  if (put.length > 0 && others + put.length > MOST_CUES) {
    faults.push({
      code: 'change-not-valid',
      where: 'cues',
      message: `A lesson holds at most ${MOST_CUES} cues.`,
    });
  }
  if (!checked.ok || faults.length > 0) return failed({ code: 'changes-not-valid', faults });

  const version = lesson.version + 1;
  await writeDraft(tx, { ...input, version, content: checked.value, put, remove, at });
  return ok({ version });
}

const contentAfter = (content: Draft['content'], changes: readonly Change[]): Draft['content'] =>
  changes
    .filter((made) => made.kind !== 'cues')
    .reduce<Draft>((draft, made) => applyChange(draft, made), { content, cues: [] }).content;

/** The last word on each cue; a save needs no other cue of the lesson. */
function cuesAfter(changes: readonly Change[]): { put: readonly Cue[]; remove: readonly string[] } {
  const last = new Map<string, Cue | null>();
  for (const made of changes) {
    if (made.kind !== 'cues') continue;
    for (const id of made.remove) last.set(id, null);
    for (const one of made.put) last.set(one.id, one);
  }
  const all = [...last];
  return {
    put: all.flatMap(([, one]) => (one ? [one] : [])),
    remove: all.flatMap(([id, one]) => (one ? [] : [id])),
  };
}

/**
 * Text that PostgreSQL cannot keep: the character NUL, and halves of a
 * character pair. Told as a fault, since silently mending it would make the
 * browser's copy and ours differ.
 */
function unstorableText(value: unknown, where = 'changes'): ChangeFault[] {
  if (typeof value === 'string') {
    return value.isWellFormed() && !value.includes('\u0000')
      ? []
      : [{ code: 'change-not-valid', where, message: 'The text holds a character that cannot be kept.' }];
  }
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => unstorableText(inner, `${where}/${key}`));
}
