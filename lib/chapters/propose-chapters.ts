/**
 * Chapters proposed for a transcript: where they begin, of which kind they may
 * be and why, and what they could be called. What the teacher has set stays as
 * it is and parts the rest; where she has refused a beginning, none is
 * proposed again.
 */
import type { Span } from '#lib/time/time.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { findBoundaries } from './boundaries.ts';
import type { Chapter } from './chapter.ts';
import { SHORTEST_CHAPTER_MS } from './chapter-rules.ts';
import { wordsOf } from './content-words.ts';
import { hearSentence, type ProposedKind, proposeKinds } from './kinds.ts';
import type { Habits } from './openers.ts';
import { type Sentence, sentencesOf } from './sentences.ts';
import { characteristicNames, titleFor } from './titles.ts';

export interface ProposedChapter extends ProposedKind {
  /** The cue in which it begins; names the proposal for as long as the cue is there. */
  readonly cueId: string;
  readonly startMs: number;
  readonly title: string;
  /** Its first sentence. */
  readonly opens: string;
  /** Silence before its first word, ms; 0 where there is none, or at the start. */
  readonly silenceMs: number;
}

export interface ChapterProposals {
  /** How many chapters the transcript itself suggests, those that are set included. */
  readonly suggested: number;
  readonly fewest: number;
  readonly most: number;
  /** The new ones among so many chapters in all, in order of time. */
  readonly forCount: (count: number) => readonly ProposedChapter[];
}

export interface MarkedTranscript {
  /** In order of time. */
  readonly cues: readonly Cue[];
  /** Pauses of the recording; none where there is none. */
  readonly pauses: readonly Span[];
  /** What the teacher has set. */
  readonly chapters: readonly Chapter[];
  /** Cues in which she has refused that a chapter begins. */
  readonly refused: readonly string[];
  readonly habits: Habits;
}

/** How far a beginning may move to come to rest in a pause, ms. */
const PAUSE_WITHIN_MS = 2_000;
/** How long before its first word a chapter begins, where there is silence, ms. */
const LEAD_MS = 400;
/** A chapter of this length is worth being parted, ms. */
const LONG_MS = 240_000;
/** How far around a refused beginning no other is proposed, ms. */
const REFUSED_AROUND_MS = 15_000;
/** A shorter gap between two sentences is a breath, ms. */
const LEAST_SILENCE_MS = 300;

export function proposeChapters(marked: MarkedTranscript): ChapterProposals {
  const sentences = sentencesOf(marked.cues);
  const set = new Map<number, Chapter>();
  for (const chapter of marked.chapters) {
    const at = sentenceOf(sentences, chapter.startMs);
    if (at !== null) set.set(at, chapter);
  }
  const refused = new Set(marked.refused);
  const heard = sentences.map(({ text }) => hearSentence(wordsOf(text)));
  const found = findBoundaries(sentences, {
    habits: marked.habits,
    fixed: [...set.keys()],
    barred: nearRefused(sentences, refused),
    kinds: heard.map(({ nats }) => nats),
    shortestMs: SHORTEST_CHAPTER_MS,
  });
  const partsFor = (pieces: number): readonly Part[] => {
    const starts = found.startsFor(pieces);
    const kinds = proposeKinds(
      starts.map((start, index) => heard.slice(start, starts[index + 1] ?? heard.length)),
      starts.map((start) => set.get(start)?.kind ?? null),
    );
    const parts = kinds.flatMap((kind, index): Part[] => {
      const start = starts[index] ?? 0;
      return [{ start, end: starts[index + 1] ?? sentences.length, kind, set: set.has(start) }];
    });
    return withoutTwins(parts, sentences);
  };
  const suggested = partsFor(found.suggested).length;
  return {
    suggested,
    fewest: found.fewest,
    most: found.most,
    forCount: (count) => {
      const parts = partsOfCount(partsFor, Math.min(found.most, Math.max(found.fewest, count)), found.most);
      const names = characteristicNames(
        parts.map(({ start, end }) => sentences.slice(start, end).map(({ text }) => text)),
      );
      return parts.flatMap(({ start, kind, set: isSet }, index) => {
        const sentence = sentences[start];
        if (!sentence || isSet || refused.has(sentence.cueId)) return [];
        return [
          {
            ...kind,
            ...placeOf(sentences, start, marked.pauses),
            cueId: sentence.cueId,
            title: titleFor(
              kind.kind,
              names[index] ?? [],
              parts.filter((part) => part.kind.kind === kind.kind).length === 1,
            ),
            opens: sentence.text,
          },
        ];
      });
    },
  };
}

interface Part {
  /** Indexes of its first sentence, and of the one behind its last. */
  readonly start: number;
  readonly end: number;
  readonly kind: ProposedKind;
  /** Whether the teacher has set it. */
  readonly set: boolean;
}

/** Parts of which the second is of the same kind as the first and both together are not long become one. */
function withoutTwins(parts: readonly Part[], sentences: readonly Sentence[]): readonly Part[] {
  const kept: Part[] = [];
  for (const part of parts) {
    const before = kept.at(-1);
    const startMs = sentences[before?.start ?? 0]?.startMs ?? 0;
    const endMs = sentences[part.end - 1]?.endMs ?? 0;
    if (before && !part.set && before.kind.kind === part.kind.kind && endMs - startMs < LONG_MS)
      kept[kept.length - 1] = { ...before, end: part.end };
    else kept.push(part);
  }
  return kept;
}

/**
 * So many parts: the fewest pieces that leave so many when twins are joined.
 * Where none do, the parts that come nearest to the number, the more of two as near.
 */
function partsOfCount(
  partsFor: (pieces: number) => readonly Part[],
  count: number,
  most: number,
): readonly Part[] {
  let nearest: readonly Part[] = partsFor(count);
  for (let pieces = count + 1; pieces <= most && nearest.length < count; pieces++) {
    const parts = partsFor(pieces);
    if (Math.abs(parts.length - count) <= Math.abs(nearest.length - count)) nearest = parts;
    if (pieces > 2 * count + 4) break;
  }
  return nearest;
}

/** Whoever refuses a beginning does not want the next sentence in its stead: neighbours are barred with it. */
function nearRefused(sentences: readonly Sentence[], refused: ReadonlySet<string>): readonly number[] {
  const placesMs = sentences.filter(({ cueId }) => refused.has(cueId)).map(({ startMs }) => startMs);
  return sentences.flatMap(({ startMs }, index) =>
    placesMs.some((placeMs) => Math.abs(placeMs - startMs) <= REFUSED_AROUND_MS) ? [index] : [],
  );
}

/** The sentence that a set chapter begins with: the first of which the greater part lies in it. */
function sentenceOf(sentences: readonly Sentence[], startMs: number): number | null {
  const at = sentences.findIndex((sentence) => (sentence.startMs + sentence.endMs) / 2 >= startMs);
  return at < 0 ? null : at;
}

/**
 * Where a chapter begins whose first sentence is known: shortly before it,
 * inside the pause that ends nearest to it; else inside the silence between
 * the cues; else with its first word. The first chapter begins with the recording.
 */
function placeOf(
  sentences: readonly Sentence[],
  at: number,
  pauses: readonly Span[],
): Pick<ProposedChapter, 'startMs' | 'silenceMs'> {
  const sentence = sentences[at];
  const before = sentences[at - 1];
  if (!sentence || !before) return { startMs: 0, silenceMs: 0 };
  const near = pauses
    .filter(({ endMs }) => Math.abs(endMs - sentence.startMs) <= PAUSE_WITHIN_MS)
    // Never so far back that it would lie inside the sentence before.
    .filter(({ endMs }) => endMs > (before.startMs + before.endMs) / 2)
    .sort((a, b) => Math.abs(a.endMs - sentence.startMs) - Math.abs(b.endMs - sentence.startMs))[0];
  const silence = near ?? { startMs: before.endMs, endMs: sentence.startMs };
  const silenceMs = silence.endMs - silence.startMs;
  if (silenceMs < LEAST_SILENCE_MS) return { startMs: sentence.startMs, silenceMs: 0 };
  return { startMs: Math.round(silence.endMs - Math.min(LEAD_MS, silenceMs / 2)), silenceMs };
}
