/**
 * What a reader of transcripts could not take over as it stood, with the line
 * of the file. Nothing is dropped without one of these: a teacher can look the
 * line up, and the file itself is kept whole.
 */
import { z } from 'zod';

/** Said in a file, and not in the cues that were made of it. */
export const LOST = [
  /** Text behind `WEBVTT` or in the lines below it. */
  'header-text',
  'note',
  'style',
  'region',
  /** A cue setting that means nothing, or that names a region. */
  'setting',
  /** Bold, italic, classes, language, ruby and time tags: the words stay, the marking goes. */
  'formatting',
  /** Who speaks, where one voice speaks the whole file. */
  'voice',
  /** Where on the picture a cue stood, in a file whose format has no settings. */
  'place',
  /** When single words of a cue come; the cue keeps its own times. */
  'word-times',
  /** Names of cues; ours have ids of their own. */
  'cue-name',
  /** A line with an arrow whose times cannot be read, and the text below it. */
  'time-unreadable',
  'time-negative',
  /** Later than lib/time allows. */
  'time-too-late',
  /** A paragraph to which no time belongs. */
  'text-without-time',
  'text-before-first-time',
  /** A time with no text. */
  'cue-empty',
  /** Chapters: those that are not to be listed; pictures, addresses and places; ends of their own; those beyond the most that a lesson holds. */
  'chapter-hidden',
  'chapter-extra',
  'chapter-end',
  'chapter-too-many',
  /** The end of a title that is longer than a lesson holds. */
  'title-cut',
  /** Begins as JSON and is none, or holds no list of chapters. */
  'json-unreadable',
] as const;

/** Taken over, but not as it stood. */
export const ALTERED = [
  /** A character that text cannot hold, now U+FFFD. */
  'character-unreadable',
  /** Who speaks, now written before the text wherever the voice changes. */
  'voice-written-out',
  /** `&amp;` in a format that knows no such signs, taken as `&`. */
  'escape-taken',
  'blank-line-in-cue',
  'number-missing',
  /** A fraction of a second with other than three digits. */
  'fraction-digits',
  'end-before-start',
  /** Nothing says when it ends: with the recording, or, where its length is not known, when it has been read. */
  'end-missing',
  /** Times that count from something else than the recording's start, taken as if they did. */
  'time-base',
  'out-of-order',
  /** Too long for one cue; parted into several, time shared by length. */
  'long-cue-parted',
] as const;

export const loss = z.object({
  code: z.enum([...LOST, ...ALTERED]),
  /** Line in the file, counted from 1. */
  line: z.int().min(1),
  /** What stood there, its beginning at least. */
  text: z.string().max(300),
});
export type Loss = Readonly<z.infer<typeof loss>>;
export type LossCode = Loss['code'];

/** Whether something said in the file is missing from the cues, rather than taken over in another form. */
export const isLost = (code: LossCode): boolean => (LOST as readonly string[]).includes(code);

/** A loss with as much of the text as a list has room for. */
export const lossOf = (code: LossCode, line: number, text: string): Loss => ({
  code,
  line,
  text: text.length <= 300 ? text : `${text.slice(0, 299)}…`,
});
