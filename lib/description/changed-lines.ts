/** What differs between a text as it was taken along and as it is now, line by line. */
import { diffLines } from 'diff';

export interface ChangedLine {
  /** `gone`: stood in the older text alone; `new`: stands in the newer alone; `same`: in both, beside a change. */
  readonly is: 'gone' | 'new' | 'same';
  readonly line: string;
}

/**
 * The changed lines in order, each run of them between its unchanged neighbours,
 * so that she finds the place in the text where it is pasted. Empty lines are not told of; so it may be
 * empty where only they differ.
 */
export function changedLines(before: string, now: string): ChangedLine[] {
  const all = diffLines(before, now).flatMap(({ value, added, removed }) =>
    value
      .replace(/\n$/, '')
      .split('\n')
      .map((line): ChangedLine => ({ is: added ? 'new' : removed ? 'gone' : 'same', line })),
  );
  const told = all.filter(({ line }) => line.trim() !== '');
  return told.filter(
    ({ is }, index) =>
      is !== 'same' || [told[index - 1], told[index + 1]].some((beside) => beside && beside.is !== 'same'),
  );
}
