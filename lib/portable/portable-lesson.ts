/**
 * A lesson as plain files in a folder: what `lesson.json` and the documents
 * beside it hold. Files are named by what they are, never by ids of a
 * database, so that a lesson that was brought in elsewhere gives the same
 * files again.
 */
import { z } from 'zod';
import { content } from '#lib/lesson/content.ts';
import { revision } from '#lib/lesson/revision.ts';
import { momentMs } from '#lib/time/time.ts';
import { cue, MOST_CUES } from '#lib/transcript/cue.ts';
import { loss } from '#lib/transcript/loss.ts';
import { BENCH_FILE, portableBench } from './portable-bench.ts';

export const PORTABLE_SCHEMA = 1;
export const LESSON_FILE = 'lesson.json';
export const LESSON_SCHEMA_FILE = 'lesson.schema.json';
export const DRAFT_FILE = 'draft.json';

const recordingFile = z.string().regex(/^media\/recording-[1-9]\d{0,3}\.(mp4|m4a|mp3)$/);
const pictureFile = z
  .string()
  .regex(/^stills\/recording-[1-9]\d{0,3}\/[a-z0-9][a-z0-9-]{0,63}\.jpg$/)
  .describe('A JPEG picture');

const keptRecording = z.object({
  file: recordingFile.describe('As pupils play it'),
  name: z.string().max(255).describe('What the file was called when it was brought in'),
  mediaType: z.enum(['video/mp4', 'audio/mp4', 'audio/mpeg']),
  poster: pictureFile.nullable().describe('The picture that stands for it'),
  posterAtMs: momentMs.nullable(),
  pictures: z
    .array(z.object({ file: pictureFile, atMs: momentMs.nullable() }))
    .max(2_000)
    .describe('Every picture taken from it that a revision, the draft or a poster shows'),
});
export type KeptRecording = Readonly<z.infer<typeof keptRecording>>;

export const portableLesson = z.object({
  $schema: z.string().max(200),
  schema: z.literal(PORTABLE_SCHEMA),
  slug: z
    .string()
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
    .max(80)
    .describe('Last part of the address of its page'),
  recordings: z.array(keptRecording).max(100).describe('In the order in which they came'),
  current: recordingFile.nullable().describe('The recording that the draft is about'),
  revisions: z
    .array(
      z.object({
        number: z.int().min(1),
        publishedAt: z.iso.datetime(),
        file: z.string().regex(/^revisions\/[1-9]\d{0,4}\.json$/),
      }),
    )
    .max(2_000)
    .describe('Oldest first; each document stands in a file of its own'),
  draft: z.literal(DRAFT_FILE).nullable().describe('Null where only what is published was taken along'),
  bench: z
    .literal(BENCH_FILE)
    .nullable()
    .default(null)
    .describe('What the workshop keeps about it; only in copies for its owner'),
  transcriptFiles: z
    .array(
      z.object({
        file: z.string().regex(/^transcripts\/[1-9]\d{0,3}$/),
        name: z.string().max(255),
        format: z.string().max(40),
        encoding: z.string().max(40),
        losses: z.array(loss).max(20_000),
        createdAt: z.iso.datetime(),
      }),
    )
    .max(1_000)
    .describe('Transcripts as they were brought in; only with the draft'),
});
export type PortableLesson = Readonly<z.infer<typeof portableLesson>>;

/** What was not published yet: the content and the cues as they stand at the bench. */
export const portableDraft = z.object({ content, cues: z.array(cue).max(MOST_CUES) });
export type PortableDraft = Readonly<z.infer<typeof portableDraft>>;

/** JSON Schema (draft 2020-12) of all four documents, as it lies beside them. */
export const portableLessonSchema = (): object => ({
  ...z.toJSONSchema(portableLesson, { io: 'input' }),
  title: 'A lesson as a portable copy: lesson.json; revisions/N.json, draft.json and bench.json are in $defs',
  description:
    'Lengths are millimetres, masses grams, money whole minor units, times whole milliseconds. Names of files are relative to the folder of lesson.json.',
  $defs: {
    revision: withoutHead(z.toJSONSchema(revision, { io: 'input' })),
    draft: withoutHead(z.toJSONSchema(portableDraft, { io: 'input' })),
    bench: withoutHead(z.toJSONSchema(portableBench, { io: 'input' })),
  },
});

const withoutHead = ({ $schema: _, ...rest }: object & { $schema?: unknown }): object => rest;

/** What a recording is called in the copy: `recording-1`. */
export const recordingName = (index: number): string => `recording-${index + 1}`;

export const MEDIA_ENDINGS: Readonly<Record<KeptRecording['mediaType'], string>> = {
  'video/mp4': 'mp4',
  'audio/mp4': 'm4a',
  'audio/mpeg': 'mp3',
};
