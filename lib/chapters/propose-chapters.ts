/**
 * Chapters proposed for a transcript: where they begin, of which kind they may
 * be and why, and what they could be called. What the teacher has set stays as
 * it is and parts the rest; where she has refused a beginning, none is
 * proposed again.
 */
import type { Span } from '#lib/time/time.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { findBoundaries } from './boundaries.ts';
import type { Chapter, ChapterKind } from './chapter.ts';
import { SHORTEST_CHAPTER_MS } from './chapter-rules.ts';
import { kindNats, type ProposedKind, proposeKinds } from './kinds.ts';
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
  const found = findBoundaries(sentences, {
    habits: marked.habits,
    fixed: [...set.keys()],
    barred: sentences.flatMap(({ cueId }, index) => (refused.has(cueId) ? [index] : [])),
    kinds: sentences.map(({ text }) => kindNats(text)),
    shortestMs: SHORTEST_CHAPTER_MS,
  });
  return {
    suggested: found.suggested,
    fewest: found.fewest,
    most: found.most,
    forCount: (count) => {
      const starts = found.startsFor(count);
      const texts = starts.map((start, index) =>
        sentences.slice(start, starts[index + 1] ?? sentences.length).map(({ text }) => text),
      );
      const kinds = proposeKinds(
        texts,
        starts.map((start): ChapterKind | null => set.get(start)?.kind ?? null),
      );
      const names = characteristicNames(texts);
      return starts.flatMap((start, index) => {
        const sentence = sentences[start];
        const kind = kinds[index];
        if (!sentence || !kind || set.has(start) || refused.has(sentence.cueId)) return [];
        return [
          {
            ...kind,
            ...placeOf(sentences, start, marked.pauses),
            cueId: sentence.cueId,
            title: titleFor(kind.kind, names[index] ?? []),
            opens: sentence.text,
          },
        ];
      });
    },
  };
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
