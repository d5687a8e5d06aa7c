/**
 * Carries a lesson's draft over to a re-edited recording: every cue, chapter,
 * step, placement and correction follows its sound, under the same id. Each is
 * carried, or told to be cut; parts of the new recording that nothing was
 * written for are told to need words. Nothing is lost without being named.
 */
import type { Change, Draft } from '#lib/lesson/change.ts';
import type { Chapter, Content, Correction, Placement } from '#lib/lesson/content.ts';
import { SEQUENCE_PARTS } from '#lib/lesson/content.ts';
import type { Span } from '#lib/time/time.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import type { SequencePart } from '#lib/weave/placement.ts';
import type { EditList } from './edit-list.ts';
import { retakesIn } from './retakes.ts';
import { heardIn, inRetake, isMostlyIn, momentInRetake, type SaidAgain, saidAgain } from './said-again.ts';
import { type PlacedSpan, spanToNew, toNew } from './time-map.ts';

/** What a person decides, and what she has at hand. */
export interface Choices {
  /** Retakes whose words stay, by the place of their cut in the list. */
  readonly wordsStay: ReadonlySet<number>;
  /** Cues of a transcript of the new recording: words for what is new or was said again in it. */
  readonly heard?: readonly Cue[];
}

/** Something of the draft that lay in what was cut. */
export type CutItem =
  | { readonly of: 'cue'; readonly cue: Cue }
  | { readonly of: 'chapter'; readonly chapter: Chapter }
  /** Its picture has no moment any more; the step itself stays. */
  | {
      readonly of: 'step';
      readonly list: SequencePart | 'steps';
      readonly id: string;
      readonly sentence: string;
      readonly atMs: number;
    }
  /** It stands as it is, about no moment. */
  | { readonly of: 'correction'; readonly correction: Correction };

export interface Carried {
  /** Made on the draft, in order, they move all of it. */
  readonly changes: readonly Change[];
  /** What fell into a cut, by the cut's place in the list; -1 beyond the old recording's end. */
  readonly cut: ReadonlyMap<number, readonly CutItem[]>;
  /** Cues of which a cut took a part, with how much, ms. */
  readonly clipped: readonly { readonly cue: Cue; readonly lostMs: number }[];
  /** Parts of the new recording without words. */
  readonly needWords: readonly Span[];
  /** How many cues come from the transcript of the new recording: in what was said again, and in what is new. */
  readonly fromHeard: { readonly again: number; readonly added: number };
  /** How many things followed their sound. */
  readonly carried: {
    readonly cues: number;
    readonly chapters: number;
    readonly steps: number;
    readonly corrections: number;
  };
}

/** A cue that lost less is not worth a word, ms. */
const WORTH_TELLING_MS = 250;
/** An insert that is shorter needs no words, ms. */
const WORTH_WORDS_MS = 700;

export function carryOver(draft: Draft, list: EditList, { wordsStay, heard = [] }: Choices): Carried {
  const cut = new Map<number, CutItem[]>();
  const tell = (oldMs: number, item: CutItem): void => {
    const at = list.edits.findIndex(
      ({ kind, old }) => kind === 'cut' && oldMs >= old.startMs && oldMs < old.endMs,
    );
    cut.set(at, [...(cut.get(at) ?? []), item]);
  };
  const retakes = retakesIn(list)
    .filter((retake) => wordsStay.has(retake.cut))
    .map((retake) => saidAgain(retake, draft.cues, heard));
  const inserted = list.edits
    .filter(({ kind }) => kind === 'inserted')
    .filter((edit) => !retakes.some((retake) => retake.inserted === edit))
    .map((edit) => ({ span: edit.new, words: heardIn(edit.new, heard) }));
  const added = inserted.flatMap(({ words }) => words);
  const cues = carryCues(draft.cues, list, retakes, added);
  for (const { cue, atMs } of cues.gone) tell(atMs, { of: 'cue', cue });
  const chapters = carryChapters(draft.content.chapters, list, retakes);
  for (const chapter of chapters.gone) tell(chapter.startMs, { of: 'chapter', chapter });
  const steps = carrySteps(draft.content, list, retakes);
  for (const step of steps.gone) tell(step.atMs, step);
  const corrections = carryCorrections(draft.content.corrections, list, retakes);
  for (const correction of corrections.gone) tell(correction.startMs ?? 0, { of: 'correction', correction });
  return {
    changes: [...cues.changes, ...chapters.changes, ...steps.changes, ...corrections.changes],
    cut,
    clipped: cues.clipped,
    needWords: inserted
      .filter(({ words, span }) => words.length === 0 && span.endMs - span.startMs >= WORTH_WORDS_MS)
      .map(({ span }) => span),
    fromHeard: {
      again: retakes.reduce((sum, retake) => sum + (retake.heard?.length ?? 0), 0),
      added: added.length,
    },
    carried: {
      cues: draft.cues.length - cues.gone.length,
      chapters: draft.content.chapters.length - chapters.gone.length,
      steps: steps.carried,
      corrections: draft.content.corrections.length - corrections.gone.length,
    },
  };
}

function carryCues(
  cues: readonly Cue[],
  list: EditList,
  retakes: readonly SaidAgain[],
  added: readonly Cue[],
) {
  const place = spanToNew(list);
  const put: Cue[] = [...added, ...retakes.flatMap(({ heard }) => heard ?? [])];
  const again = new Set(put.map(({ id }) => id));
  const gone: { cue: Cue; atMs: number }[] = [];
  const clipped: { cue: Cue; lostMs: number }[] = [];
  for (const cue of cues) {
    if (again.has(cue.id)) continue;
    const retake = retakes.find(({ old }) => isMostlyIn(cue, old));
    const placed = retake ? inTake(cue, retake) : place(cue);
    if (placed.is === 'gone') {
      gone.push({ cue, atMs: retake ? (cue.startMs + cue.endMs) / 2 : cutMoment(cue, list) });
      continue;
    }
    const { startMs, endMs } = placed.span;
    if (retake) put.push({ ...cue, startMs, endMs, timing: 'approximate' });
    else if (startMs !== cue.startMs || endMs !== cue.endMs) put.push({ ...cue, startMs, endMs });
    if (placed.lostMs >= WORTH_TELLING_MS) clipped.push({ cue, lostMs: placed.lostMs });
  }
  const remove = gone.map(({ cue }) => cue.id);
  const changes: Change[] = put.length + remove.length === 0 ? [] : [{ kind: 'cues', put, remove }];
  return { changes, gone, clipped };
}

/** A cue of an old take: where it is said again, or gone where a transcript tells that others are said. */
function inTake(cue: Cue, retake: SaidAgain): PlacedSpan {
  const span = retake.heard ? null : inRetake(cue, [retake]);
  return span ? { is: 'there', span, lostMs: 0 } : { is: 'gone', ms: retake.inserted.new.startMs };
}

/** The moment of a cue that lies in the cut which took most of it. */
function cutMoment(cue: Span, { edits }: EditList): number {
  let best = { ms: cue.startMs, lost: 0 };
  for (const { kind, old } of edits) {
    const from = Math.max(cue.startMs, old.startMs);
    const lost = Math.min(cue.endMs, old.endMs) - from;
    if (kind === 'cut' && lost > best.lost) best = { ms: from, lost };
  }
  return best.ms;
}

/**
 * A chapter begins where its first kept sound does; one of which no more than a
 * scrap is left is gone.
 */
function carryChapters(chapters: readonly Chapter[], list: EditList, retakes: readonly SaidAgain[]) {
  const place = toNew(list);
  const gone: Chapter[] = [];
  const kept: Chapter[] = [];
  for (const [k, chapter] of chapters.entries()) {
    const endMs = chapters[k + 1]?.startMs ?? list.oldMs;
    const first = firstKept(list, { startMs: chapter.startMs, endMs }, retakes);
    if (first === null) {
      gone.push(chapter);
      continue;
    }
    const retaken = momentInRetake(first, retakes);
    // What begins with the recording goes on doing so, whatever was put before it.
    const startMs = k === 0 && chapter.startMs === 0 ? 0 : (retaken ?? place(first).ms);
    kept.push({ ...chapter, startMs });
  }
  const ordered = kept.toSorted((one, other) => one.startMs - other.startMs);
  const isInOrder = ordered.every((chapter, k) => chapter === kept[k]);
  const before = new Map(chapters.map((chapter) => [chapter.id, chapter.startMs]));
  const changes: Change[] = gone.map(({ id }) => ({ kind: 'remove', list: 'chapters', id }));
  for (const [index, chapter] of ordered.entries()) {
    const item = { ...chapter };
    if (!isInOrder) changes.push({ kind: 'put', list: 'chapters', item, index });
    else if (before.get(chapter.id) !== chapter.startMs)
      changes.push({ kind: 'put', list: 'chapters', item });
  }
  return { changes, gone };
}

/** Less of a chapter is no chapter, ms: an edit point's own doubt may leave a scrap. */
const LEAST_OF_CHAPTER_MS = 1_000;

/** The first moment of an old span that is heard in the new recording; null where no more than a scrap of it is. */
function firstKept({ edits, oldMs }: EditList, span: Span, retakes: readonly SaidAgain[]): number | null {
  // Beyond the last moment there is none to lose.
  if (span.startMs >= oldMs) return oldMs;
  const heard = [
    ...edits.filter(({ kind }) => kind === 'kept' || kind === 'moved').map(({ old }) => old),
    ...retakes.map(({ old }) => old),
  ]
    .map(({ startMs, endMs }) => ({
      startMs: Math.max(span.startMs, startMs),
      endMs: Math.min(Math.max(span.endMs, span.startMs + 1), endMs),
    }))
    .filter(({ startMs, endMs }) => endMs > startMs)
    .toSorted((one, other) => one.startMs - other.startMs);
  const keptMs = heard.reduce((sum, { startMs, endMs }) => sum + endMs - startMs, 0);
  const enough = Math.min(LEAST_OF_CHAPTER_MS, (span.endMs - span.startMs) / 2);
  return heard[0] && keptMs >= enough ? heard[0].startMs : null;
}

function carrySteps(content: Content, list: EditList, retakes: readonly SaidAgain[]) {
  const place = toNew(list);
  const gone: (CutItem & { readonly of: 'step' })[] = [];
  const changes: Change[] = [];
  let carried = 0;
  for (const part of [...SEQUENCE_PARTS, 'steps'] as const) {
    for (const item of content[part] as readonly Pick<Placement, 'id' | 'atMs' | 'sentence'>[]) {
      if (item.atMs === null) continue;
      const retaken = momentInRetake(item.atMs, retakes);
      const placed = retaken === null ? place(item.atMs) : ({ is: 'there', ms: retaken } as const);
      if (placed.is === 'gone') {
        gone.push({ of: 'step', list: part, id: item.id, sentence: item.sentence, atMs: item.atMs });
        changes.push({ kind: 'put', list: part, item: { ...item, atMs: null } });
        continue;
      }
      carried += 1;
      if (placed.ms !== item.atMs)
        changes.push({ kind: 'put', list: part, item: { ...item, atMs: placed.ms } });
    }
  }
  return { changes, gone, carried };
}

function carryCorrections(
  corrections: Content['corrections'],
  list: EditList,
  retakes: readonly SaidAgain[],
) {
  const place = spanToNew(list);
  const gone: Correction[] = [];
  const changes: Change[] = [];
  for (const correction of corrections) {
    const { startMs, endMs } = correction;
    if (startMs === null) continue;
    const span = { startMs, endMs: Math.max(endMs ?? startMs, startMs + 1) };
    const retaken = inRetake(span, retakes);
    const placed = retaken ? ({ is: 'there', span: retaken } as const) : place(span);
    if (placed.is === 'gone') {
      gone.push(correction);
      changes.push({ kind: 'put', list: 'corrections', item: { ...correction, startMs: null, endMs: null } });
    } else if (placed.span.startMs !== startMs || (endMs !== null && placed.span.endMs !== endMs)) {
      const moved = { startMs: placed.span.startMs, endMs: endMs === null ? null : placed.span.endMs };
      changes.push({ kind: 'put', list: 'corrections', item: { ...correction, ...moved } });
    }
  }
  return { changes, gone };
}
