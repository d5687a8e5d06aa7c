/**
 * Begins with the files that take longest, so that none of them is left over
 * for the end, when the other processors have nothing to do. Vitest by itself
 * knows lengths only from an earlier run on the same machine.
 */
import { join, relative } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Below tests/, the longest first; what is not named here takes less. */
const LONG = [
  'browser/publish-and-correct.browser',
  'browser/accounts.browser',
  'browser/true-for-years.browser',
  'browser/whole-job',
  'browser/keyboard-walk.browser',
  'browser/mark-up.browser',
  'browser/making-and-kit.browser',
  'browser/after-publishing.browser',
  'browser/lesson-tool.browser',
  'browser/upload',
  'http/every-route-asks',
  'http/uploads',
  'browser/placed-transcript.browser',
  'browser/bring-in-transcript',
  'browser/two-windows.browser',
  'browser/propose-and-search.browser',
  'browser/long-lesson.browser',
  'browser/hostile-page.browser',
  'browser/preview.browser',
  'browser/weave-answers.browser',
  'browser/said-aloud.browser',
  'browser/portable-copy.browser',
  'browser/misheard.browser',
  'browser/embed.browser',
  'retiming/compare-sound',
  'jobs/queue',
  'recording/generated-files',
  'data/re-edited-recording',
  'recording/outside-files',
  'weave/picture-pixels',
  'paper/lesson-sheet',
  'weave/pictures',
  'demo/load-demo',
  'recording/make-remux',
  'data/correcting-at-once',
  'paper/kit-sheet',
  'standards/hostile-files',
  'transcript/fuzz',
  'recording/draw-card',
  'standards/two-sizes-in-space',
  'data/portable-copy',
  'demo/demo-lesson',
  'access/new-password',
];

const TESTS = join(import.meta.dirname, '..');
const placeOf = ({ moduleId }: TestSpecification): number => {
  const place = LONG.indexOf(relative(TESTS, moduleId).replace(/\.test\.ts$/, ''));
  return place === -1 ? LONG.length : place;
};

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return sorted.toSorted((one, other) => placeOf(one) - placeOf(other));
  }
}
