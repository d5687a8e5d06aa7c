/** The pictures of a lesson's steps as its printed sheet takes them. */
import type { SheetSteps } from '#app/paper/step-sheet.ts';
import type { Content } from '#lib/lesson/content.ts';
import { pageSteps } from '#lib/lesson/page-steps.ts';
import { unitBegun } from '#lib/lesson/repeat-words.ts';
import { oneOfMaking } from './answer-picture.ts';

const FIRST = { repeats: 1 } as const;

export function stepsForPaper(content: Content): SheetSteps {
  const pictureOf = (of: string) => {
    const picture = oneOfMaking(content, { of, as: 'picture', ...FIRST });
    return picture && 'svg' in picture ? picture : null;
  };
  return {
    piece: pictureOf('piece'),
    steps: pageSteps(content).map(({ id, part, number, sentence, placement }) => ({
      part,
      number,
      sentence,
      begun: unitBegun(content, placement),
      picture: placement ? pictureOf(id) : null,
    })),
  };
}
