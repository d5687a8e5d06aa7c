import { dictionary } from 'cmu-pronouncing-dictionary';
import { describe, expect, it } from 'vitest';
import {
  alike,
  glossaryOf,
  type HeardDecision,
  leftKey,
  placeOf,
  takeSuggestions,
  undecided,
} from '#lib/glossary/decide.ts';
import { prepareGlossary } from '#lib/glossary/glossary.ts';
import { findMisheard } from '#lib/glossary/misheard.ts';
import { createPronounce } from '#lib/glossary/spoken-word.ts';
import { TRADE_TERMS } from '#lib/glossary/trade-terms.ts';

const pronounce = createPronounce((word) => dictionary[word]);
const newId = () => 'new';
const cuesOf = (...lines: readonly string[]) =>
  lines.map((text, at) => ({
    id: `${at}`,
    text,
    startMs: at * 3_000,
    endMs: at * 3_000 + 2_900,
    settings: '',
  }));
type Own = Parameters<typeof glossaryOf>[1];
const find = (cues: ReturnType<typeof cuesOf>, own: Own = [], decisions: readonly HeardDecision[] = []) =>
  findMisheard(cues, prepareGlossary(glossaryOf(TRADE_TERMS, own, decisions), pronounce), pronounce);

const LINES = ['a lobster class here', 'and a lobster class there', 'starling silver is dear'];

describe('decisions', () => {
  it('taking changes the words of that place and nothing else', () => {
    const cues = cuesOf(...LINES);
    const [first] = find(cues);
    if (!first) throw new Error('nothing found');
    expect(takeSuggestions(cues, [first], newId).put).toEqual([{ ...cues[0], text: 'a lobster clasp here' }]);
  });

  it('several places of one cue are taken at once', () => {
    const cues = cuesOf('a lobster class and starling silver');
    expect(takeSuggestions(cues, find(cues), newId).put[0]?.text).toBe('a lobster clasp and sterling silver');
  });

  it('words that run over into the next cue are shared out', () => {
    const cues = cuesOf('now take the lobster', 'class and a ring');
    expect(
      takeSuggestions(cues, find(cues), newId)
        .put.map(({ text }) => text)
        .sort(),
    ).toEqual(['clasp and a ring', 'now take the lobster']);
  });

  it('a place that reads differently by now is left as it is', () => {
    const cues = cuesOf(...LINES);
    const found = find(cues);
    expect(takeSuggestions(cuesOf('a lobster claw here', '', ''), found, newId).put).toEqual([]);
  });

  it('the one that is looked at stays, whatever a later search finds before it', () => {
    const [first, second, third] = find(cuesOf(...LINES));
    if (!first || !second || !third) throw new Error('three are found');
    const looked = { id: second.id, at: 0 };
    expect(placeOf([second, third], looked)).toBe(0);
    expect(placeOf([first, second, third], looked)).toBe(1);
    // Once it is decided, the next takes its place; behind the last there is none.
    expect(placeOf([first, third], { id: second.id, at: 1 })).toBe(1);
    expect(placeOf([first], { id: second.id, at: 1 })).toBe(0);
    expect(placeOf([], looked)).toBe(0);
  });

  it('what was left here is offered elsewhere; left everywhere, nowhere in the lesson; never, in no lesson', () => {
    const found = find(cuesOf(...LINES));
    const [first] = found;
    if (!first) throw new Error('nothing found');
    const heard = (left: readonly string[], decisions: readonly HeardDecision[] = []) =>
      undecided(found, left, decisions).map((one) => one.heard);
    expect(heard([])).toEqual(['lobster class', 'lobster class', 'starling silver']);
    expect(heard([leftKey(first, 'here')])).toEqual(['lobster class', 'starling silver']);
    expect(heard([leftKey(first, 'everywhere')])).toEqual(['starling silver']);
    const never = { heard: 'lobster class', instead: 'lobster clasp', taken: 0, never: true };
    expect(heard([], [never])).toEqual(['starling silver']);
    expect(alike(found).map((some) => some.length)).toEqual([2, 1]);
  });

  it('what was taken once is known from then on, however far it is from the sound', () => {
    const cues = cuesOf('we call it the lobster glove');
    expect(find(cues)).toEqual([]);
    const taken = { heard: 'lobster glove', instead: 'lobster clasp', taken: 1, never: false };
    expect(find(cues, [], [taken])).toMatchObject([{ instead: 'lobster clasp', reason: 'taken before' }]);
    expect(find(cues, [], [{ ...taken, taken: 0, never: true }])).toEqual([]);
  });

  it('a term of the workshop is found by how it is said, and wins over ours', () => {
    const cues = cuesOf('this is the withy not bracelet');
    expect(find(cues)).toEqual([]);
    const own = [{ term: 'Withy knot', forms: [], sounds: ['withy not'] }];
    expect(find(cues, own)).toMatchObject([{ heard: 'withy not', instead: 'Withy knot' }]);
  });
});
