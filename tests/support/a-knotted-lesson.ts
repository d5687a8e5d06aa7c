/** A whole lesson without a ring: cord by length, beads for each repeat, knots as steps. Every word of it is invented. */
import { type Content, emptyContent } from '#lib/lesson/content.ts';

export function knottedContent(): Content {
  const step = (id: string, sentence: string, atMs: number | null) => ({
    id,
    sentence,
    atMs,
    pictureText: '',
  });
  const material = { massG: null, offer: null, note: '' };
  return {
    ...emptyContent('Knotted bracelet with beads', 'en', 'EUR'),
    summary: 'Two cords and a row of beads, tied between square knots.',
    weave: 'square knot',
    difficulty: 'first piece',
    prepareMinutes: 10,
    makeMinutes: 60,
    licence: 'Tie and sell what you make.',
    kitRules: { ...emptyContent('', 'en', 'EUR').kitRules, easeMm: 15 },
    sample: {
      ...{ perRepeatMm: 10, endsMm: 40, claspMm: 0, measured: 'at rest', note: '' },
      ...{ readingMm: null, pieces: [], runs: [] },
    },
    chapters: [
      { id: 'ch-1', kind: 'opening', title: 'What we tie', startMs: 0 },
      { id: 'ch-2', kind: 'setup', title: 'Lay the cord', startMs: 10_000 },
      { id: 'ch-3', kind: 'repeat unit', title: 'Bead and knot', startMs: 30_000 },
      { id: 'ch-4', kind: 'finishing', title: 'Tie it off', startMs: 60_000 },
      { id: 'ch-5', kind: 'closing', title: 'Trim', startMs: 75_000 },
    ],
    steps: [
      step('fold-cord', 'Fold the cord in half over a pin.', 12_000),
      step('thread', 'Slide two beads on and push them up.', 34_000),
      step('knot', 'Tie a square knot below them.', 44_000),
      step('tie', 'Tie both ends together.', 62_000),
      step('trim', 'Trim the ends.', 77_000),
    ],
    sizes: [{ id: 'm', name: 'medium', bodyMm: 165 }],
    materials: [
      {
        ...material,
        id: 'bead',
        kind: 'bead',
        name: 'turquoise bead',
        quantityMilli: 2_000,
        unit: 'piece',
        per: 'repeat',
      },
      {
        ...material,
        id: 'cord',
        kind: 'cord',
        name: 'waxed cord',
        quantityMilli: 3_000,
        unit: 'm',
        per: 'length',
      },
      {
        ...material,
        id: 'scissors',
        kind: 'tool',
        name: 'scissors',
        quantityMilli: 1_000,
        unit: 'piece',
        per: 'lesson',
      },
    ],
  };
}
