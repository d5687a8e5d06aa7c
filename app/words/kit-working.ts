/** What holds for a whole kit, sentence by sentence: its length and its rule of spare. */
import type { KitList } from '#lib/kit/kit-list.ts';
import { lengthWords, spareRuleWords } from './kit-words.ts';

export const kitWorking = ({ length, spareRule, rings, spareRepeats }: KitList): readonly string[] => [
  ...(length ? lengthWords(length) : []),
  ...(rings.length > 0 ? [spareRuleWords(spareRule)] : []),
  ...(spareRepeats !== null && spareRepeats > 0
    ? [`The spare rings would do for ${spareRepeats} ${spareRepeats === 1 ? 'repeat' : 'repeats'} more.`]
    : []),
];
