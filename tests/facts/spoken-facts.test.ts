import { describe, expect, it } from 'vitest';
import { compareFacts } from '#lib/facts/compare-facts.ts';
import { neverSaid } from '#lib/facts/never-said.ts';
import { spokenFacts } from '#lib/facts/spoken-facts.ts';
import { readToldLesson } from '#tests/support/told-lessons.ts';
import { BRACELET, told } from './a-told-bracelet.ts';

const compared = (...sentences: readonly string[]) =>
  compareFacts(spokenFacts(told(...sentences), BRACELET), BRACELET).map(({ fact, standing, written }) =>
    `${fact.kind}: ${fact.stated} ${standing} ${written}`.trim(),
  );

describe('facts said aloud, beside the lesson', () => {
  it.each([
    ['The large red rings are eighteen gauge, S W G.', 'wire: 18 gauge agrees 18 SWG (1.2192 mm)'],
    ['The large red rings are eighteen gauge.', 'wire: 18 gauge agrees 18 SWG (1.2192 mm)'],
    ['The large red rings are sixteen gauge SWG.', 'wire: 16 gauge contradicts 18 SWG (1.2192 mm)'],
    ['The large red rings are in 18 gauge AWG.', 'wire: 18 gauge contradicts 18 SWG (1.2192 mm)'],
    ['The small green ones are four millimetres inside.', 'inner diameter: 4 mm agrees 4 mm'],
    ['The small green ones are 4.5 mm inside.', 'inner diameter: 4.5 mm contradicts 4 mm'],
    ['Green rings of one millimetre wire.', 'wire: 1 mm agrees 1 mm'],
    ['An aspect ratio of three point three.', 'aspect ratio: 3.3 agrees 3.3'],
    ['An aspect ratio of five point one.', 'aspect ratio: 5.1 contradicts 3.3, 4.0'],
    ['For the medium size you need ten large red rings.', 'rings: 10 agrees 10 (large red)'],
    ['For the medium size you need eleven large red rings.', 'rings: 11 agrees 10 (large red)'],
    ['For the medium size you need fourteen large red rings.', 'rings: 14 contradicts 10 (large red)'],
    ['The medium size takes ten repeats.', 'repeats: 10 agrees 10 repeats for Medium'],
    ['The medium size takes nine repeats.', 'repeats: 9 contradicts 10 repeats for Medium'],
    ['Each repeat takes two rings.', 'rings: 2 agrees 2 (each repeat)'],
    ['Each repeat takes three rings.', 'rings: 3 contradicts 2 (each repeat)'],
    ['Open half of them before you begin.', 'share prepared: half opened agrees 10 of 20 opened for Medium'],
  ])('%s', (sentence, fact) => {
    // With its spare a line of ten is eleven rings, and either may be said.
    expect(compared(sentence)).toEqual([fact]);
  });

  it('rings that the lesson does not have are told, but for a variation', () => {
    expect(compared('Take ten yellow rings.')).toContain(
      'metal or colour: yellow contradicts large red, small green',
    );
    const variation = {
      ...BRACELET,
      chapters: [{ id: 'v', kind: 'variation' as const, title: '', startMs: 0 }],
    };
    expect(spokenFacts(told('With yellow rings it is brighter.'), variation)).toEqual([]);
  });

  it('that half are opened is held against the kit', () => {
    const more = {
      ...BRACELET,
      repeat: BRACELET.repeat.map((one) => ({ ...one, carries: [{ ringKind: 'small', count: 3 }] })),
    };
    const [fact] = compareFacts(spokenFacts(told('Half of them open.'), more), more);
    expect(fact).toMatchObject({ standing: 'contradicts', written: '10 of 40 opened for Medium' });
  });

  it('follows what is spoken of from sentence to sentence', () => {
    const facts = spokenFacts(
      told(
        'The large red rings are eighteen gauge.',
        'That is SWG, one point two millimetres of wire.',
        'The green rings are the same size.',
      ),
      BRACELET,
    );
    expect(
      facts.map(({ kind, stated, system, ringKinds }) => [kind, stated, system, ringKinds.join()]),
    ).toEqual([
      ['wire', '18 gauge', 'SWG', 'large'],
      ['wire', '1.2 mm', 'mm', 'large'],
      ['wire', '18 gauge', 'SWG', 'small'],
      ['wire', '1.2 mm', 'mm', 'small'],
    ]);
  });

  it('takes no ring that is handled for one that is counted out', () => {
    expect(
      compared(
        'Go through the last two rings.',
        'Pick up two green rings and close them.',
        'Page thirty rings a bell.',
      ),
    ).toEqual(['rings: 30 nothing to compare']);
  });

  it('reads other voices', () => {
    const said = (name: string) =>
      spokenFacts(readToldLesson(name).cues, { ringKinds: [], sizes: [], chapters: [] }).map(
        ({ kind, stated, system }) => `${kind} ${stated} ${system ?? ''}`.trim(),
      );
    expect(said('half-persian-earrings')).toEqual(
      expect.arrayContaining(['wire 0.9 mm mm', 'inner diameter 3.6 mm mm', 'aspect ratio 4', 'rings 40']),
    );
    expect(said('four-in-one-strip')).toEqual(
      expect.arrayContaining([
        'wire 16 gauge SWG',
        'inner diameter 1/4 in in',
        'rings 120',
        'rings 80',
        'repeats 36',
      ]),
    );
    expect(said('lace-coaster')).toEqual(
      expect.arrayContaining(['inner diameter 8 mm mm', 'wire 1.2', 'inner diameter 3 mm mm', 'wire 0.8']),
    );
    expect(said('linkage-necklace')).toEqual(
      expect.arrayContaining(['inner diameter 2.95 mm mm', 'rings 360']),
    );
    expect(said('spiral-for-two')).toEqual(
      expect.arrayContaining(['wire 1.2 mm mm', 'inner diameter 4.8', 'rings 70']),
    );
  });
});

describe('what is never said', () => {
  const unsaid = (...sentences: readonly string[]) => {
    const cues = told(...sentences);
    return neverSaid(spokenFacts(cues, BRACELET), cues, BRACELET).map(({ code, name }) => `${code}: ${name}`);
  };

  it('is listed by ring kind', () => {
    expect(
      unsaid(
        'You need red and green copper rings, four millimetres inside.',
        'The large red rings are eighteen gauge.',
        'For a medium wrist ten red rings.',
      ),
    ).toEqual(['wire without system: large red', 'wire: small green', 'count: small green']);
  });

  it('is nothing where all is said, and where nothing is', () => {
    expect(unsaid()).toEqual([]);
    expect(
      unsaid(
        'All copper rings are 18 gauge SWG and four millimetres inside.',
        'For a medium wrist ten red rings, and ten green rings.',
      ),
    ).toEqual([]);
  });
});
