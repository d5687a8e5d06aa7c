/**
 * Breaks and times cues anew so that they meet a profile. No word is changed,
 * left out or moved past another; a number stays with its unit; a caption is
 * shown while its words are spoken, and longer where there is room. What
 * cannot be met so (speech that is faster than reading) stays and is for
 * caption-faults.ts to tell.
 */
import { breakLines, runLengths } from './break-lines.ts';
import { captionFaults, lengthOf } from './caption-faults.ts';
import type { CaptionProfile } from './caption-profile.ts';
import { cheapestParts } from './cheapest-parts.ts';
import { type Cue, compareCues } from './cue.ts';
import { type CueEdit, withTiming } from './edit-cues.ts';
import { breakCost, gluedPlaces, wordsOf } from './word-breaks.ts';

/** A break in speech of this length parts captions whatever they hold, ms. */
const PASSAGE_GAP_MS = 800;
/** How long a caption may stay behind its last word, ms (common practice: 1.5 s to 2 s). */
const MOST_LINGER_MS = 1_500;
/** How much sooner than its first word it may come, ms. */
const MOST_EARLY_MS = 300;
const SHORTEST_MS = 50;

/** A word with the time in which it is spoken, as far as its cue tells, and the cue that it stood in. */
interface Word {
  readonly text: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly cue: Cue;
}

/** The change of cues; empty where all is well, or where nothing would read better. @param newId gives ids to captions that there was no cue for */
export function fitCaptions(cues: readonly Cue[], profile: CaptionProfile, newId: () => string): CueEdit {
  const ordered = cues.filter((cue) => cue.text !== '').toSorted(compareCues);
  const faulty = new Set(captionFaults(ordered, profile).map(({ cueId }) => cueId));
  const ways =
    faulty.size === 0 ? [] : [brokenAnew(ordered, faulty, profile, newId), linesAnew(ordered, profile)];
  const [best] = [ordered, ...ways]
    .map((made) => ({ made, bad: badness(made, profile) }))
    .sort((a, b) => a.bad - b.bad);
  const made = best?.made ?? ordered;
  const before = new Map(cues.map((cue) => [cue.id, cue]));
  const kept = new Set(made.map(({ id }) => id));
  return {
    put: made.filter((cue) => !isSame(before.get(cue.id), cue)),
    remove: ordered.filter(({ id }) => !kept.has(id)).map(({ id }) => id),
  };
}

function brokenAnew(
  ordered: readonly Cue[],
  faulty: ReadonlySet<string>,
  profile: CaptionProfile,
  newId: () => string,
): readonly Cue[] {
  const used = new Set<string>();
  const drafts = passagesOf(ordered).flatMap((passage) =>
    passage.some((cue) => faulty.has(cue.id)) ? breakPassage(passage, profile) : passage.map(asDraft),
  );
  return timeDrafts(drafts, profile).map((draft): Cue => {
    const isNew = used.has(draft.cue.id);
    const id = isNew ? newId() : draft.cue.id;
    used.add(id);
    // Only the cue itself was heard to begin, not what is parted from it.
    const cue = isNew && draft.cue.timing ? withTiming(draft.cue, 'approximate') : draft.cue;
    return { ...cue, id, startMs: draft.startMs, endMs: draft.endMs, text: draft.text };
  });
}

/** The same cues at the same times, only their lines broken anew. */
const linesAnew = (ordered: readonly Cue[], profile: CaptionProfile): readonly Cue[] =>
  ordered.map((cue) =>
    fits(cue.text, profile) ? cue : { ...cue, text: breakLines(cue.text, lineMost(profile)) },
  );

/** How hard captions are to read, all together: errors count thrice, and what is too fast by how much of it there is. */
function badness(cues: readonly Cue[], profile: CaptionProfile): number {
  const lengths = new Map(cues.map(({ id, text }) => [id, lengthOf(text)]));
  const whole = lineMost(profile) * profile.mostLines;
  return captionFaults(cues, profile).reduce((sum, { code, level, cueId }) => {
    // Pace is the speech's own; how captions are cut is ours.
    const weight = code === 'fast' || code === 'words-fast' ? (lengths.get(cueId) ?? 0) / whole : 8;
    return sum + weight * (level === 'error' ? 3 : 1);
  }, 0);
}

const isSame = (one: Cue | undefined, other: Cue): boolean =>
  one !== undefined && one.startMs === other.startMs && one.endMs === other.endMs && one.text === other.text;

/** A caption to be: its words, and when they are spoken. */
interface Draft {
  /** The cue whose id, settings and timing it takes over. */
  readonly cue: Cue;
  readonly text: string;
  readonly spokenFrom: number;
  readonly spokenTo: number;
}

const asDraft = (cue: Cue): Draft => ({
  cue,
  text: cue.text,
  spokenFrom: cue.startMs,
  spokenTo: cue.endMs,
});

/** Cues that follow each other without a break and can be joined: one speaker, one place, times of one kind. */
function passagesOf(cues: readonly Cue[]): readonly (readonly Cue[])[] {
  const passages: Cue[][] = [];
  for (const cue of cues) {
    const before = passages.at(-1)?.at(-1);
    const goesOn =
      before &&
      cue.startMs - before.endMs < PASSAGE_GAP_MS &&
      cue.settings === before.settings &&
      (cue.timing === before.timing || (before.timing !== undefined && cue.timing === 'approximate')) &&
      !beginsSpeaker(cue.text);
    if (goesOn) passages.at(-1)?.push(cue);
    else passages.push([cue]);
  }
  return passages;
}

/** `Mara:`, `- `, `>> `: somebody begins to speak. */
const beginsSpeaker = (text: string): boolean =>
  /^(?:[-–—]\s|>>|\p{Lu}[\p{L}\p{N} .'-]{0,30}:\s)/u.test(text);

function wordsIn(passage: readonly Cue[]): readonly Word[] {
  return passage.flatMap((cue, at) => {
    // Where cues overlap, the words of the first are spoken before the second begins.
    const endMs = Math.max(cue.startMs + 1, Math.min(cue.endMs, passage[at + 1]?.startMs ?? cue.endMs));
    const words = wordsOf(cue.text);
    const total = words.reduce((sum, word) => sum + word.length + 1, 0);
    let said = 0;
    const moment = () => cue.startMs + ((endMs - cue.startMs) * said) / total;
    return words.map((text): Word => {
      const startMs = moment();
      said += text.length + 1;
      return { text, startMs, endMs: moment(), cue };
    });
  });
}

/** The cheapest way to part a passage's words into captions. */
function breakPassage(passage: readonly Cue[], profile: CaptionProfile): readonly Draft[] {
  const words = wordsIn(passage);
  const texts = words.map(({ text }) => text);
  const glued = gluedPlaces(texts);
  const measure = runLengths(texts);
  const most = lineMost(profile) * profile.mostLines;
  const starts = cheapestParts({
    count: words.length,
    mayBegin: (at) => !glued[at - 1],
    isTooLong: (from, end) => measure(from, end) > most,
    costOf: (from, end) => {
      const length = measure(from, end);
      const over = Math.max(0, length - most);
      const lines = over > 0 ? 0 : linesNeeded(glued, measure, { from, end }, lineMost(profile));
      const linesOver = Math.max(0, lines - profile.mostLines);
      return (
        over * 300 +
        linesOver * 300 +
        paceCost(words, { from, end }, length, profile) +
        cutCost(words, texts, end)
      );
    },
  });
  return starts.flatMap((start, at): Draft[] => {
    const some = words.slice(start, starts[at + 1]);
    const [first, last] = [some[0], some.at(-1)];
    if (!first || !last) return [];
    const text = some.map((word) => word.text).join(' ');
    // Lines that a teacher or another tool has set stay where they fit.
    const isWhole = text === wordsOf(first.cue.text).join(' ');
    const stays = isWhole && fits(first.cue.text, profile);
    return [
      {
        cue: first.cue,
        text: stays ? first.cue.text : breakLines(text, lineMost(profile)),
        spokenFrom: Math.round(first.startMs),
        spokenTo: Math.round(last.endMs),
      },
    ];
  });
}

const lineMost = ({ lineLength }: CaptionProfile): number => lineLength.warn ?? lineLength.error ?? 42;

const fits = (text: string, profile: CaptionProfile): boolean => {
  const lines = text.split('\n');
  const glued = gluedPlaces(wordsOf(text));
  let count = 0;
  const isWhole = lines.every((line) => {
    count += wordsOf(line).length;
    return !glued[count - 1];
  });
  return (
    isWhole && lines.length <= profile.mostLines && lines.every((line) => lengthOf(line) <= lineMost(profile))
  );
};

interface Run {
  readonly from: number;
  readonly end: number;
}

/** How many lines a run of words takes at least; one that is too long by itself counts as two. */
function linesNeeded(
  glued: readonly boolean[],
  measure: (from: number, end: number) => number,
  { from, end }: Run,
  longest: number,
): number {
  let lines = 1;
  let start = from;
  let mayEnd = from;
  for (let at = from + 1; at <= end; at += 1) {
    if (measure(start, at) > longest) {
      lines += 1;
      start = mayEnd > start ? mayEnd : at;
    }
    if (!glued[at - 1]) mayEnd = at;
  }
  return lines;
}

/** How far the time of a caption's words is from what a reader wants. */
function paceCost(
  words: readonly Word[],
  { from, end }: Run,
  length: number,
  profile: CaptionProfile,
): number {
  const [first, last, next] = [words[from], words[end - 1], words[end]];
  if (!first || !last) return Number.POSITIVE_INFINITY;
  const ms = (next?.startMs ?? last.endMs + MOST_EARLY_MS) - first.startMs;
  const short = Math.max(0, (profile.shortestMs.warn ?? 0) - ms) / 100;
  const long = Math.max(0, ms - (profile.longestMs.warn ?? Number.POSITIVE_INFINITY)) / 100;
  const fast = Math.max(0, (length * 1000) / ms - (profile.speed.warn ?? Number.POSITIVE_INFINITY));
  return short * 4 + long * 3 + fast * 2;
}

/** How badly a cut behind a run reads; one that was there already is cheaper than a new one. */
function cutCost(words: readonly Word[], texts: readonly string[], end: number): number {
  const next = words[end];
  if (!next) return 0;
  return 6 + breakCost(texts, end) * 3 + (next.cue === words[end - 1]?.cue ? 8 : 0);
}

/** Gives each caption its time: while it is spoken, and as much longer as reading takes and room allows. */
function timeDrafts(
  drafts: readonly Draft[],
  profile: CaptionProfile,
): readonly (Draft & { readonly startMs: number; readonly endMs: number })[] {
  let freeFrom = 0;
  return drafts.map((draft, at) => {
    const next = drafts[at + 1]?.spokenFrom ?? Number.POSITIVE_INFINITY;
    const wanted = readingTime(draft.text, profile);
    let startMs = Math.max(draft.spokenFrom, Math.min(freeFrom, next - SHORTEST_MS));
    let endMs = Math.max(draft.spokenTo, Math.min(startMs + wanted, draft.spokenTo + MOST_LINGER_MS));
    endMs = Math.min(endMs, next);
    // Too short still: it may come a little before its first word, where nothing else stands.
    if (endMs - startMs < wanted)
      startMs = Math.max(Math.min(startMs, freeFrom), Math.max(0, startMs - MOST_EARLY_MS), endMs - wanted);
    if (startMs < freeFrom) startMs = freeFrom;
    // A break too short to be seen as one: the caption stays until the next comes.
    if (next - endMs > 0 && next - endMs < profile.leastGapMs) endMs = next;
    endMs = Math.max(endMs, startMs + SHORTEST_MS);
    freeFrom = endMs;
    return { ...draft, startMs: Math.round(startMs), endMs: Math.round(endMs) };
  });
}

/** Time that a caption wants by every measure of the profile, ms. */
function readingTime(text: string, { speed, wordsAMinute, shortestMs }: CaptionProfile): number {
  const bySpeed = speed.warn === null ? 0 : (lengthOf(text) * 1000) / speed.warn;
  const byWords = wordsAMinute.warn === null ? 0 : (wordsOf(text).length * 60_000) / wordsAMinute.warn;
  return Math.ceil(Math.max(bySpeed, byWords, shortestMs.warn ?? 0));
}
