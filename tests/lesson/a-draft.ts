/** Drafts and changes for property tests: few ids, so that changes meet each other often. */
import fc from 'fast-check';
import type { Change, Draft } from '#lib/lesson/change.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { compareCues } from '#lib/transcript/cue.ts';

const id = fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f');
const words = fc.string({ maxLength: 8 });
const moment = fc.integer({ min: 0, max: 60_000 });

export const aCue = fc
  .record({ id, startMs: moment, length: fc.integer({ min: 1, max: 5_000 }), text: words })
  .map(({ id, startMs, length, text }) => ({ id, startMs, endMs: startMs + length, text, settings: '' }));

const aChapter = fc.record({
  id,
  kind: fc.constantFrom('opening' as const, 'repeat unit' as const, 'closing' as const),
  title: words,
  startMs: moment,
});

const put = fc.record({ item: aChapter, index: fc.option(fc.nat(8), { nil: undefined }) }).map(
  ({ item, index }): Change => ({
    kind: 'put',
    list: 'chapters',
    item,
    ...(index === undefined ? {} : { index }),
  }),
);

const cues = fc
  .record({
    put: fc.uniqueArray(aCue, { selector: (cue) => cue.id, maxLength: 4 }),
    remove: fc.uniqueArray(id, { maxLength: 3 }),
  })
  .map((made): Change => ({ kind: 'cues', ...made }));

/** Any kind of change. */
export const aChange: fc.Arbitrary<Change> = fc.oneof(
  fc
    .record({ field: fc.constantFrom('title' as const, 'summary' as const, 'weave' as const), value: words })
    .map((made): Change => ({ kind: 'set', ...made })),
  put,
  id.map((gone): Change => ({ kind: 'remove', list: 'chapters', id: gone })),
  cues,
);

export const aDraft: fc.Arbitrary<Draft> = fc
  .record({
    chapters: fc.uniqueArray(aChapter, { selector: (chapter) => chapter.id, maxLength: 6 }),
    cues: fc.uniqueArray(aCue, { selector: (cue) => cue.id, maxLength: 6 }),
    title: words,
  })
  .map(({ chapters, cues, title }) => ({
    content: { ...emptyContent(title, 'en', 'EUR'), chapters },
    cues: cues.sort(compareCues),
  }));
