/** What pupils report, in words. */
import type { Concern } from '#lib/lesson/report.ts';

export const CONCERN_WORDS: Readonly<Record<Concern, string>> = {
  spoken: 'what is said',
  shown: 'what is shown',
  written: 'what is written here',
  kit: 'the kit',
  link: 'a link',
  safety: 'safety',
};
