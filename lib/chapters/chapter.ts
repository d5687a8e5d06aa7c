/**
 * A chapter is a titled part of a recording: from its own start to the next
 * one's, or to the recording's end. This folder knows what chapters must be,
 * and reads and writes lists of them; it knows no lesson.
 */
import { z } from 'zod';
import { line, thingId } from '#lib/thing.ts';
import { momentMs } from '#lib/time/time.ts';

/** Kinds of chapter, in the order in which a lesson usually has them. */
export const CHAPTER_KINDS = [
  'opening',
  'materials',
  'terms',
  'setup',
  'repeat unit',
  'finishing',
  'clasp',
  'variation',
  'closing',
] as const;
export type ChapterKind = (typeof CHAPTER_KINDS)[number];

export const chapter = z.object({
  id: thingId,
  kind: z.enum(CHAPTER_KINDS),
  title: line,
  startMs: momentMs,
});
export type Chapter = Readonly<z.infer<typeof chapter>>;
