/** Every field of what a revision freezes: told in the public history when it changes, or left out for a reason that stands here. */
import { describe, expect, test } from 'vitest';
import { revisionChangeSentence } from '#app/words/revision-change.ts';
import { type Content, content, listField } from '#lib/lesson/content.ts';
import {
  type FrozenRecording,
  freezeRevision,
  frozenRecording,
  type Revision,
  revision,
} from '#lib/lesson/revision.ts';
import { type RevisionChange, revisionDifference } from '#lib/lesson/revision-difference.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';

type Field =
  | Exclude<keyof Revision, 'content' | 'recording' | 'workshop'>
  | `content.${keyof Content}`
  | `recording.${keyof FrozenRecording}`
  | `workshop.${keyof Revision['workshop']}`;

/** A reason, where a change of the field is left out on purpose. */
class NotTold {
  readonly why: string;
  constructor(why: string) {
    this.why = why;
  }
}
const ofTheRecording = new NotTold('what is known of the recording, which is told by itself');

/** The part that tells of a field. A field that is added to a revision has to be decided upon here. */
const TOLD: Readonly<Record<Field, RevisionChange['part'] | NotTold>> = {
  schema: new NotTold('the form of the document'),
  number: new NotTold('stands beside what is told'),
  publishedAt: new NotTold('stands beside what is told'),
  stills: new NotTold(
    'pictures of steps: their moments and words are told as steps, their source as recording',
  ),
  kits: 'kits',
  terms: 'terms',
  cues: 'transcript',
  'workshop.name': 'workshop',
  'workshop.slug': new NotTold('part of the address under which all of it is read'),
  'recording.id': 'recording',
  'recording.posterKey': 'poster',
  'recording.durationMs': ofTheRecording,
  'recording.hasVideo': ofTheRecording,
  'recording.hasAudio': ofTheRecording,
  'recording.width': ofTheRecording,
  'recording.height': ofTheRecording,
  'recording.mediaType': ofTheRecording,
  'recording.mediaKey': ofTheRecording,
  'content.schema': new NotTold('the form of the document'),
  'content.dismissed': new NotTold('a note of the teacher to herself, which no revision keeps'),
  'content.title': 'title',
  'content.summary': 'summary',
  'content.weave': 'weave',
  'content.otherNames': 'weave',
  'content.difficulty': 'difficulty',
  'content.leaning': 'leaning',
  'content.language': 'language',
  'content.prepareMinutes': 'times',
  'content.makeMinutes': 'times',
  'content.currency': 'currency',
  'content.sample': 'sample',
  'content.kitRules': 'kit rules',
  'content.endsAfter': 'ends',
  'content.ends': 'ends',
  'content.licence': 'licence',
  'content.chapters': 'chapters',
  'content.ringKinds': 'ringKinds',
  'content.start': 'start',
  'content.repeat': 'repeat',
  'content.finishing': 'finishing',
  'content.runs': 'runs',
  'content.steps': 'steps',
  'content.sizes': 'sizes',
  'content.materials': 'materials',
  'content.cautions': 'cautions',
  'content.corrections': 'corrections',
  'content.links': 'links',
};

const written = aContent();
const frozen = freezeRevision({
  number: 2,
  publishedAt: new Date('2026-03-01T10:00:00Z'),
  workshop: { name: 'Kettle Row Rings', slug: 'kettle-row' },
  content: aContent({
    runs: ['run-a', 'run-b'].map((id) => ({ id, unit: '', repeats: 2, swaps: [] })),
    start: written.finishing.map((item) => ({ ...item, id: `start-${item.id}` })),
    steps: ['step-a', 'step-b'].map((id) => ({ id, sentence: `Do ${id}.`, atMs: 9_000, pictureText: '' })),
    links: ['a', 'b'].map((id) => ({ id, label: `link ${id}`, address: `https://${id}.example/` })),
    cautions: ['ca-1', 'ca-2'].map((id) => ({ id, of: null, text: `Mind ${id}.` })),
    endsAfter: 'repeat-2',
    ends: { first: [], last: [] },
    materials: ['glue', 'cord'].map((id) => ({
      ...(written.materials[0] as Content['materials'][number]),
      id,
      name: id,
    })),
    corrections: ['co-1', 'co-2'].map((id) => ({
      ...{ id, kind: 'said wrongly' as const, startMs: 1_000, endMs: 2_000, wrong: 'one', right: 'two' },
      ...{ affects: 'everyone', kitsChange: false, of: 'm', revision: 1 },
      effects: [{ kind: 'text' as const, of: 'title', field: 'title', before: 'one', after: 'two' }],
    })),
  }),
  cues: aTranscript,
  recording: {
    ...{ id: 'r-1', durationMs: 90_000, hasVideo: true, hasAudio: true, width: 160, height: 90 },
    ...{ mediaType: 'video/mp4', mediaKey: 'media', posterKey: 'poster' },
  },
  stillKeys: new Map([[30_000, 'still']]),
  terms: [{ term: 'byzantine', forms: [], meaning: 'A square chain.' }],
  published: [],
});

/** With what the schema gives where nothing is said. */
const whole: Revision = revision.parse(frozen);

/** The same value said otherwise, whatever it is. */
function otherwise(value: unknown): unknown {
  if (typeof value === 'number') return value + 1;
  if (typeof value === 'boolean') return !value;
  if (typeof value === 'string') return `${value}, otherwise`;
  if (Array.isArray(value)) return value.length > 0 ? value.slice(1) : ['otherwise'];
  return value === null ? 'otherwise' : null;
}

/** The document with what lies at a path said otherwise. */
function changedAt(document: unknown, [key, ...rest]: readonly (string | number)[]): unknown {
  if (key === undefined) return otherwise(document);
  if (Array.isArray(document))
    return document.map((item, place) => (place === key ? changedAt(item, rest) : item));
  const held = document as Readonly<Record<string, unknown>>;
  return { ...held, [key]: changedAt(held[key], rest) };
}

/** The paths of all that a value holds, down to what holds nothing. */
const leavesOf = (value: unknown): readonly (readonly (string | number)[])[] =>
  value === null || typeof value !== 'object' || Object.keys(value).length === 0
    ? [[]]
    : Object.entries(value).flatMap(([key, inner]) =>
        leavesOf(inner).map((path) => [Array.isArray(value) ? Number(key) : key, ...path]),
      );

const toldAt = (path: readonly (string | number)[]): readonly RevisionChange[] =>
  revisionDifference(whole, changedAt(whole, path) as Revision);

/** Every field by the schemas: what a document may hold, whether or not this one does. */
const fields = Object.keys(revision.shape).flatMap((key) => {
  const shape = { content, recording: frozenRecording, workshop: revision.shape.workshop }[key]?.shape;
  return shape ? Object.keys(shape).map((inner) => [key, inner]) : [[key]];
});

describe('what a revision freezes', () => {
  test('is decided upon field by field', () => {
    expect(fields.map((path) => path.join('.')).toSorted()).toEqual(Object.keys(TOLD).toSorted());
  });

  test.each(Object.entries(TOLD))('%s', (field, told) => {
    const path = field.split('.');
    const parts = toldAt(path).map(({ part }) => part);
    if (told instanceof NotTold) expect(parts).toEqual([]);
    else expect(parts).toContain(told);
  });

  test('is told however deep the change lies, and in words', () => {
    let tried = 0;
    for (const field of fields) {
      if (TOLD[field.join('.') as Field] instanceof NotTold) continue;
      const value = field.reduce<unknown>((held, key) => (held as Record<string, unknown>)[key], whole);
      for (const leaf of leavesOf(value)) {
        const path = [...field, ...leaf];
        const changes = toldAt(path);
        expect(changes, path.join('.')).not.toEqual([]);
        for (const change of changes)
          expect(revisionChangeSentence(change)).toMatch(/^[A-Z].* (was|were) \w+[^.]*\.$/s);
        tried += 1;
      }
    }
    expect(tried).toBeGreaterThan(350);
  });

  test('is told whichever field of a thing in a list changes, also one that it did not state', () => {
    for (const list of listField.options) {
      const schema = content.shape[list];
      const { element } = 'element' in schema ? schema : schema.unwrap();
      expect(whole.content[list], list).not.toEqual([]);
      for (const key of Object.keys(element.shape))
        expect(
          toldAt(['content', list, 0, key]).map(({ part }) => part),
          `${list} ${key}`,
        ).toContain(list);
    }
  });

  test('is told when its order alone changes', () => {
    const content = { ...whole.content, materials: whole.content.materials.toReversed() };
    expect(revisionDifference(whole, { ...whole, content }).map(revisionChangeSentence)).toEqual([
      'The order of the materials was changed.',
    ]);
  });

  test('tells of kits by size, and of what they cost by itself', () => {
    const packsMinor = (kit: Revision['kits'][number]) => ({ ...kit, packsMinor: kit.packsMinor + 5 });
    expect(
      revisionDifference(whole, { ...whole, kits: whole.kits.map(packsMinor) }).map(revisionChangeSentence),
    ).toEqual(['Three costs of kits were changed: small, medium, large.']);
    const [first, ...rest] = whole.kits;
    const kits = [
      { ...first, rings: first?.rings.map((ring) => ({ ...ring, issued: ring.issued + 1 })) },
      ...rest,
    ];
    expect(revisionDifference(whole, { ...whole, kits } as Revision).map(revisionChangeSentence)).toEqual([
      'One kit was changed: small.',
    ]);
  });

  test('tells of terms by name', () => {
    const other = { term: 'lay', forms: [], meaning: 'How rings lie.' };
    const changed = whole.terms.map((one) =>
      one.term === 'byzantine' ? { ...one, meaning: 'Another meaning.' } : one,
    );
    const terms = [...changed, other];
    expect(revisionDifference(whole, { ...whole, terms }).map(revisionChangeSentence)).toEqual([
      'One explained term was added: lay.',
      'One explained term was changed: byzantine.',
    ]);
  });
});
