/** Every text that differs between two revisions, word by word, and what kits of each size hold and cost more or less. */
import type { Content } from './content.ts';
import type { FrozenKit } from './frozen-kit.ts';
import { quantityWord } from './making-words.ts';
import type { Revision } from './revision.ts';
import { type TextPart, wordDifference } from './word-difference.ts';

export interface TextChange {
  readonly part: 'title' | 'summary' | 'licence' | 'chapter' | 'step' | 'caution' | 'term' | 'transcript';
  readonly id: string;
  /** Where it stands in the newer recording, ms; in the older one where it is gone; null where it has no moment. */
  readonly atMs: number | null;
  readonly parts: readonly TextPart[];
}

type Compared = Pick<Revision, 'content' | 'cues' | 'kits' | 'terms'>;

interface Text {
  readonly part: TextChange['part'];
  readonly id: string;
  readonly text: string;
  readonly atMs: number | null;
}

/** In the order of the lesson; texts are matched by the ids of what they belong to. */
export function textChanges(older: Compared, newer: Compared): readonly TextChange[] {
  const before = new Map(textsOf(older).map((text) => [`${text.part} ${text.id}`, text]));
  const now = textsOf(newer);
  const keys = new Set(now.map(({ part, id }) => `${part} ${id}`));
  const gone = [...before].filter(([key]) => !keys.has(key)).map(([, text]) => text);
  return [
    ...now.map((text) => ({
      text,
      parts: wordDifference(before.get(`${text.part} ${text.id}`)?.text ?? '', text.text),
    })),
    ...gone.map((text) => ({ text, parts: wordDifference(text.text, '') })),
  ]
    .filter(({ parts }) => parts.some(({ how }) => how !== 'same'))
    .map(({ text: { part, id, atMs }, parts }) => ({ part, id, atMs, parts }));
}

function textsOf({ content, cues, terms }: Compared): readonly Text[] {
  return [
    { part: 'title', id: '', text: content.title, atMs: null },
    { part: 'summary', id: '', text: content.summary, atMs: null },
    { part: 'licence', id: '', text: content.licence, atMs: null },
    ...content.chapters.map(
      ({ id, title, startMs }): Text => ({ part: 'chapter', id, text: title, atMs: startMs }),
    ),
    ...[...content.start, ...content.repeat, ...content.finishing, ...content.steps].map(
      ({ id, sentence, atMs }): Text => ({ part: 'step', id, text: sentence, atMs }),
    ),
    ...content.cautions.map(({ id, text }): Text => ({ part: 'caution', id, text, atMs: null })),
    ...terms.map(
      ({ term, meaning }): Text => ({ part: 'term', id: term, text: `${term}: ${meaning}`, atMs: null }),
    ),
    ...cues.map(({ id, text, startMs }): Text => ({ part: 'transcript', id, text, atMs: startMs })),
  ];
}

/** How many cues differ, and how. Those of other words may stand at another time too. */
export interface CueChanges {
  readonly added: number;
  readonly removed: number;
  readonly reworded: number;
  /** The same word for word, at another time. */
  readonly moved: number;
}

export function cueChanges(older: Pick<Compared, 'cues'>, newer: Pick<Compared, 'cues'>): CueChanges {
  const before = new Map(older.cues.map((cue) => [cue.id, cue]));
  const kept = newer.cues.flatMap((cue) => {
    const was = before.get(cue.id);
    return was ? [{ was, cue }] : [];
  });
  const isSame = ({ was, cue }: (typeof kept)[number]): boolean => was.text === cue.text;
  return {
    added: newer.cues.length - kept.length,
    removed: older.cues.length - kept.length,
    reworded: kept.filter((pair) => !isSame(pair)).length,
    moved: kept.filter(
      (pair) => isSame(pair) && (pair.was.startMs !== pair.cue.startMs || pair.was.endMs !== pair.cue.endMs),
    ).length,
  };
}

/** What a kit of one size held and cost, before and now; null where that revision has none. */
export interface KitChange {
  readonly size: string;
  readonly rings: readonly { readonly ringKind: string; readonly before: number; readonly now: number }[];
  /** Quantities with their units: `2.5 m`. */
  readonly materials: readonly { readonly name: string; readonly before: string; readonly now: string }[];
  readonly costMinor: { readonly before: number | null; readonly now: number | null };
}

/** Sizes whose kits differ, with every ring kind and material of which there is more or less. */
export function kitChanges(older: Compared, newer: Compared): readonly KitChange[] {
  const ids = new Set([...newer.kits, ...older.kits].map(({ size }) => size));
  return [...ids].flatMap((size) => {
    const before = older.kits.find((kit) => kit.size === size);
    const now = newer.kits.find((kit) => kit.size === size);
    const rings = ringChanges(before, now, older.content, newer.content);
    const materials = materialChanges(before, now, older.content, newer.content);
    const costMinor = { before: before?.packsMinor ?? null, now: now?.packsMinor ?? null };
    if (rings.length + materials.length === 0 && costMinor.before === costMinor.now) return [];
    const name = nameOf(size, newer.content.sizes) ?? nameOf(size, older.content.sizes) ?? size;
    return [{ size: name, rings, materials, costMinor }];
  });
}

function ringChanges(
  before: FrozenKit | undefined,
  now: FrozenKit | undefined,
  old: Content,
  content: Content,
): KitChange['rings'] {
  const ids = new Set([...(now?.rings ?? []), ...(before?.rings ?? [])].map(({ ringKind }) => ringKind));
  const issued = (kit: FrozenKit | undefined, id: string): number =>
    kit?.rings.find(({ ringKind }) => ringKind === id)?.issued ?? 0;
  return [...ids]
    .map((id) => ({
      ringKind: nameOf(id, content.ringKinds) ?? nameOf(id, old.ringKinds) ?? id,
      before: issued(before, id),
      now: issued(now, id),
    }))
    .filter((ring) => ring.before !== ring.now);
}

function materialChanges(
  before: FrozenKit | undefined,
  now: FrozenKit | undefined,
  old: Content,
  content: Content,
): KitChange['materials'] {
  const lines = [...(now?.materials ?? []), ...(before?.materials ?? [])];
  const words = (kit: FrozenKit | undefined, id: string, { materials }: Content): string => {
    const line = kit?.materials.find(({ material }) => material === id);
    const unit = materials.find((material) => material.id === id)?.unit ?? '';
    return quantityWord(line?.needMilli ?? 0, unit).trim();
  };
  return [...new Set(lines.map(({ material }) => material))]
    .map((id) => ({
      name: nameOf(id, content.materials) ?? nameOf(id, old.materials) ?? id,
      before: words(before, id, old),
      now: words(now, id, content),
    }))
    .filter((line) => line.before !== line.now);
}

const nameOf = (id: string, list: readonly { readonly id: string; readonly name: string }[]): string | null =>
  list.find((one) => one.id === id)?.name ?? null;
