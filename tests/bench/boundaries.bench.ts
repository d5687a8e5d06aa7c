/**
 * Chapter boundaries for every number of chapters in an invented three-hour
 * transcript (2,200 sentences, 24,000 words), beside the plainest search for
 * one number that gives the same kind of answer: every stretch between two of
 * the same 700 places, its words counted anew each time. Prints both times and their ratio;
 * the aim is under 100 ms. Run it with `node tests/bench/boundaries.bench.ts`.
 */
import { findBoundaries, type Unit } from '#lib/chapters/boundaries.ts';
import { contentStems, wordsOf } from '#lib/chapters/content-words.ts';

const SENTENCES = 2_200;
const TOPICS = 30;
const RUNS = 9;

const syllables = 'ba ce di fo gu ha je ki lo mu na pe ri so tu va we xi yo zu'.split(' ');
const common =
  'and then we take the next one through here so that it goes over the other with a little more'.split(' ');
/** The word with this number: three syllables. */
const wordAt = (at: number): string =>
  [at % 20, Math.floor(at / 20) % 20, Math.floor(at / 400) % 20].map((part) => syllables[part]).join('');
const units: readonly Unit[] = Array.from({ length: SENTENCES }, (_, index) => {
  const topic = Math.floor((index * TOPICS) / SENTENCES);
  const words = Array.from({ length: 11 }, (_unused, place) => {
    const pick = (index * 31 + place * 17) % 97;
    return place % 2 === 0
      ? (common[pick % common.length] ?? '')
      : wordAt(pick % 3 === 0 ? pick * 11 : topic * 40 + (pick % 40));
  });
  return { text: `${words.join(' ')}.`, startMs: index * 4_900, endMs: index * 4_900 + 4_700 };
});

/** Counts the words of every stretch from nothing: what a first try would do. */
function plainSearch(): number {
  const stems = units.map((unit) => contentStems(wordsOf(unit.text)));
  const group = Math.ceil(SENTENCES / 700);
  const places = Array.from({ length: Math.ceil(SENTENCES / group) }, (_, index) => index * group);
  let least = Number.POSITIVE_INFINITY;
  // A tenth of the rows are measured and counted tenfold: the whole takes a minute.
  for (let from = 0; from < places.length; from += 10) {
    for (let to = from + 1; to < places.length; to++) {
      const counts = new Map<string, number>();
      let said = 0;
      for (const unit of stems.slice(places[from], places[to]))
        for (const stem of unit) {
          counts.set(stem, (counts.get(stem) ?? 0) + 1);
          said += 1;
        }
      let nats = 0;
      for (const count of counts.values()) nats -= count * Math.log(count / said);
      least = Math.min(least, nats);
    }
  }
  return least;
}

/** Time of the processor, ms: other work on the machine does not count. */
const timed = (run: () => unknown): number => {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1_000;
};
const times = Array.from({ length: RUNS }, () => timed(() => findBoundaries(units))).sort((a, b) => a - b);
const found = findBoundaries(units);
if (found.startsFor(TOPICS).length !== TOPICS) throw new Error('not the number of pieces that was asked for');
const ours = times[Math.floor(RUNS / 2)] ?? Number.NaN;
const plain = timed(plainSearch) * 10;
console.log(`${SENTENCES} sentences, three hours; ${found.suggested} chapters suggested`);
console.log(
  `ours, every number of chapters   ${ours.toFixed(0).padStart(7)} ms of processor time (median of ${RUNS})`,
);
console.log(
  `every stretch counted anew       ${plain.toFixed(0).padStart(7)} ms   ${(plain / ours).toFixed(0)} x ours`,
);
