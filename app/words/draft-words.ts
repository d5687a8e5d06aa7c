/** Words for the state of a draft, and for what two people changed at once. */
import type { Draft } from '#lib/lesson/change.ts';
import { formatPreciseTimeCode, formatTimeCode } from '#lib/time/time-code.ts';

export type SaveStateCode =
  | 'saved'
  | 'unsaved'
  | 'saving'
  | 'offline'
  | 'collided'
  | 'refused'
  | 'signed-out'
  | 'read-only';

export function saveStateWords(state: SaveStateCode): string {
  switch (state) {
    case 'saved':
      return 'Saved';
    case 'unsaved':
    case 'saving':
      return 'Saving…';
    case 'offline':
      return 'Not saved yet: offline, will try again';
    case 'collided':
      return 'Someone else changed this lesson';
    case 'refused':
      return 'Not saved';
    case 'signed-out':
      return 'Not saved yet: you are signed out';
    case 'read-only':
      return 'You may read, not change';
  }
}

/** Why a save was not taken, in one sentence. */
export function refusalWords(code: string): string {
  switch (code) {
    case 'changes-not-valid':
    case 'fields-not-valid':
      return 'Something in the last changes cannot be kept as it is. Change it, or undo it; all is kept in this browser until then.';
    case 'role-too-small':
      return 'You may no longer change this lesson. Your last changes are kept in this browser only.';
    case 'not-found':
      return 'This lesson is no longer there. Your last changes are kept in this browser only.';
    case 'body-too-large':
      return 'This is more than can be saved at once. Undo the last change and make it in smaller parts.';
    default:
      return 'The last changes were not taken. They are kept in this browser; reload the page to try once more.';
  }
}

const FIELDS: Readonly<Record<string, string>> = {
  title: 'Title',
  summary: 'Summary',
  weave: 'Weave',
  otherNames: 'Other names',
  difficulty: 'Difficulty',
  leaning: 'Leaning',
  language: 'Language',
  prepareMinutes: 'Minutes to prepare',
  makeMinutes: 'Minutes to make',
  currency: 'Currency',
  sample: 'Sample',
  kitRules: 'Kit rules',
  licence: 'Licence',
  dismissed: 'Findings put aside',
};

const THINGS: Readonly<Record<string, string>> = {
  cue: 'Cue',
  chapters: 'Chapter',
  ringKinds: 'Ring kind',
  start: 'Placement (start)',
  repeat: 'Placement (repeat)',
  finishing: 'Placement (finishing)',
  steps: 'Step',
  sizes: 'Size',
  materials: 'Material',
  cautions: 'Caution',
  corrections: 'Correction',
  links: 'Link',
};

/** What a key of a change stands for and what it says in a draft; `says` is null where it is not there. */
export function keyWords(draft: Draft, key: string): { readonly what: string; readonly says: string | null } {
  const slash = key.indexOf('/');
  if (slash < 0) {
    const value = (draft.content as unknown as Readonly<Record<string, unknown>>)[key];
    return { what: FIELDS[key] ?? key, says: valueWords(value) };
  }
  const list = key.slice(0, slash);
  const id = key.slice(slash + 1);
  const what = THINGS[list] ?? list;
  if (list === 'cue') {
    const cue = draft.cues.find((one) => one.id === id);
    if (!cue) return { what, says: null };
    const times = `${formatPreciseTimeCode(cue.startMs)} to ${formatPreciseTimeCode(cue.endMs)}`;
    return { what: `${what} at ${formatTimeCode(cue.startMs)}`, says: `${cue.text}\n(${times})` };
  }
  const items = (draft.content as unknown as Readonly<Record<string, unknown>>)[list];
  const item = Array.isArray(items) ? items.find((one: { id?: unknown }) => one.id === id) : undefined;
  return { what, says: item ? itemWords(item) : null };
}

const valueWords = (value: unknown): string =>
  value === null || value === '' || value === undefined
    ? '(empty)'
    : typeof value === 'object'
      ? itemWords(value)
      : String(value);

function itemWords(item: object): string {
  return Object.entries(item)
    .filter(([field, value]) => field !== 'id' && value !== null && value !== '')
    .map(([field, value]) =>
      /Ms$/.test(field) && typeof value === 'number' ? formatPreciseTimeCode(value) : plain(value),
    )
    .join(' · ');
}

const plain = (value: unknown): string =>
  value !== null && typeof value === 'object'
    ? Object.values(value)
        .map((inner) => plain(inner))
        .filter((text) => text !== '')
        .join(' ')
    : value === null
      ? ''
      : String(value);

/** `Mara`, `Mara and Ilo`, `Mara, Ilo and Sen`. */
export const namesInWords = (names: readonly string[]): string =>
  names.length <= 1
    ? (names[0] ?? '')
    : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1] ?? ''}`;
