/**
 * Steps that are told aloud: which ring is opened, what it carries, through
 * how many rings it goes and from which side. Each becomes a proposed step
 * with its moment; the teacher takes it, or leaves it.
 */
import { type Sentence, sentencesOf } from '#lib/chapters/sentences.ts';
import { readNumber, type Token, tokensOf } from '#lib/glossary/spoken-number.ts';
import type { Content, Placement } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import type { SequencePart } from '#lib/weave/placement.ts';
import { describesRings, kindsMeant } from './ring-talk.ts';

export interface SpokenPlacement {
  /** The same for the same sentence. */
  readonly id: string;
  readonly cueId: string;
  readonly startMs: number;
  readonly part: SequencePart;
  /** Without its id; ring kinds that were not plainly said are the lesson's first. */
  readonly placement: Omit<Placement, 'id'>;
  /** What was not said plainly, for the teacher to look at. */
  readonly unsure: readonly ('ring kind' | 'rings passed' | 'side')[];
}

const PLACES =
  /\b(pick(?:s|ing)? up|go(?:es)?|pass(?:es)?|thread|slip|slide|put|add|weave|hang|hook|take|goes in|through)\b/i;
const THROUGH = /\bthrough\b|\binto\b/i;
const BACK = /\bfrom (?:the back|behind|below|underneath|the far side)\b|\bunderneath\b/i;
const FRONT = /\bfrom (?:the front|above|the top|the near side)\b/i;
/** The picture of a step is taken where its movement has ended. */
const BEFORE_END_MS = 100;
/** A step of the lesson this near to a sentence is the same step. */
const SAME_MS = 1_500;

/** Placements told in a transcript that the lesson does not have at that moment yet, in order of time. */
export function spokenPlacements(cues: readonly Cue[], content: Content): readonly SpokenPlacement[] {
  if (content.ringKinds.length === 0) return [];
  const taken = [...content.start, ...content.repeat, ...content.finishing, ...content.steps].flatMap(
    ({ atMs }) => (atMs === null ? [] : [atMs]),
  );
  const cueEnds = new Map(cues.map(({ id, endMs }) => [id, endMs]));
  let former: Omit<Placement, 'id'> | null = null;
  let spokenOf: readonly string[] = [];
  const found: SpokenPlacement[] = [];
  for (const sentence of sentencesOf(cues)) {
    const part = partAt(sentence.startMs, content.chapters);
    const told: Told | null = part && readPlacement(sentence, content, former, spokenOf);
    spokenOf = ringGroups(tokensOf(sentence.text), content).at(-1)?.ringKinds ?? spokenOf;
    if (!told || !part) continue;
    former = told.placement;
    // A cue that goes on after the sentence still shows its step.
    const shownMs = Math.max(sentence.endMs, cueEnds.get(sentence.cueId) ?? 0) + SAME_MS;
    const isShown = taken.some((ms) => ms >= sentence.startMs - SAME_MS && ms <= shownMs);
    if (isShown || isToldAgain(told.placement, content[part])) continue;
    found.push({
      id: `${sentence.cueId} ${sentence.startMs}`,
      cueId: sentence.cueId,
      startMs: sentence.startMs,
      part,
      ...told,
    });
  }
  return found;
}

/** Whether a part has a placement that carries the same rings, and nothing said here is against it. */
const isToldAgain = (told: Omit<Placement, 'id'>, part: readonly Placement[]): boolean =>
  told.carries.length > 0 &&
  part.some(
    ({ opened, carries, passes }) =>
      (told.opened === null || told.opened === opened) &&
      (told.passes.length === 0 || told.passes.length === passes.length) &&
      carries.length === told.carries.length &&
      carries.every(({ ringKind, count }, at) => {
        const other = told.carries[at];
        return other?.ringKind === ringKind && other.count === count;
      }),
  );

/** The part of the sequence that a chapter tells; null where nothing is made. */
function partAt(ms: number, chapters: Content['chapters']): SequencePart | null {
  const kind = chapters
    .filter(({ startMs }) => startMs <= ms + 500)
    .sort((a, b) => b.startMs - a.startMs)[0]?.kind;
  if (kind === 'setup') return 'start';
  if (kind === 'repeat unit') return 'repeat';
  return kind === 'finishing' || kind === 'clasp' ? 'finishing' : null;
}

type Told = Pick<SpokenPlacement, 'placement' | 'unsure'>;

interface Group {
  readonly count: number;
  readonly ringKinds: readonly string[];
  readonly isOpen: boolean;
  readonly isClosed: boolean;
  /** Place of its noun. */
  readonly at: number;
  readonly from: number;
}

function readPlacement(
  sentence: Sentence,
  content: Content,
  former: Omit<Placement, 'id'> | null,
  spokenOf: readonly string[],
): Told | null {
  const { text } = sentence;
  if (!PLACES.test(text)) return null;
  const tokens = tokensOf(text);
  const through = tokens.findIndex(({ word }) => THROUGH.test(word));
  const groups = ringGroups(tokens, content);
  const before = groups.filter(({ at }) => through < 0 || at < through);
  const behind = groups.filter(({ at }) => through >= 0 && at > through);
  const carried = before.filter(({ isClosed, from }) => isClosed || isPickedUp(tokens, from));
  const opened =
    before.find((group) => !carried.includes(group) && group.count === 1 && !group.isClosed) ??
    (/^\W*open (?:it|that|one)\b/i.test(text) ? { ringKinds: spokenOf } : undefined);
  const samePath = /\bsame (?:path|way|place)\b/i.test(text);
  const laysOut = carried.length > 0 && opened === undefined && through < 0 && !/\bopen\b/i.test(text);
  if (!opened && !laysOut && !(carried.length > 0 && through >= 0)) return null;
  if (through < 0 && carried.length === 0 && !samePath) return null;

  const unsure = new Set<SpokenPlacement['unsure'][number]>();
  const kindOf = (group: Pick<Group, 'ringKinds'> | undefined): string => {
    const [first, second] = group?.ringKinds ?? [];
    if (first === undefined || second !== undefined) unsure.add('ring kind');
    return first ?? content.ringKinds[0]?.id ?? '';
  };
  const passed =
    through >= 0 ? passedCount(tokens, through, behind) : samePath ? (former?.passes.length ?? 0) : 0;
  if (!laysOut && passed === 0) unsure.add('rings passed');
  const from = BACK.test(text) ? 'back' : 'front';
  if (passed > 0 && from === 'front' && !FRONT.test(text)) unsure.add('side');
  return {
    placement: {
      opened: laysOut ? null : kindOf(opened),
      carries: carried.map((group) => ({ ringKind: kindOf(group), count: group.count })),
      passes: Array.from({ length: laysOut ? 0 : passed }, () => ({ from })),
      lie: lieOf(text),
      sentence: asSentence(text),
      atMs: Math.max(sentence.startMs, Math.round(sentence.endMs) - BEFORE_END_MS),
      pictureText: '',
    },
    unsure: [...unsure],
  };
}

const isPickedUp = (tokens: readonly Token[], at: number): boolean =>
  tokens
    .slice(Math.max(0, at - 3), at)
    .some(({ word }, place, some) => /^pick/.test(word) && some[place + 1]?.word === 'up');

const ORDINAL = /^(first|second|third|fourth|fifth|sixth|next|new|last|another|an?|the|one|single|other)$/;

/** `two closed blue rings`, `an open copper ring`, `a pair`: rings in groups, in the order said. */
function ringGroups(tokens: readonly Token[], content: Content): readonly Group[] {
  return tokens.flatMap(({ word }, at): readonly Group[] => {
    if (!/^(rings?|ones|pair|pairs)$/.test(word)) return [];
    const before = wordsBefore(tokens, at, content);
    const each = word === 'pairs' ? 2 : 1;
    const bare = /^pairs?$/.test(word) ? 2 : word === 'ring' ? 1 : 0;
    const count = before.includes('both')
      ? 2
      : (numberIn(tokens, at - before.length, at) ?? 0) * each || bare;
    if (count === 0 || count > 60) return [];
    const said = before.filter((one) => describesRings(one, content.ringKinds));
    return [
      {
        count,
        ringKinds: kindsMeant(said, content.ringKinds),
        isOpen: before.includes('open') || before.includes('opened'),
        isClosed: before.includes('closed'),
        at,
        from: at - before.length,
      },
    ];
  });
}

/** The words that belong to a noun and stand before it. */
function wordsBefore(tokens: readonly Token[], at: number, { ringKinds }: Content): readonly string[] {
  let from = at;
  while (from > Math.max(0, at - 5) && belongs(tokens, from - 1, at, ringKinds)) from -= 1;
  return tokens.slice(from, at).map(({ word }) => word);
}

const STATES = /^(open|opened|closed|both|jump)$/;

function belongs(
  tokens: readonly Token[],
  place: number,
  noun: number,
  ringKinds: Content['ringKinds'],
): boolean {
  const word = tokens[place]?.word ?? '';
  if (describesRings(word, ringKinds) || STATES.test(word) || ORDINAL.test(word)) return true;
  const number = readNumber(tokens, place);
  return number?.kind === 'whole' && number.to <= noun;
}

/** The first number in a stretch, or null. */
function numberIn(tokens: readonly Token[], from: number, to: number): number | null {
  for (let at = from; at < to; at += 1) {
    const number = readNumber(tokens, at);
    if (number?.kind === 'whole' && tokens[at]?.word !== 'a') return number.value;
  }
  return null;
}

/** Rings that are gone through: `all four rings`, `the last copper pair`, `both blue rings`. */
function passedCount(tokens: readonly Token[], through: number, behind: readonly Group[]): number {
  const first = behind[0];
  if (first && first.at - through <= 7) return first.count;
  const words = tokens.slice(through + 1, through + 6).map(({ word }) => word);
  if (words.includes('both') || words.includes('pair')) return 2;
  return words.some((word) => /^(eye|it|ring|loop)$/.test(word)) ? 1 : 0;
}

function lieOf(text: string): Placement['lie'] {
  if (/\bfold(?:s|ed)?\b.*\bback\b/i.test(text)) return 'fold back';
  if (/\bbetween\b/i.test(text)) return 'through between';
  if (/\bpart (?:the|them)\b/i.test(text)) return 'part';
  if (/\b(?:over|on top of) the (?:one|ring|last)/i.test(text)) return 'over';
  return /\bunder the (?:one|ring|last)/i.test(text) ? 'under' : 'as it falls';
}

const asSentence = (text: string): string => {
  const plain = text.replace(/\s+/g, ' ').trim();
  const capital = plain.charAt(0).toUpperCase() + plain.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
};
