/** The whole making for the other hand: sides, sentences and leaning, as one set of changes. */
import { mirroredPlacement } from '#lib/weave/sequence.ts';
import type { Change } from './change.ts';
import { type Content, SEQUENCE_PARTS } from './content.ts';
import { handSegments } from './hand-words.ts';
import { proposeSentence } from './propose-sentence.ts';

/** A sentence for the other hand: `left` for `right`, and `from the front` for `from the back`. */
export function mirroredSentence(sentence: string): string {
  const handed = handSegments(sentence)
    .map(({ text, mirrored }) => mirrored ?? text)
    .join('');
  return handed.replace(
    /\b([Ff]rom the )(front|back)\b/g,
    (_, from: string, side: string) => `${from}${side === 'front' ? 'back' : 'front'}`,
  );
}

/** What turns a making to the other hand; nothing where it has no hand. */
export function mirrorMaking(content: Content): readonly Change[] {
  if (content.leaning === 'none') return [];
  const hand = content.leaning === 'left' ? 'right' : 'left';
  const placements = SEQUENCE_PARTS.flatMap((list) =>
    content[list].map((placement): Change => {
      const turned = mirroredPlacement(placement);
      const proposed = proposeSentence(content, placement) === placement.sentence;
      const sentence = proposed ? proposeSentence(content, turned) : mirroredSentence(placement.sentence);
      return { kind: 'put', list, item: { ...turned, sentence } };
    }),
  );
  return [{ kind: 'set', field: 'leaning', value: hand }, ...placements];
}
