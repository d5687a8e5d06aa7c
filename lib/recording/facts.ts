/**
 * What is known about a recording once it was decoded whole. Kept as JSON in
 * its row. Sizes are in pixels as they are seen, after rotation; times in ms.
 */
import { z } from 'zod';
import { momentMs } from '#lib/time/time.ts';
import { CONTAINERS } from './sniff.ts';

const pixels = z.int().min(1).max(100_000);

export const recordingFacts = z.object({
  container: z.enum(CONTAINERS),
  /** How long it plays. */
  durationMs: momentMs,
  video: z
    .object({
      codec: z.string().max(40),
      width: pixels,
      height: pixels,
      /** By how much a player turns the picture, clockwise. */
      rotation: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
      /** Average frames a second as the file states them, or null. */
      framesPerSecond: z.number().positive().max(1_000_000).nullable(),
    })
    .nullable(),
  audio: z
    .object({
      codec: z.string().max(40),
      channels: z.int().min(1).max(64),
      sampleRate: z.int().min(1).max(1_000_000),
    })
    .nullable(),
  /** What pupils play. */
  playable: z.object({
    type: z.enum(['video/mp4', 'audio/mp4', 'audio/mpeg']),
    /** The file as it came, its streams in a new container, or a copy made for the web. */
    made: z.enum(['original', 'repacked', 'converted']),
    width: pixels.nullable(),
    height: pixels.nullable(),
    sizeBytes: z.int().min(0),
  }),
});
export type RecordingFacts = Readonly<z.infer<typeof recordingFacts>>;
