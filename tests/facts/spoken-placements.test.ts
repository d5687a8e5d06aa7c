import { describe, expect, it } from 'vitest';
import { spokenPlacements } from '#lib/facts/spoken-placements.ts';
import { BRACELET, told } from './a-told-bracelet.ts';

/** Told in the chapter that begins at `atMs`. */
const placements = (atMs: number, ...sentences: readonly string[]) =>
  spokenPlacements(
    told(...sentences).map((cue) => ({ ...cue, startMs: cue.startMs + atMs, endMs: cue.endMs + atMs })),
    BRACELET,
  );
const [MATERIALS, SETUP, REPEAT, CLASP] = [0, 100_000, 200_000, 300_000];

describe('steps told aloud', () => {
  it('say what is opened, carried and passed, from which side, and when', () => {
    const [one] = placements(
      REPEAT,
      'Take an open large red ring, pick up two closed green rings, go through the last pair from the back, and close it.',
    );
    expect(one).toMatchObject({
      part: 'repeat',
      startMs: REPEAT,
      unsure: [],
      placement: {
        opened: 'large',
        carries: [{ ringKind: 'small', count: 2 }],
        passes: [{ from: 'back' }, { from: 'back' }],
        lie: 'as it falls',
        atMs: REPEAT + 2_900,
      },
    });
  });

  it.each([
    ['An open red ring goes in between, through both green rings.', 2, 'through between'],
    ['Put a red ring through all four rings and fold them back.', 4, 'fold back'],
    ['Slide another red ring into the eye.', 1, 'as it falls'],
  ])('%s', (sentence, passed, lie) => {
    const [one] = placements(REPEAT, sentence);
    expect(one?.placement.passes.length).toBe(passed);
    expect(one?.placement.lie).toBe(lie);
    expect(one?.unsure).toEqual(['side']);
  });

  it('follow the path of the one before, and the ring that was spoken of', () => {
    const [, second] = placements(
      REPEAT,
      'Put a red ring through all three rings.',
      'Add another red ring on the same path.',
    );
    expect(second?.placement.passes.length).toBe(3);
    const [one] = placements(
      CLASP,
      'You need one small green ring.',
      'Open it, and go through the last pair.',
    );
    expect(one).toMatchObject({ part: 'finishing', placement: { opened: 'small' } });
  });

  it('lay out closed rings at the start', () => {
    const [one] = placements(SETUP, 'Thread two closed red rings on the tag.');
    expect(one).toMatchObject({
      part: 'start',
      placement: { opened: null, carries: [{ ringKind: 'large', count: 2 }], passes: [] },
    });
  });

  it('are not proposed where nothing is made, nor where the lesson has the step', () => {
    const sentence = 'Put a red ring through both rings.';
    expect(placements(MATERIALS, sentence)).toEqual([]);
    const have = {
      ...BRACELET,
      repeat: BRACELET.repeat.map((one) => ({ ...one, atMs: REPEAT + 2_000 })),
    };
    const cues = told(sentence).map((cue) => ({ ...cue, startMs: REPEAT, endMs: REPEAT + 3_000 }));
    expect(spokenPlacements(cues, have)).toEqual([]);
    expect(spokenPlacements(cues, BRACELET)).toHaveLength(1);
  });

  it('are not proposed where the same is only told once more', () => {
    expect(placements(REPEAT, 'And again, pick up one closed green ring with an open red ring.')).toEqual([]);
  });

  it('are not made of other sentences', () => {
    expect(
      placements(
        REPEAT,
        'Look at it, the new ring should lie on top of the one before.',
        'Roll the chain between your fingers.',
        'Pull both pairs taut.',
        'And again.',
      ),
    ).toEqual([]);
  });
});
