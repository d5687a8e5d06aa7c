/** What changed from one revision to the next, in a pupil's words. */
import type { FieldPart, ListPart, RevisionChange } from '#lib/lesson/revision-difference.ts';

const FIELDS: Readonly<Record<FieldPart, string>> = {
  title: 'title',
  summary: 'summary',
  weave: 'name of the weave',
  difficulty: 'how hard it is',
  leaning: 'leaning',
  language: 'language',
  times: 'time needed',
  sample: 'measured sample',
  'kit rules': 'rules of the kit',
  currency: 'currency',
  licence: 'licence',
  recording: 'recording',
  runs: 'order of colours and units',
  ends: 'end of the repeat',
};

const LISTS: Readonly<Record<ListPart, readonly [one: string, several: string]>> = {
  corrections: ['correction', 'corrections'],
  ringKinds: ['ring kind', 'ring kinds'],
  start: ['step of the start', 'steps of the start'],
  repeat: ['step of the repeat unit', 'steps of the repeat unit'],
  finishing: ['step of the finishing', 'steps of the finishing'],
  steps: ['further step', 'further steps'],
  sizes: ['size', 'sizes'],
  materials: ['material', 'materials'],
  cautions: ['caution', 'cautions'],
  links: ['link', 'links'],
  chapters: ['chapter', 'chapters'],
  transcript: ['line of the transcript', 'lines of the transcript'],
};

const isField = (part: FieldPart | ListPart): part is FieldPart => Object.hasOwn(FIELDS, part);

/** `2 chapters changed (Welcome, The clasp)`, `summary changed`. */
export function revisionChangeWords({ part, how, names, count }: RevisionChange): string {
  if (isField(part)) return `${FIELDS[part]} ${how}`;
  const [one, several] = LISTS[part];
  // A correction is told in whole beside this; its words are no name.
  const shown = part === 'corrections' ? [] : names.slice(0, 4);
  const more = names.length > shown.length ? ', …' : '';
  const named = shown.length === 0 ? '' : ` (${shown.join(', ')}${more})`;
  return `${count} ${count === 1 ? one : several} ${how}${named}`;
}
