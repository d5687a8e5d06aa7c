/** What changed from one revision to the next, in a pupil's words. */
import { countWord } from '#lib/lesson/count-word.ts';
import type { FieldPart, ListPart, RevisionChange } from '#lib/lesson/revision-difference.ts';

const FIELDS: Readonly<Record<FieldPart, string>> = {
  title: 'title',
  summary: 'summary',
  weave: 'name of the weave',
  difficulty: 'difficulty',
  leaning: 'leaning',
  language: 'language',
  times: 'time needed',
  sample: 'measured sample',
  'kit rules': 'rules of the kit',
  currency: 'currency',
  licence: 'licence',
  workshop: 'name of the workshop',
  recording: 'recording',
  poster: 'picture that stands for the recording',
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
  kits: ['kit', 'kits'],
  costs: ['cost of a kit', 'costs of kits'],
  materials: ['material', 'materials'],
  cautions: ['caution', 'cautions'],
  links: ['link', 'links'],
  chapters: ['chapter', 'chapters'],
  terms: ['explained term', 'explained terms'],
  transcript: ['line of the transcript', 'lines of the transcript'],
};

const isField = (part: FieldPart | ListPart): part is FieldPart => Object.hasOwn(FIELDS, part);

/** `Two chapters were changed: Welcome, The clasp.`, `The summary was changed.`, `The order of the materials was changed.` */
export function revisionChangeSentence({ part, how, names, count }: RevisionChange): string {
  if (isField(part)) return `The ${FIELDS[part]} ${part === 'kit rules' ? 'were' : 'was'} ${how}.`;
  const [one, several] = LISTS[part];
  if (how === 'reordered') return `The order of the ${several} was changed.`;
  // A correction is told in whole beside this; its words are no name.
  const shown = part === 'corrections' ? [] : names.slice(0, 4);
  const more = names.length > shown.length ? ', and others' : '';
  const named = shown.length === 0 ? '' : `: ${shown.join(', ')}${more}`;
  const word = countWord(count);
  return `${word.charAt(0).toUpperCase()}${word.slice(1)} ${count === 1 ? `${one} was` : `${several} were`} ${how}${named}.`;
}
