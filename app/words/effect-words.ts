/** Words for what a correction puts right in a lesson. */
import type { CorrectionEffect } from '#lib/lesson/content.ts';
import type { ProposedEffect } from '#lib/lesson/correction-effects.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';

const LESSON_FIELDS: Readonly<Record<string, string>> = {
  title: 'Title of the lesson',
  summary: 'Summary',
  weave: 'Weave',
  otherNames: 'Other names of the weave',
  licence: 'Licence',
  prepareMinutes: 'Minutes of preparing',
  makeMinutes: 'Minutes of making',
};

/** The place of an effect: `Cue at 0:31`, `Wire of small`. */
export function effectPlaceWords({ kind, of, field, name, atMs, before }: ProposedEffect): string {
  const at = atMs === null ? '' : ` at ${formatTimeCode(atMs)}`;
  const called = name.length > 40 ? `${name.slice(0, 39)}…` : name;
  const named = called.trim() === '' ? '' : ` “${called}”`;
  switch (kind) {
    case 'cue text':
      return `Cue${at}`;
    case 'chapter':
      return `Title of the chapter${at}`;
    case 'step':
      return field === 'pictureText' ? `What the picture of a step shows${at}` : `Sentence of a step${at}`;
    case 'ring kind':
      return `${RING_FIELDS[field] ?? 'Name'} of the ring kind${named}`;
    case 'count':
      return countWords(of, field, named);
    case 'material':
      return field === 'note' ? `Note on the material${named}` : 'Name of a material';
    case 'caution':
      return before === '' ? 'A caution of its own' : 'Caution';
    case 'link':
      return field === 'label' ? 'Name of a link' : `Address of the link${named}`;
    case 'text':
      return LESSON_FIELDS[of] ?? 'Text of the lesson';
  }
}

const RING_FIELDS: Readonly<Record<string, string>> = {
  wire: 'Wire',
  innerDiameter: 'Inner diameter',
  colour: 'Colour',
};

function countWords(of: string, field: string, named: string): string {
  if (field.startsWith('carries/')) return `How many closed rings are picked up in${named || ' a placement'}`;
  if (field === 'quantityMilli') return `How much of${named || ' a material'}`;
  return field === 'repeats' ? 'How often a run is repeated' : (LESSON_FIELDS[of] ?? 'Count');
}

const PARTS: Readonly<Record<CorrectionEffect['kind'], readonly [one: string, several: string]>> = {
  'cue text': ['one cue', 'cues'],
  chapter: ['one chapter', 'chapters'],
  step: ['one step', 'steps'],
  'ring kind': ['one ring kind', 'ring kinds'],
  count: ['one count', 'counts'],
  material: ['one material', 'materials'],
  caution: ['one caution', 'cautions'],
  link: ['one link', 'links'],
  text: ['one text', 'texts'],
};

/** `Put right with it: one cue, 2 steps.`; empty where nothing was. */
export function putRightWords(effects: readonly CorrectionEffect[]): string {
  const counts = new Map<CorrectionEffect['kind'], number>();
  for (const { kind } of effects) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const told = [...counts].map(([kind, count]) =>
    count === 1 ? PARTS[kind][0] : `${count} ${PARTS[kind][1]}`,
  );
  return told.length === 0 ? '' : `Put right with it: ${told.join(', ')}.`;
}
