'use client';
/** Suggestions for the transcript as it stands, found by a worker shortly after each change. */
import { useEffect, useMemo, useRef, useState } from 'react';
import type { WorkshopGlossary } from '#lib/bench/change-glossary.ts';
import { standing, undecided } from '#lib/glossary/decide.ts';
import type { NumberToHear } from '#lib/glossary/number-traps.ts';
import type { Suggestion } from '#lib/glossary/suggestion.ts';
import type { Content } from '#lib/lesson/content.ts';
import { countSequence } from '#lib/weave/sequence.ts';
import { useDraftPart } from '../../draft.client.tsx';
import type { MisheardAsked, MisheardFound } from './misheard.worker.ts';

/** How long after the last change the search runs again, ms. */
const SEARCH_AFTER_MS = 500;

export type Searching = 'searching' | 'ready' | 'failed';

export interface Misheard {
  readonly state: Searching;
  /** Not decided about yet, in order of time. */
  readonly suggestions: readonly Suggestion[];
  readonly toHear: readonly NumberToHear[];
}

const NOTHING: Omit<MisheardFound, 'run'> = { suggestions: [], toHear: [] };

export function useMisheard(glossary: WorkshopGlossary): Misheard {
  const cues = useDraftPart((state) => state.cues);
  const dismissed = useDraftPart((state) => state.content.dismissed);
  const content = useDraftPart((state) => state.content);
  const known = useMemo(() => knownNumbers(content), [content]);
  const worker = useRef<Worker | null>(null);
  const run = useRef(0);
  const [state, setState] = useState<Searching>('searching');
  const [found, setFound] = useState(NOTHING);

  useEffect(() => {
    const started = new Worker(new URL('./misheard.worker.ts', import.meta.url), { type: 'module' });
    worker.current = started;
    started.addEventListener('message', ({ data }: MessageEvent<MisheardFound>) => {
      if (data.run !== run.current) return;
      setFound(data);
      setState('ready');
    });
    started.addEventListener('error', () => setState('failed'));
    return () => {
      started.terminate();
      worker.current = null;
    };
  }, []);

  useEffect(() => {
    const ask = () => {
      run.current += 1;
      const asked: MisheardAsked = {
        run: run.current,
        cues: cues.map(({ id, text, startMs, endMs }) => ({ id, text, startMs, endMs })),
        terms: glossary.terms,
        decisions: glossary.decisions,
        known,
      };
      worker.current?.postMessage(asked);
    };
    const timer = setTimeout(ask, run.current === 0 ? 0 : SEARCH_AFTER_MS);
    return () => clearTimeout(timer);
  }, [cues, glossary, known]);

  const suggestions = useMemo(
    // What was taken is gone at once, though the search is still at work on the text with it.
    () => undecided(standing(found.suggestions, cues), dismissed, glossary.decisions),
    [found, cues, dismissed, glossary.decisions],
  );
  const toHear = useMemo(
    () => found.toHear.filter((number) => !dismissed.includes(toHearKey(number))),
    [found, dismissed],
  );
  return { state, suggestions, toHear };
}

export const toHearKey = (number: NumberToHear): string =>
  `number/${number.cueId}/${number.heard.toLowerCase()}`.slice(0, 200);

/** Numbers that the lesson states in writing: gauges, counts of the sequence, repeats of the sizes. */
function knownNumbers(content: Content): readonly number[] {
  const gauges = content.ringKinds.flatMap(({ wire }) => {
    const stated = /^(\d+) (?:SWG|AWG)$/.exec(wire.stated);
    return stated ? [Number(stated[1])] : [];
  });
  const counts = [...countSequence(content).values()].flatMap(({ start, repeat, finishing }) =>
    [start, repeat, finishing].flatMap(({ opened, closed }) => [opened, closed, opened + closed]),
  );
  return [...new Set([...gauges, ...counts])].filter((n) => n > 0);
}
