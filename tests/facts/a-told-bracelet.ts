/** An invented bracelet lesson whose kit and transcript agree, to be bent where a test needs it. */
import type { Content } from '#lib/lesson/content.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';

/** One sentence a cue, three seconds each. */
export const told = (...sentences: readonly string[]): readonly Cue[] =>
  sentences.map((text, at) => ({
    id: `cue-${at}`,
    startMs: at * 4_000,
    endMs: at * 4_000 + 3_000,
    text,
    settings: '',
  }));

const kind = (id: string, colour: string, wire: string, wireMm: number): Content['ringKinds'][number] => ({
  id,
  name: `${id} ${colour}`,
  innerDiameter: { stated: '4 mm', mm: 4 },
  measuredInnerMm: null,
  wire: { stated: wire, mm: wireMm },
  metal: 'copper',
  metalName: '',
  densityGPerCm3: null,
  colour,
  colourCode: '#b5622e',
  weighedHundredG: null,
  offer: null,
});

/** Each repeat: one opened large red that carries one closed small green; ten repeats for the one size. */
export const BRACELET: Content = {
  ...emptyContent('A bracelet', 'en', 'EUR'),
  ringKinds: [kind('large', 'red', '18 SWG', 1.2192), kind('small', 'green', '1 mm', 1)],
  repeat: [
    {
      id: 'one',
      opened: 'large',
      carries: [{ ringKind: 'small', count: 1 }],
      passes: [{ from: 'front' }],
      lie: 'as it falls',
      sentence: 'Go on.',
      atMs: null,
      pictureText: '',
    },
  ],
  sample: {
    perRepeatMm: 10,
    endsMm: 0,
    claspMm: 0,
    measured: 'pulled taut',
    pieces: [],
    runs: [],
    readingMm: null,
    note: '',
  },
  kitRules: {
    easeMm: 0,
    thicknessMm: null,
    rounding: 'nearest',
    sparePercent: 10,
    spareBy: 'line',
    spareLeast: 0,
  },
  sizes: [{ id: 'm', name: 'Medium', bodyMm: 100 }],
  chapters: [
    { id: 'a', kind: 'materials', title: '', startMs: 0 },
    { id: 'b', kind: 'setup', title: '', startMs: 100_000 },
    { id: 'c', kind: 'repeat unit', title: '', startMs: 200_000 },
    { id: 'd', kind: 'clasp', title: '', startMs: 300_000 },
  ],
};
