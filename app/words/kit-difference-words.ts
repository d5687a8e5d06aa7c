/** What the holder of an earlier kit adds, exchanges or lays aside, in plain sentences. */
import type {
  KitDifference,
  MaterialDifference,
  RingCounts,
  RingDifference,
} from '#lib/kit/kit-difference.ts';
import { quantityWord, ringFacts } from '#lib/lesson/making-words.ts';
import { nameOf } from './kit-rows.ts';

/** One sentence a thing that differs; none where the kit is as it should be. */
export const kitDifferenceWords = ({ rings, materials, tools }: KitDifference): readonly string[] => [
  ...rings.flatMap(ringSentences),
  ...materials.flatMap(materialSentences),
  ...tools.flatMap(toolSentences),
];

const ringName = (name: string): string => name.trim() || 'ring without a name';

function ringSentences({ ringKind, heldName, how, held, now, ...by }: RingDifference): readonly string[] {
  const name = ringName(ringKind.name);
  switch (how) {
    case 'same':
      return [];
    case 'new':
      return [`New: add ${now.issued} × ${name} (${ringFacts(ringKind)})${preparedWords(now)}.`];
    case 'gone':
      return [`Take out all ${held.issued} × ${name}: no longer used.`];
    case 'other':
      return [
        `Exchange all ${held.issued} × ${ringName(heldName ?? '')} for ${now.issued} × ${name}${preparedWords(now)}. ${ringChangeWords(by.changes)}.`,
      ];
    case 'count':
      return [countSentence(name, by, now)];
  }
}

const ringChangeWords = (changes: RingDifference['changes']): string =>
  changes
    .map(
      ({ what, before, now }) =>
        `The ${what} is now ${now || 'not stated'}; it was ${before || 'not stated'}`,
    )
    .join('. ');

function countSentence(name: string, by: RingCounts, now: RingCounts): string {
  const parts = [by.opened, by.closed, by.spare];
  const count = Math.abs(by.issued);
  if (by.issued > 0 && parts.every((n) => n >= 0)) return `Add ${count} × ${name}${preparedWords(by)}.`;
  if (by.issued < 0 && parts.every((n) => n <= 0))
    return `Lay aside ${count} × ${name}${preparedWords({ opened: -by.opened, closed: -by.closed, spare: -by.spare, issued: count })}.`;
  const head =
    by.issued === 0
      ? `${name}: as many as before`
      : `${by.issued > 0 ? 'Add' : 'Lay aside'} ${count} × ${name}`;
  return `${head}, but prepare all of them anew: ${now.opened} opened, ${now.closed} closed, ${now.spare} spare.`;
}

/** `, opened` where all are; else `: 3 opened, 2 closed, 1 spare`. */
function preparedWords({ opened, closed, spare, issued }: RingCounts): string {
  const parts: readonly (readonly [number, string, string])[] = [
    [opened, 'opened', 'opened'],
    [closed, 'closed', 'closed'],
    [spare, 'spare', 'as spare'],
  ];
  const all = parts.find(([count]) => count === issued);
  if (all) return `, ${all[2]}`;
  return `: ${parts
    .filter(([count]) => count > 0)
    .map(([count, word]) => `${count} ${word}`)
    .join(', ')}`;
}

function materialSentences({
  material,
  how,
  needMilli,
  heldMilli,
  nowMilli,
  before,
}: MaterialDifference): readonly string[] {
  const name = nameOf(material.name, material.kind);
  const was = before ? nameOf(before.name, material.kind) : name;
  const now = quantityWord(nowMilli, material.unit);
  switch (how) {
    case 'same':
      return [];
    case 'new':
      return [`New: add ${name}, ${now}.`];
    case 'gone':
      return [`Take out ${name}: no longer used.`];
    case 'other':
      return [
        `Exchange ${was}, ${quantityWord(heldMilli, before?.unit ?? material.unit)}, for ${name}, ${now}.`,
      ];
    case 'count':
      return [
        `${needMilli > 0 ? 'Add' : 'Lay aside'} ${name}, ${quantityWord(Math.abs(needMilli), material.unit)}.`,
      ];
  }
}

/** Tools are no part of what is packed. */
function toolSentences({ material, how, nowMilli, before }: MaterialDifference): readonly string[] {
  const name = nameOf(material.name, material.kind);
  switch (how) {
    case 'same':
      return [];
    case 'new':
      return [`You also need ${name}.`];
    case 'gone':
      return [`${name} is no longer needed.`];
    case 'other':
      return [`Instead of ${nameOf(before?.name ?? '', material.kind)} you need ${name}.`];
    case 'count':
      return [`Of ${name} you need ${quantityWord(nowMilli, material.unit)}.`];
  }
}
