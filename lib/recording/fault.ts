/** Why a recording was not taken, or could not be. Kept as JSON in its row; worded in app/words. */
import { z } from 'zod';
import { LOOKS, OTHER_CONTAINERS } from './sniff.ts';

const ms = z.int().min(0);

export const recordingFault = z.discriminatedUnion('code', [
  /** The bytes are no recording. */
  z.object({ code: z.literal('not-a-recording'), looksLike: z.enum(LOOKS) }),
  /** A recording in a container that is not taken. */
  z.object({ code: z.literal('container-not-taken'), container: z.enum(OTHER_CONTAINERS) }),
  /** The container is right and cannot be read. */
  z.object({ code: z.literal('unreadable') }),
  /** An MP4 whose index would have been written last, and was not: the recording or the copying stopped. */
  z.object({ code: z.literal('index-missing') }),
  z.object({ code: z.literal('no-sound-nor-picture') }),
  z.object({
    code: z.literal('codec-not-taken'),
    codec: z.string().max(40),
    of: z.enum(['picture', 'sound']),
  }),
  z.object({
    code: z.literal('picture-too-large'),
    width: z.number(),
    height: z.number(),
    mostPixels: z.int(),
  }),
  z.object({ code: z.literal('too-long'), durationMs: ms, longestMs: ms }),
  z.object({ code: z.literal('too-short') }),
  /** The file stops before its announced end; null where it announces none. */
  z.object({ code: z.literal('breaks-off'), endsAtMs: ms, announcedMs: ms.nullable() }),
  /** Something in it cannot be decoded; the moment is the last that could. */
  z.object({ code: z.literal('damaged'), atMs: ms }),
  /** Fewer bytes arrived than were announced. */
  z.object({ code: z.literal('incomplete'), sizeBytes: z.int(), announcedBytes: z.int() }),
  // What follows is not the file's fault: trying again can help.
  z.object({ code: z.literal('took-too-long'), longestMs: ms }),
  z.object({ code: z.literal('too-much-memory') }),
  z.object({ code: z.literal('disk-full') }),
  z.object({ code: z.literal('converter-missing') }),
  z.object({ code: z.literal('gave-up') }),
]);
export type RecordingFault = Readonly<z.infer<typeof recordingFault>>;

const OURS: readonly RecordingFault['code'][] = [
  'took-too-long',
  'too-much-memory',
  'disk-full',
  'converter-missing',
  'gave-up',
];

/** Whether the same file may well be taken at another try. */
export const mayTryAgain = (fault: RecordingFault): boolean => OURS.includes(fault.code);
