/**
 * One change of a lesson's draft, and what follows from writing every change
 * down: undo (the inverse is a change too), autosave (a save is a list of
 * changes on a named version), and two windows that never overwrite each
 * other (changes that touch different keys can stand on top of each other).
 */
import { z } from 'zod';
import { type Cue, compareCues, cue, cueId } from '#lib/transcript/cue.ts';
import { type Content, content, listField, scalarField, thingId } from './content.ts';

/** A lesson's draft: its document and its cues in order of time. */
export interface Draft {
  readonly content: Content;
  readonly cues: readonly Cue[];
}

export const change = z.discriminatedUnion('kind', [
  /** Gives a scalar field a new value. */
  z.object({ kind: z.literal('set'), field: scalarField, value: z.unknown() }),
  /** Adds an item to a list, or replaces the one with its id; `index` places a new one, or moves it. */
  z.object({
    kind: z.literal('put'),
    list: listField,
    item: z.looseObject({ id: thingId }),
    index: z.int().min(0).optional(),
  }),
  z.object({ kind: z.literal('remove'), list: listField, id: thingId }),
  /** Puts cues in (new ones, or in place of those with their id) and takes cues out, at once. */
  z.object({
    kind: z.literal('cues'),
    put: z.array(cue).max(20_000),
    remove: z.array(cueId).max(20_000),
  }),
]);
export type Change = z.infer<typeof change>;

/** Why a change could not be made: what is wrong, and with which field. */
export interface ChangeFault {
  readonly code: 'change-not-valid';
  readonly where: string;
  readonly message: string;
}

type Listed = { readonly id: string };

/**
 * The draft after a change. Pure; shares all that did not change. The value
 * is not checked here: `checkContent` does that once for a whole save.
 * Removing what is not there changes nothing.
 */
export function applyChange(draft: Draft, made: Change): Draft {
  switch (made.kind) {
    case 'set':
      return { ...draft, content: { ...draft.content, [made.field]: made.value } as Content };
    case 'put': {
      const list = draft.content[made.list] as readonly Listed[];
      const at = list.findIndex((item) => item.id === made.item.id);
      const rest = list.filter((item) => item.id !== made.item.id);
      const index = Math.min(made.index ?? (at < 0 ? list.length : at), rest.length);
      return withList(draft, made.list, rest.toSpliced(index, 0, made.item));
    }
    case 'remove': {
      const list = draft.content[made.list] as readonly Listed[];
      return withList(
        draft,
        made.list,
        list.filter((item) => item.id !== made.id),
      );
    }
    case 'cues': {
      const gone = new Set([...made.remove, ...made.put.map((c) => c.id)]);
      const kept = draft.cues.filter((c) => !gone.has(c.id));
      return { ...draft, cues: [...kept, ...made.put].sort(compareCues) };
    }
  }
}

const withList = (draft: Draft, list: string, items: readonly Listed[]): Draft => ({
  ...draft,
  content: { ...draft.content, [list]: items } as Content,
});

/** The change that takes `made` back, when made on `draft`. */
export function inverseOf(draft: Draft, made: Change): Change {
  switch (made.kind) {
    case 'set':
      return { kind: 'set', field: made.field, value: draft.content[made.field] };
    case 'put':
    case 'remove': {
      const id = made.kind === 'put' ? made.item.id : made.id;
      const list = draft.content[made.list] as readonly Listed[];
      const index = list.findIndex((item) => item.id === id);
      const before = list[index];
      return before
        ? { kind: 'put', list: made.list, item: { ...before }, index }
        : { kind: 'remove', list: made.list, id };
    }
    case 'cues': {
      const touched = new Set([...made.remove, ...made.put.map((c) => c.id)]);
      const before = draft.cues.filter((c) => touched.has(c.id));
      const known = new Set(before.map((c) => c.id));
      return {
        kind: 'cues',
        put: before,
        remove: made.put.filter((c) => !known.has(c.id)).map((c) => c.id),
      };
    }
  }
}

/** What a change touches: `title`, `chapters/ID`, `cue/ID`. Changes with no key in common do not collide. */
export function keysOf(made: Change): readonly string[] {
  switch (made.kind) {
    case 'set':
      return [made.field];
    case 'put':
      return [`${made.list}/${made.item.id}`];
    case 'remove':
      return [`${made.list}/${made.id}`];
    case 'cues':
      return [...made.put.map((c) => `cue/${c.id}`), ...made.remove.map((id) => `cue/${id}`)];
  }
}

/** Checks a whole document; every fault, not the first. */
export function checkContent(
  candidate: unknown,
):
  | { readonly ok: true; readonly value: Content }
  | { readonly ok: false; readonly fault: readonly ChangeFault[] } {
  const parsed = content.safeParse(candidate);
  if (parsed.success) return { ok: true, value: parsed.data };
  return {
    ok: false,
    fault: parsed.error.issues.map((issue) => ({
      code: 'change-not-valid',
      where: issue.path.join('/'),
      message: issue.message,
    })),
  };
}
