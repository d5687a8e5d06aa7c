/**
 * The demo lesson: what its teacher wrote, first and after the correction.
 * Workshop, teacher, sizes, prices and addresses are invented (the addresses
 * end in `.example`, which RFC 2606 keeps free for this). Times come from the
 * narration, so that they stay true when the recording is made anew.
 */
import type { Content, Placement } from '#lib/lesson/content.ts';
import { emptyContent } from '#lib/lesson/content.ts';

/** When each piece of the narration is spoken: `[startMs, endMs)` by its id. */
export type Moments = Readonly<Record<string, readonly [startMs: number, endMs: number]>>;

export const DEMO_TITLE = 'Two-colour byzantine bracelet';

/** A moment of the narration; asking for a piece that is not spoken is a slip of ours. */
function spanOf(moments: Moments, id: string): readonly [number, number] {
  const span = moments[id];
  if (!span) throw new Error(`nobody says “${id}” in the demo's narration`);
  return span;
}

/** The lesson as it is first published, with the mistake that the recording makes. */
export function demoContent(moments: Moments): Content {
  const startOf = (id: string) => spanOf(moments, id)[0];
  // A step's picture is taken where its movement has ended, just before the voice falls silent.
  const shownAt = (id: string) => spanOf(moments, id)[1] - 100;
  const chapter = (kind: Content['chapters'][number]['kind'], title: string, startMs: number) => ({
    id: `chapter-${kind.replace(' ', '-')}`,
    kind,
    title,
    startMs,
  });
  const placement = (id: string, over: Omit<Placement, 'id' | 'pictureText'>): Placement => ({
    ...over,
    id,
    pictureText: '',
  });
  /** The rings of a row, from the front; 1 is the newest. */
  const passing =
    (from: 'front' | 'back') =>
    (row: string, ...nths: readonly number[]): Placement['passes'] =>
      nths.map((nth) => ({ from, ring: { row, nth, from: 'newest' } }));
  const front = passing('front');
  const back = passing('back');

  return {
    ...emptyContent(DEMO_TITLE, 'en', 'GBP'),
    summary:
      'A supple, square chain of copper and blue rings, closed with a lobster clasp. Six rings make one repeat; once the fold is understood, the rest is the same movement again and again.',
    weave: 'Byzantine',
    difficulty: 'some practice',
    prepareMinutes: 25,
    makeMinutes: 95,
    licence: 'CC0 1.0: made up to show Benchleaf, free to use in any way',
    chapters: [
      chapter('opening', 'What we make', 0),
      chapter('materials', 'Rings and tools', startOf('three-kinds')),
      chapter('terms', 'Pair, eye, fold back', startOf('three-words')),
      chapter('setup', 'Prepare the rings and the first pair', startOf('close-open')),
      chapter('repeat unit', 'The repeat unit', startOf('six-rings')),
      chapter('finishing', 'Where the chain ends', startOf('ends-with')),
      chapter('clasp', 'The clasp', startOf('one-small')),
      chapter('closing', 'Look it over', startOf('seams')),
    ],
    ringKinds: [
      {
        id: 'large-copper',
        name: 'large copper',
        innerDiameter: { stated: '11/64 in', mm: 4.3656 },
        measuredInnerMm: null,
        wire: { stated: '18 SWG', mm: 1.2192 },
        metal: 'copper',
        metalName: '',
        densityGPerCm3: null,
        colour: 'copper',
        colourCode: '#b5622e',
        weighedHundredG: null,
        offer: {
          packs: [{ by: 'count', count: 50, priceMinor: 320 }],
          link: 'https://lower-withy.example/rings/large-copper',
        },
      },
      {
        id: 'large-blue',
        name: 'large blue',
        innerDiameter: { stated: '11/64 in', mm: 4.3656 },
        measuredInnerMm: null,
        wire: { stated: '18 SWG', mm: 1.2192 },
        metal: 'aluminium-5356',
        metalName: '',
        densityGPerCm3: null,
        colour: 'anodised blue',
        colourCode: '#2f66b3',
        weighedHundredG: null,
        offer: {
          packs: [{ by: 'count', count: 50, priceMinor: 410 }],
          link: 'https://lower-withy.example/rings/large-blue',
        },
      },
      {
        id: 'small-copper',
        name: 'small copper',
        innerDiameter: { stated: '1/8 in', mm: 3.175 },
        measuredInnerMm: null,
        wire: { stated: '20 SWG', mm: 0.9144 },
        metal: 'copper',
        metalName: '',
        densityGPerCm3: null,
        colour: 'copper',
        colourCode: '#b5622e',
        weighedHundredG: null,
        offer: {
          packs: [{ by: 'count', count: 10, priceMinor: 95 }],
          link: 'https://lower-withy.example/rings/small-copper',
        },
      },
    ],
    start: [
      placement('first-pair', {
        opened: null,
        carries: [{ ringKind: 'large-copper', count: 2, row: 'lock' }],
        passes: [],
        lie: 'as it falls',
        sentence:
          'Thread two closed copper rings on the twist-tie, side by side, and twist it shut. They are the first pair; the twist-tie is your handle.',
        atMs: shownAt('start-pair'),
      }),
    ],
    repeat: [
      placement('inner-1', {
        opened: 'large-copper',
        row: 'inner',
        // The blue pair hangs beyond the ring that carries it: one movement through both pairs enters it from its back.
        carries: [{ ringKind: 'large-blue', count: 2, row: 'blue', from: 'back' }],
        passes: front('lock', 2, 1),
        lie: 'as it falls',
        sentence:
          'Pick up two closed blue rings on an open copper ring, go through both rings of the last copper pair, and close it.',
        atMs: shownAt('first-copper'),
      }),
      placement('inner-2', {
        opened: 'large-copper',
        row: 'inner',
        carries: [],
        passes: [...front('lock', 2, 1), ...back('blue', 2, 1)],
        lie: 'fold back',
        lays: [
          { row: 'blue', nth: 2, from: 'newest' },
          { row: 'blue', nth: 1, from: 'newest' },
        ],
        sentence:
          'Take a second open copper ring along the same path, through both copper and both blue rings, and close it.',
        atMs: shownAt('second-copper'),
      }),
      placement('lock-1', {
        opened: 'large-copper',
        row: 'lock',
        carries: [],
        passes: front('blue', 2, 1),
        lie: 'through between',
        lays: [
          { row: 'inner', nth: 2, from: 'newest' },
          { row: 'inner', nth: 1, from: 'newest' },
        ],
        sentence: 'Put an open copper ring in between, through both blue rings, and close it.',
        atMs: shownAt('third-copper'),
      }),
      placement('lock-2', {
        opened: 'large-copper',
        row: 'lock',
        carries: [],
        passes: front('blue', 2, 1),
        lie: 'through between',
        lays: [
          { row: 'inner', nth: 2, from: 'newest' },
          { row: 'inner', nth: 1, from: 'newest' },
        ],
        sentence: 'Add a fourth copper ring beside it on the same path. That is one repeat.',
        atMs: shownAt('fourth-copper'),
      }),
    ],
    finishing: [
      placement('clasp-ring', {
        opened: 'small-copper',
        row: 'clasp',
        carries: [],
        passes: front('lock', 2, 1),
        lie: 'as it falls',
        sentence:
          'Open a small ring, go through both rings of the last copper pair and through the loop of the clasp, and close it.',
        atMs: shownAt('through-clasp'),
      }),
    ],
    steps: [
      {
        id: 'open-close',
        sentence:
          'Close all blue rings and two large copper ones, and open the other copper rings. Twist the ends sideways past each other; never pull them apart.',
        atMs: shownAt('medium-count'),
        pictureText:
          'The large rings of the medium size laid out: forty-four closed blue and two closed copper rings at the left, eighty-eight open copper rings at the right.',
      },
      {
        id: 'fold',
        sentence: 'Fold the two blue rings back along the chain, one to each side.',
        atMs: shownAt('fold-back'),
        pictureText:
          'The two blue rings lie back over the chain, one on each side, and the copper pair that holds them now shows at the end.',
      },
      {
        id: 'part-pair',
        sentence: 'Part the two copper rings and look between them: there are the eyes of the blue pair.',
        atMs: shownAt('part'),
        pictureText: 'An arrow points between the two parted copper rings, where the blue rings overlap.',
      },
      {
        id: 'last-pair',
        sentence:
          'When the length is right, the chain ends with a copper pair, like the start. Roll it between your fingers: it must not twist.',
        atMs: shownAt('ends-with'),
        pictureText: 'Three finished repeats; the chain has a copper pair at both ends.',
      },
      {
        id: 'untie',
        sentence: 'Untie the first pair.',
        atMs: spanOf(moments, 'untie')[1] + 400,
        pictureText:
          'Both ends of the chain face each other, each with a copper pair; the twist-tie is gone.',
      },
    ],
    // Rigid rings of this size cannot give more than 7.33 mm a repeat.
    sample: {
      perRepeatMm: 7.3,
      endsMm: 6,
      claspMm: 18,
      measured: 'pulled taut',
      pieces: [
        { repeats: 5, mm: 42.5 },
        { repeats: 15, mm: 115.5 },
      ],
      runs: [],
      readingMm: 0.5,
      note: '',
    },
    kitRules: {
      easeMm: 25,
      thicknessMm: null,
      rounding: 'nearest',
      sparePercent: 10,
      spareBy: 'line',
      spareLeast: 0,
    },
    sizes: [
      { id: 'small', name: 'Small', bodyMm: 145 },
      { id: 'medium', name: 'Medium', bodyMm: 160 },
      { id: 'large', name: 'Large', bodyMm: 175 },
    ],
    materials: [
      {
        id: 'clasp',
        kind: 'finding',
        name: 'lobster clasp, copper, 12 mm',
        quantityMilli: 1000,
        unit: 'piece',
        per: 'lesson',
        massG: 1.2,
        offer: {
          packs: [{ by: 'count', count: 1, priceMinor: 165 }],
          link: 'https://lower-withy.example/findings/lobster-12',
        },
        note: '',
      },
      {
        id: 'twist-tie',
        kind: 'consumable',
        name: 'twist-tie',
        quantityMilli: 1000,
        unit: 'piece',
        per: 'lesson',
        massG: null,
        offer: null,
        note: 'A handle for the first pair. A bent paper clip does as well.',
      },
      {
        id: 'pliers',
        kind: 'tool',
        name: 'pliers with smooth flat jaws',
        quantityMilli: 2000,
        unit: 'piece',
        per: 'lesson',
        massG: null,
        offer: null,
        note: 'Teeth mark the rings. Tape on the jaws spares the blue ones.',
      },
      {
        id: 'ruler',
        kind: 'tool',
        name: 'ruler',
        quantityMilli: 1000,
        unit: 'piece',
        per: 'lesson',
        massG: null,
        offer: null,
        note: '',
      },
      {
        id: 'glasses',
        kind: 'safety',
        name: 'safety glasses',
        quantityMilli: 1000,
        unit: 'piece',
        per: 'lesson',
        massG: null,
        offer: null,
        note: 'Only if you cut your own rings.',
      },
    ],
    cautions: ['flying-ends', 'small-parts', 'strain', 'aluminium-rub-off', 'green-skin'].map((of) => ({
      id: `caution-${of}`,
      of,
      text: '',
    })),
    links: [
      {
        id: 'kit-shelf',
        label: 'Kits for this bracelet at Lower Withy',
        address: 'https://lower-withy.example/kits/two-colour-byzantine',
      },
    ],
  };
}

/** The lesson as it is published again: the mistake corrected, and stated for all who followed it. */
export function correctedDemoContent(moments: Moments, published: Content): Content {
  const [startMs] = spanOf(moments, 'one-small');
  const [, endMs] = spanOf(moments, 'catches');
  const catchRing: Placement = {
    id: 'catch-ring',
    opened: 'small-copper',
    row: 'clasp',
    carries: [],
    passes: [
      { from: 'front', ring: { row: 'lock', nth: 1, from: 'first' } },
      { from: 'front', ring: { row: 'lock', nth: 2, from: 'first' } },
    ],
    lie: 'as it falls',
    sentence:
      'Open a second small ring, go through both rings of the first pair, at the other end, and close it. The clasp catches this ring.',
    atMs: null,
    pictureText: '',
  };
  return {
    ...published,
    finishing: [...published.finishing, catchRing],
    // The recording never shows this ring; its step has no picture on purpose.
    dismissed: [...published.dismissed, `moment-missing/${catchRing.id}`],
    corrections: [
      ...published.corrections,
      {
        id: 'second-small-ring',
        kind: 'said wrongly',
        startMs,
        endMs,
        wrong: 'I said that one small ring is enough and that the clasp catches the first pair itself.',
        right:
          'Take two small rings. The second goes through both rings of the first pair, and the clasp catches that ring: two wires side by side hold the clasp open.',
        affects: 'Everyone who made up a kit before this correction: add one small copper ring.',
        kitsChange: true,
        of: null,
        effects: [],
        revision: null,
      },
    ],
  };
}
