/**
 * Facts that are said aloud: sizes, gauges, counts, ratios, with the moment
 * and the words that they were said in. Read from a transcript by the words
 * around a number; what is not plainly said is not guessed.
 */
import { type Sentence, sentencesOf } from '#lib/chapters/sentences.ts';
import { readNumber, tokensOf } from '#lib/glossary/spoken-number.ts';
import type { Content } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { strangeWords } from './ring-talk.ts';
import { RING_NOUNS, ringsNamed } from './rings-named.ts';
import { countFact, preparedShare } from './spoken-counts.ts';
import { chapterKindAt, factSaid, type SpokenFact, type Telling } from './spoken-fact.ts';
import { sizeFact } from './spoken-sizes.ts';

/** Chapters in which the piece itself is made. */
const MAKES: ReadonlySet<string> = new Set(['materials', 'setup', 'repeat unit', 'finishing', 'clasp']);

/** Every fact said in the cues, in their order; ring kinds and sizes are the lesson's own. */
export function spokenFacts(
  cues: readonly Cue[],
  content: Pick<Content, 'ringKinds' | 'sizes' | 'chapters'>,
): readonly SpokenFact[] {
  const sentences = sentencesOf(cues);
  const facts: SpokenFact[] = [];
  let subject: readonly string[] = [];
  let subjectAt = -9;
  sentences.forEach((sentence, at) => {
    const tokens = tokensOf(sentence.text);
    const named = ringsNamed(tokens, content);
    if (named) {
      if (/\bsame (size|gauge|wire)\b/i.test(sentence.text))
        facts.push(...sameAgain(facts, subject, named, sentence));
      subject = named;
      subjectAt = at;
    }
    const next = sentences[at + 1];
    facts.push(
      ...factsOf({
        sentence,
        tokens,
        onward: [...tokens, ...tokensOf(next?.text ?? '')].map(({ word }) => word),
        content,
        subject: at - subjectAt <= 2 && subject.length > 0 ? subject : content.ringKinds.map(({ id }) => id),
      }),
    );
  });
  return facts;
}

/** `the blue rings are the same size`: what was said of the former is said of these. */
const sameAgain = (
  facts: readonly SpokenFact[],
  former: readonly string[],
  now: readonly string[],
  sentence: Sentence,
): readonly SpokenFact[] =>
  facts
    .filter(
      ({ kind, ringKinds }) =>
        (kind === 'wire' || kind === 'inner diameter') && ringKinds.join() === former.join(),
    )
    .map((fact) => ({
      ...fact,
      id: `${sentence.cueId} ${sentence.startMs} same ${fact.kind} ${fact.stated}`,
      ringKinds: now,
      cueId: sentence.cueId,
      startMs: sentence.startMs,
      endMs: sentence.endMs,
      quote: sentence.text,
    }));

function factsOf(telling: Telling): readonly SpokenFact[] {
  const facts: SpokenFact[] = [];
  const { tokens } = telling;
  const share = preparedShare(telling);
  if (share) facts.push(share);
  facts.push(...strangeRings(telling));
  for (let at = 0; at < tokens.length; ) {
    const number = readNumber(tokens, at);
    const fact = number && (sizeFact(telling, at, number) ?? countFact(telling, at, number));
    if (fact) facts.push(fact);
    at = Math.max(at + 1, number?.to ?? 0);
  }
  return facts;
}

/** Rings of a metal or colour that the lesson does not have; in a variation others are meant on purpose. */
function strangeRings(telling: Telling): readonly SpokenFact[] {
  const { tokens, content, sentence } = telling;
  if (content.ringKinds.length === 0 || !MAKES.has(chapterKindAt(sentence, content.chapters) ?? 'materials'))
    return [];
  return tokens.flatMap(({ word }, at) => {
    if (!RING_NOUNS.has(word)) return [];
    const before = tokens.slice(Math.max(0, at - 2), at).map((token) => token.word);
    return strangeWords(before, content.ringKinds).map((strange) =>
      factSaid(telling, 'metal or colour', 0, strange, { ringKinds: [] }),
    );
  });
}
