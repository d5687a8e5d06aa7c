/** What changed from one revision to the next, in a pupil's words. */
import type { ChangedPart, RevisionChange } from '#lib/lesson/revision-difference.ts';

const PARTS: Readonly<Record<ChangedPart, readonly [one: string, several: string]>> = {
  corrections: ['correction', 'corrections'],
  title: ['title', 'title'],
  summary: ['summary', 'summary'],
  weave: ['name of the weave', 'name of the weave'],
  leaning: ['leaning', 'leaning'],
  times: ['time needed', 'time needed'],
  sample: ['measured sample', 'measured sample'],
  'kit rules': ['rules of the kit', 'rules of the kit'],
  licence: ['licence', 'licence'],
  recording: ['recording', 'recording'],
  ringKinds: ['ring kind', 'ring kinds'],
  start: ['step of the start', 'steps of the start'],
  repeat: ['step of the repeat unit', 'steps of the repeat unit'],
  finishing: ['step of the finishing', 'steps of the finishing'],
  runs: ['order of colours and units', 'order of colours and units'],
  ends: ['end of the repeat', 'end of the repeat'],
  steps: ['further step', 'further steps'],
  sizes: ['size', 'sizes'],
  materials: ['material', 'materials'],
  cautions: ['caution', 'cautions'],
  links: ['link', 'links'],
  chapters: ['chapter', 'chapters'],
  transcript: ['line of the transcript', 'lines of the transcript'],
};

const LISTS: ReadonlySet<ChangedPart> = new Set([
  'corrections',
  'ringKinds',
  'start',
  'repeat',
  'finishing',
  'steps',
  'sizes',
  'materials',
  'cautions',
  'links',
  'chapters',
  'transcript',
]);

/** `2 chapters changed (Welcome, The clasp)`, `summary changed`. */
export function revisionChangeWords({ part, how, names, count }: RevisionChange): string {
  const [one, several] = PARTS[part];
  const what = LISTS.has(part) ? `${count} ${count === 1 ? one : several}` : one;
  const named =
    part === 'corrections' || names.length === 0
      ? ''
      : ` (${names.slice(0, 4).join(', ')}${names.length > 4 ? ', …' : ''})`;
  return `${what} ${how}${named}`;
}
