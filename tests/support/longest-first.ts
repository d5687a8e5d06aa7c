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
  'browser/keyboard-walk.browser',
  'browser/whole-job',
  'browser/true-for-years.browser',
  'browser/accounts.browser',
  'browser/making-and-kit.browser',
  'browser/after-publishing.browser',
  'browser/upload',
  'browser/placed-transcript.browser',
  'browser/mark-up.browser',
  'browser/bring-in-transcript',
  'http/every-route-asks',
  'browser/lesson-tool.browser',
  'http/uploads',
  'browser/two-windows.browser',
  'browser/long-lesson.browser',
  'browser/propose-and-search.browser',
  'retiming/compare-sound',
  'jobs/queue',
  'recording/generated-files',
  'data/re-edited-recording',
  'recording/outside-files',
  'data/portable-copy',
  'recording/make-remux',
  'demo/load-demo',
  'paper/lesson-sheet',
  'weave/pictures',
  'demo/demo-lesson',
  'paper/kit-sheet',
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
