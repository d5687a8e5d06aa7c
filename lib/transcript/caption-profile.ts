/**
 * What captions are held to, by the readers they are for. Each figure has its
 * source beside it; none of them is a law, and a house's own rules go first.
 */

/** `warn`: hard to read for some. `error`: hard to read for most. Null where the profile says nothing. */
interface Limit {
  readonly warn: number | null;
  readonly error: number | null;
}

export interface CaptionProfile {
  readonly name: string;
  /** Characters of a line, at most. */
  readonly lineLength: Limit;
  readonly mostLines: number;
  /** Characters a second, at most; spaces count, line breaks count as one. */
  readonly speed: Limit;
  /** Words a minute, at most. */
  readonly wordsAMinute: Limit;
  /** ms, at least and at most. */
  readonly shortestMs: Limit;
  readonly longestMs: Limit;
  /** A break between two captions that is shorter than this flickers, ms; none at all is fine. */
  readonly leastGapMs: number;
}

export const CAPTION_PROFILES = {
  /** Grown readers who watch hands at the same time. Common practice of subtitling, collected. */
  lesson: {
    name: 'Lesson',
    lineLength: { warn: 37, error: 42 },
    mostLines: 2,
    speed: { warn: 17, error: 25 },
    wordsAMinute: { warn: 180, error: null },
    shortestMs: { warn: 1_000, error: 700 },
    longestMs: { warn: 7_000, error: 8_000 },
    leastGapMs: 83,
  },
  /** Figures of the DCMP Captioning Key for special interest, adults: 32 characters, 160 words a minute, 2 s; 225 words never. */
  school: {
    name: 'School',
    lineLength: { warn: 32, error: 37 },
    mostLines: 2,
    speed: { warn: 15, error: 25 },
    wordsAMinute: { warn: 160, error: 225 },
    shortestMs: { warn: 2_000, error: 1_000 },
    longestMs: { warn: 7_000, error: 8_000 },
    leastGapMs: 83,
  },
  /** Figures of the BBC Subtitle Guidelines: 37 characters, 180 words a minute, a break of a second or none. */
  broadcast: {
    name: 'Broadcast',
    lineLength: { warn: 37, error: 42 },
    mostLines: 2,
    speed: { warn: null, error: 25 },
    wordsAMinute: { warn: 180, error: 225 },
    shortestMs: { warn: 1_000, error: 700 },
    longestMs: { warn: 7_000, error: 10_000 },
    leastGapMs: 1_000,
  },
  /** The six-second rule (12 characters a second), with 35 characters and a quarter second between (Karamitroglou 1998). */
  unhurried: {
    name: 'Unhurried',
    lineLength: { warn: 35, error: 42 },
    mostLines: 2,
    speed: { warn: 12, error: 17 },
    wordsAMinute: { warn: 140, error: 180 },
    shortestMs: { warn: 1_500, error: 1_000 },
    longestMs: { warn: 6_000, error: 7_000 },
    leastGapMs: 250,
  },
} as const satisfies Readonly<Record<string, CaptionProfile>>;

export type CaptionProfileId = keyof typeof CAPTION_PROFILES;
export const CAPTION_PROFILE_IDS = Object.keys(CAPTION_PROFILES) as readonly CaptionProfileId[];
