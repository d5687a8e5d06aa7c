/**
 * One field of a lesson by its name, read and written as text: how corrections
 * name what was put right. `of` is the id of a thing of the lesson or of a cue,
 * or the name of a field of the lesson itself; `field` leads into it.
 */
import { parseSize } from '#lib/rings/parse-size.ts';
import type { Change, Draft } from './change.ts';
import { listField, scalarField } from './content.ts';

export interface FieldName {
  readonly of: string;
  /** `text`, `wire`, `offer/link`, `carries/0/count`; of the lesson itself `value`. */
  readonly field: string;
}

type Item = Readonly<Record<string, unknown>> & { readonly id: string };
type Held =
  | { readonly in: 'lesson'; readonly field: (typeof scalarField.options)[number] }
  | { readonly in: 'cues' | (typeof listField.options)[number]; readonly item: Item };

function find({ content, cues }: Draft, { of, field }: FieldName): Held | null {
  const scalar = scalarField.options.find((name) => name === of);
  if (scalar && field === 'value') return { in: 'lesson', field: scalar };
  const cue = cues.find(({ id }) => id === of);
  if (cue) return { in: 'cues', item: { ...cue } };
  for (const list of listField.options) {
    const item = (content[list] as readonly { readonly id: string }[]).find(({ id }) => id === of);
    if (item) return { in: list, item: { ...item } };
  }
  return null;
}

/** As text: a size as it is stated, a count in figures; null where there is no such field. */
export function readField(draft: Draft, name: FieldName): string | null {
  const held = find(draft, name);
  if (!held) return null;
  if (held.in === 'lesson') return textOf(draft.content[held.field], held.field);
  const keys = name.field.split('/');
  const value = keys.reduce<unknown>((inner, key) => (isObject(inner) ? inner[key] : undefined), held.item);
  return textOf(value, keys.at(-1) ?? '');
}

/** The change that writes the text there; null where it cannot stand there. */
export function writeField(draft: Draft, name: FieldName, text: string): Change | null {
  const held = find(draft, name);
  const before = readField(draft, name);
  if (!held || before === null) return null;
  if (held.in === 'lesson') {
    const value = typedLike(draft.content[held.field], held.field, text);
    return value === null ? null : { kind: 'set', field: held.field, value };
  }
  const item = withValue(held.item, name.field.split('/'), text);
  if (!isObject(item)) return null;
  if (held.in === 'cues') {
    const cue = draft.cues.find(({ id }) => id === name.of);
    return cue && name.field === 'text' ? { kind: 'cues', put: [{ ...cue, text }], remove: [] } : null;
  }
  return { kind: 'put', list: held.in, item: { ...item, id: held.item.id } };
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

/** The value with what the keys lead to replaced; null where it cannot be. */
function withValue(value: unknown, keys: readonly string[], text: string): unknown {
  const [key, ...rest] = keys;
  if (key === undefined || !isObject(value) || !(key in value)) return null;
  const inner = rest.length === 0 ? typedLike(value[key], key, text) : withValue(value[key], rest, text);
  if (inner === null) return null;
  return Array.isArray(value) ? value.with(Number(key), inner) : { ...value, [key]: inner };
}

function textOf(value: unknown, key: string): string | null {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return String(key === 'quantityMilli' ? value / 1000 : value);
  return isObject(value) && typeof value['stated'] === 'string' ? value['stated'] : null;
}

/** The text as a value like the one that is there. */
function typedLike(before: unknown, key: string, text: string): unknown {
  if (typeof before === 'string') return text;
  if (typeof before === 'number') {
    const value = Number(text) * (key === 'quantityMilli' ? 1000 : 1);
    return text.trim() !== '' && Number.isInteger(value) && value >= 0 ? value : null;
  }
  const size = parseSize(text, key === 'wire' ? 'wire' : 'inner diameter');
  return size.ok ? size.value : null;
}
