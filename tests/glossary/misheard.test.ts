import { dictionary } from 'cmu-pronouncing-dictionary';
import { describe, expect, it } from 'vitest';
import { prepareGlossary } from '#lib/glossary/glossary.ts';
import { signsOf } from '#lib/glossary/phonemes.ts';
import { createPronounce } from '#lib/glossary/spoken-word.ts';
import { TRADE_TERMS } from '#lib/glossary/trade-terms.ts';
import { BEFORE, misheardIn } from './measure-misheard.ts';

const pronounce = createPronounce((word) => dictionary[word]);
const said = (text: string): string =>
  pronounce(text)
    .map(({ sounds }) => signsOf(sounds))
    .join(' | ');

describe('how words are said', () => {
  it('takes figures as numbers and short capitals letter by letter', () => {
    expect(said('18')).toBe(said('eighteen').replaceAll(' | ', ' '));
    expect(said('SWG').replaceAll(' | ', ' ')).toBe(said('s w g').replaceAll(' | ', ' '));
  });

  it('knows British spellings by the American ones, and compounds by their parts', () => {
    expect(pronounce('colour anodised millimetres springback').map(({ known }) => known)).toEqual([
      true,
      false,
      true,
      true,
    ]);
    expect(said('colour')).toBe(said('color'));
  });

  it('keeps the place of every word', () => {
    const text = 'The “twist-tie”, then: 4 rings.';
    expect(pronounce(text).map(({ start, end }) => text.slice(start, end))).toEqual([
      'The',
      'twist',
      'tie',
      'then',
      '4',
      'rings',
    ]);
  });
});

describe('suggestions', () => {
  it('name the place, the words and the reason', () => {
    const [one, ...others] = misheardIn('You also need a lobster class, and a ring.');
    expect(others).toEqual([]);
    expect(one).toMatchObject({ heard: 'lobster class', instead: 'lobster clasp', reason: 'sound' });
    expect(one?.parts).toEqual([{ cueId: '0', start: 16, end: 29, instead: 'lobster clasp' }]);
  });

  it('keep the capital at the beginning of a sentence', () => {
    expect(misheardIn('Starling silver is dear.')[0]?.instead).toBe('Sterling silver');
  });

  it('run over from one cue into the next, each with its own words', () => {
    const [one] = misheardIn(...BEFORE, 'and now you take the lobster', 'class and a small ring');
    const at = `${BEFORE.length}`;
    expect(one?.parts).toEqual([
      { cueId: at, start: 21, end: 28, instead: 'lobster' },
      { cueId: `${BEFORE.length + 1}`, start: 0, end: 5, instead: 'clasp' },
    ]);
  });

  it('leave a short word alone until its surroundings speak for it', () => {
    expect(misheardIn('a class of students took the idea')).toEqual([]);
    expect(misheardIn('go through the loop of the class with the small ring')[0]?.instead).toBe('clasp');
  });

  it('leave alone every term and every form of it', () => {
    for (const { term, forms } of TRADE_TERMS)
      for (const written of [term, ...forms])
        expect(misheardIn(`now we look at ${written} again`), written).toEqual([]);
  });

  it('find a term of the workshop by how it is said', () => {
    const own = prepareGlossary(
      [{ term: 'Withy knot', forms: [], sounds: ['withy not'], confusions: [], everyday: false }],
      pronounce,
    );
    expect(own.index.entries.map(({ written }) => written)).toEqual(['Withy knot']);
  });
});
