/** Counts that are said aloud: of rings, of repeats, and the half that is opened or closed. */
import type { SpokenNumber } from '#lib/glossary/spoken-number.ts';
import { describesRings, kindsMeant } from './ring-talk.ts';
import { BETWEEN, RING_NOUNS } from './rings-named.ts';
import { factSaid, type SpokenFact, sizeSaid, type Telling, wordAt } from './spoken-fact.ts';

const OPENED = new Set(['open', 'opened']);
const CLOSED = new Set(['closed', 'close']);
const POINTS_AT = new Set([
  'last',
  'first',
  'the',
  'these',
  'those',
  'both',
  'your',
  'next',
  'all',
  'previous',
]);
const NO_COUNT_AFTER = new Set(['one', 'ones', 'this', 'that', 'each', 'every', 'no', 'another', 'number']);

/** The count that a number tells, if it tells one. */
export function countFact(telling: Telling, at: number, number: SpokenNumber): SpokenFact | null {
  const { tokens, content } = telling;
  if (number.kind !== 'whole' || number.value === 0 || NO_COUNT_AFTER.has(wordAt(tokens, at - 1)))
    return null;
  if (wordAt(tokens, number.to) === 'repeats' || wordAt(tokens, number.to) === 'repeat')
    return number.value > 1 ? factSaid(telling, 'repeats', number.value, number.figures) : null;
  const said: string[] = [];
  let prepared: SpokenFact['prepared'] = null;
  let to = number.to;
  for (; to < number.to + 6; to += 1) {
    const word = wordAt(tokens, to);
    if (OPENED.has(word)) prepared = 'opened';
    else if (CLOSED.has(word)) prepared = 'closed';
    else if (describesRings(word, content.ringKinds)) said.push(word);
    else if (!BETWEEN.has(word)) break;
  }
  const isRings = RING_NOUNS.has(wordAt(tokens, to));
  // `four copper, and two blue`: no noun, but nothing else that is counted either.
  const ends = ['', '.', ',', 'and', ';', ':', '!'].includes(wordAt(tokens, to)) && said.length > 0;
  if (!isRings && !ends) return null;
  const ringKinds =
    said.length > 0 ? kindsMeant(said, content.ringKinds) : content.ringKinds.map(({ id }) => id);
  if (!isCount(telling, at, number.value)) return null;
  return factSaid(telling, 'rings', number.value, number.figures, { prepared, ringKinds });
}

/** Whether rings are counted out; a few rings that are handled, or pointed at, are not. */
function isCount({ tokens, sentence, content }: Telling, at: number, value: number): boolean {
  if (POINTS_AT.has(wordAt(tokens, at - 1))) return false;
  if (sizeSaid(sentence.text, content.sizes) !== null) return true;
  return value >= 5 || /\b(needs?|takes|count(?:ed)?|requires?|repeat|unit|rings?:)/i.test(sentence.text);
}

/** `close half of them`: a share of all rings. */
export function preparedShare(telling: Telling): SpokenFact | null {
  const match =
    /\b(open|close)(?:ed|d)?\s+half\b|\bhalf(?: of)?(?: the| them| your| of them)?(?: rings)?(?: are)? (open|close)/i.exec(
      telling.sentence.text,
    );
  if (!match) return null;
  const prepared = (match[1] ?? match[2] ?? '').toLowerCase() === 'open' ? 'opened' : 'closed';
  return factSaid(telling, 'share prepared', 0.5, `half ${prepared}`, {
    prepared,
    ringKinds: telling.content.ringKinds.map(({ id }) => id),
  });
}
