/** A whole lesson for tests, round the worked example A of the making; every word of it is invented. */
import { type Content, emptyContent } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { byzantineMaking } from './a-making.ts';

/** Complete: nothing blocks its publication. */
export function aContent(over: Partial<Content> = {}): Content {
  const making = byzantineMaking();
  const spoken = (part: 'start' | 'repeat' | 'finishing', fromMs: number): Content['repeat'] =>
    making[part].map((placement, index) => ({
      ...placement,
      id: `${part}-${index + 1}`,
      sentence: `Do ${part} ${index + 1} with the left hand.`,
      atMs: fromMs + index * 4_000,
    }));
  return {
    ...emptyContent('Byzantine bracelet', 'en', 'EUR'),
    ...making,
    start: spoken('start', 15_000),
    repeat: spoken('repeat', 30_000),
    finishing: spoken('finishing', 60_000),
    summary: 'A square chain in copper and aluminium.',
    weave: 'byzantine',
    prepareMinutes: 20,
    makeMinutes: 90,
    licence: 'Weave and sell what you make.',
    chapters: [
      { id: 'ch-1', kind: 'opening', title: 'Welcome', startMs: 0 },
      { id: 'ch-2', kind: 'repeat unit', title: 'The repeat unit', startMs: 30_000 },
      { id: 'ch-3', kind: 'finishing', title: 'The end', startMs: 60_000 },
    ],
    sizes: [
      { id: 's', name: 'small', bodyMm: 150 },
      { id: 'm', name: 'medium', bodyMm: 165 },
      { id: 'l', name: 'large', bodyMm: 180 },
    ],
    cautions: [{ id: 'ca-1', of: 'small-parts', text: '' }],
    ...over,
  };
}

export const aTranscript: readonly Cue[] = [
  { id: 'c1', startMs: 0, endMs: 4_000, text: 'Welcome to the bench.', settings: '' },
  { id: 'c2', startMs: 31_000, endMs: 36_000, text: 'Take an eighteen gauge ring.', settings: '' },
];
