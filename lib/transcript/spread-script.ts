/**
 * A script without times, spread over the speech that was found in the sound:
 * by the length of its pieces, since nothing here hears words. Such times are
 * a rough draft (the median is off by about ten seconds on recordings of five
 * to fifteen minutes) and are marked as approximate; a start that somebody
 * heard every few sentences brings it to one or two.
 */
import type { Span } from '#lib/time/time.ts';
import type { Cue } from './cue.ts';
import { type CueEdit, withTiming } from './edit-cues.ts';
import { readingMs } from './found-cue.ts';

/** What lies between pauses, in order; the whole recording where there is no pause. */
export function speechBetween(pauses: readonly Span[], durationMs: number): readonly Span[] {
  const speech: Span[] = [];
  let from = 0;
  for (const pause of [...pauses].sort((a, b) => a.startMs - b.startMs)) {
    if (pause.startMs > from) speech.push({ startMs: from, endMs: Math.min(pause.startMs, durationMs) });
    from = Math.max(from, pause.endMs);
  }
  if (from < durationMs) speech.push({ startMs: from, endMs: durationMs });
  return speech.filter(({ startMs, endMs }) => endMs > startMs);
}

/** How long a text takes to say, without a unit: its letters, and a little for each word. */
const lengthOf = (text: string): number => text.length + text.split(/\s+/).length;

/**
 * Spreads texts over stretches of speech, each in proportion to its length.
 * A text that begins where a stretch ends begins with the next one. Where there
 * is no speech, they take the time in which they are read, from `fromMs`.
 */
export function spreadOver(
  texts: readonly string[],
  speech: readonly Span[],
  fromMs: number,
): readonly Span[] {
  const reading = texts.reduce((sum, text) => sum + readingMs(text), 0);
  const stretches = speech.length > 0 ? speech : [{ startMs: fromMs, endMs: fromMs + reading }];
  const spoken = stretches.reduce((sum, { startMs, endMs }) => sum + endMs - startMs, 0);
  const total = texts.reduce((sum, text) => sum + lengthOf(text), 0);
  let at = 0;
  let passed = 0;
  /** The moment at which so much speech has passed. */
  const momentAt = (share: number, side: 'start' | 'end'): number => {
    const isBehind = (one: Span): boolean => {
      const end = passed + one.endMs - one.startMs;
      return side === 'start' ? share >= end : share > end;
    };
    for (let one = stretches[at]; one && at + 1 < stretches.length && isBehind(one); one = stretches[at]) {
      passed += one.endMs - one.startMs;
      at += 1;
    }
    const here = stretches[at] ?? { startMs: fromMs, endMs: fromMs };
    return Math.round(Math.min(here.startMs + share - passed, here.endMs));
  };
  let said = 0;
  let latest = 0;
  return texts.map((text) => {
    const startMs = Math.max(momentAt((spoken * said) / total, 'start'), latest);
    said += lengthOf(text);
    const endMs = Math.max(momentAt((spoken * said) / total, 'end'), startMs + 1);
    latest = startMs + 1;
    return { startMs, endMs };
  });
}

/** Speech as far as it lies in a span; the span itself where none does. */
function within(speech: readonly Span[], fromMs: number, toMs: number): readonly Span[] {
  const inside = speech
    .map(({ startMs, endMs }) => ({ startMs: Math.max(startMs, fromMs), endMs: Math.min(endMs, toMs) }))
    .filter(({ startMs, endMs }) => endMs > startMs);
  return inside.length > 0 || toMs <= fromMs ? inside : [{ startMs: fromMs, endMs: toMs }];
}

/**
 * Spreads anew what is approximate: between starts that were heard and cues
 * whose times are known, which stay. `cues` are in order of time.
 */
export function spreadAgain(cues: readonly Cue[], speech: readonly Span[]): CueEdit {
  const lastMs = Math.max(speech.at(-1)?.endMs ?? 0, cues.at(-1)?.endMs ?? 0);
  const put: Cue[] = [];
  let at = 0;
  let knownMs = 0;
  while (at < cues.length) {
    const first = cues[at];
    if (!first) break;
    if (first.timing === undefined) {
      knownMs = first.endMs;
      at += 1;
      continue;
    }
    const isHeard = first.timing === 'start heard';
    const fromMs = isHeard ? first.startMs : knownMs;
    let end = at + 1;
    while (cues[end]?.timing === 'approximate') end += 1;
    const toMs = cues[end]?.startMs ?? Math.max(lastMs, fromMs);
    const some = cues.slice(at, end);
    const spans = spreadOver(
      some.map(({ text }) => text),
      within(speech, fromMs, toMs),
      fromMs,
    );
    some.forEach((cue, index) => {
      const span = spans[index];
      if (!span) return;
      // What was heard begins where it was heard, be that in a pause.
      const startMs = isHeard && index === 0 ? fromMs : span.startMs;
      const endMs = Math.max(span.endMs, startMs + 1);
      if (startMs !== cue.startMs || endMs !== cue.endMs) put.push({ ...cue, startMs, endMs });
    });
    knownMs = toMs;
    at = end;
  }
  return { put, remove: [] };
}

/**
 * Sets the start of a cue to where it was heard, and spreads what is
 * approximate around it. A start heard before that contradicts this one (a
 * later cue heard earlier) becomes approximate again: the last word counts.
 */
export function hearStart(cues: readonly Cue[], id: string, atMs: number, speech: readonly Span[]): CueEdit {
  const index = cues.findIndex((cue) => cue.id === id);
  const heard = cues[index];
  if (!heard) return { put: [], remove: [] };
  const contradicts = (cue: Cue, at: number): boolean =>
    cue.timing === 'start heard' && (at < index ? cue.startMs >= atMs : cue.startMs <= atMs);
  const marked = cues.map((cue, at) => {
    if (at === index) {
      const endMs = Math.max(cue.endMs, atMs + 1);
      return { ...withTiming(cue, 'start heard'), startMs: atMs, endMs };
    }
    return contradicts(cue, at) ? withTiming(cue, 'approximate') : cue;
  });
  const spread = new Map(spreadAgain(marked, speech).put.map((cue) => [cue.id, cue]));
  const put = marked.map((cue) => spread.get(cue.id) ?? cue).filter((cue, at) => cue !== cues[at]);
  return { put, remove: [] };
}

/** Takes approximate times as they are: what was marked is no longer. */
export const takeTimes = (cues: readonly Cue[]): CueEdit => ({
  put: cues.filter((cue) => cue.timing !== undefined).map((cue) => withTiming(cue, undefined)),
  remove: [],
});
