'use client';
/**
 * Chapters that the transcript itself suggests, to be accepted, moved or
 * refused one by one, or accepted all at once. Nothing is set before that.
 */
import { useDeferredValue, useEffect, useId, useMemo, useRef, useState } from 'react';
import type { Habits } from '#lib/chapters/openers.ts';
import { type ProposedChapter, proposeChapters } from '#lib/chapters/propose-chapters.ts';
import type { Span } from '#lib/time/time.ts';
import { useDraftPart, useDraftStore } from '../draft.client.tsx';
import { acceptChapters, forgetRefusals, refuseChapter, refusedCues } from './accept-chapters.ts';
import { ProposedChapterRow } from './proposed-chapter-row.client.tsx';
import styles from './proposed-chapters.module.css';

export interface ProposedChaptersProps {
  readonly pauses: readonly Span[];
  readonly habits: Habits;
  /** Plays from a moment and shows its cue. */
  readonly listen: (atMs: number, cueId: string) => void;
  readonly close: () => void;
}

/** What the teacher has changed in a proposal before she accepts it. */
type Edits = Partial<Pick<ProposedChapter, 'kind' | 'title' | 'startMs'>>;

/** The slider goes a good way beyond what is suggested, and no further: a number is chosen by looking. */
const sliderMost = (suggested: number, most: number): number => Math.min(most, suggested * 2 + 4);

export function ProposedChapters({ pauses, habits, listen, close }: ProposedChaptersProps) {
  const id = useId();
  const store = useDraftStore();
  // Words that are being typed in the transcript need not wait for proposals to follow.
  const cues = useDeferredValue(useDraftPart((state) => state.cues));
  const chapters = useDraftPart((state) => state.content.chapters);
  const dismissed = useDraftPart((state) => state.content.dismissed);
  const [edits, setEdits] = useState<ReadonlyMap<string, Edits>>(new Map());
  const [asked, setAsked] = useState<number | null>(null);
  const [told, setTold] = useState('');
  const list = useRef<HTMLOListElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const refused = useMemo(() => refusedCues(dismissed), [dismissed]);

  useEffect(() => heading.current?.focus(), []);

  const proposals = useMemo(
    () => proposeChapters({ cues, pauses, chapters, refused, habits }),
    [cues, pauses, chapters, refused, habits],
  );
  const count = Math.min(Math.max(asked ?? proposals.suggested, proposals.fewest), proposals.most);
  const proposed = useMemo(
    () => proposals.forCount(count).map((one) => ({ ...one, ...edits.get(one.cueId) })),
    [proposals, count, edits],
  );

  // The keyboard goes on to the proposal that takes the place of the decided one.
  const wanted = useRef<number | null>(null);
  useEffect(() => {
    if (wanted.current === null) return;
    const rows = list.current?.querySelectorAll<HTMLElement>('[data-accept]') ?? [];
    const to = rows[Math.min(wanted.current, rows.length - 1)] ?? heading.current;
    wanted.current = null;
    to?.focus();
  });

  const accept = (some: readonly ProposedChapter[], index: number) => {
    setAsked(count);
    acceptChapters(store, some);
    const left = proposed.length - some.length;
    setTold(`${some.length === 1 ? 'Accepted.' : `${some.length} chapters accepted.`} ${leftWords(left)}`);
    wanted.current = index;
  };
  const refuse = (one: ProposedChapter, index: number) => {
    // One less is wanted, or another place would be offered in its stead.
    setAsked(Math.max(proposals.fewest, count - 1));
    refuseChapter(store, one.cueId);
    setTold(`Refused. ${leftWords(proposed.length - 1)}`);
    wanted.current = index;
  };

  return (
    <section className={styles.panel} aria-labelledby={`${id}-heading`}>
      <div className={styles.top}>
        <h3 id={`${id}-heading`} ref={heading} tabIndex={-1}>
          Proposed chapters
        </h3>
        <button type="button" className="bare" onClick={close}>
          Close<span className="unseen"> proposed chapters</span>
        </button>
      </div>
      <p className="hint">
        Found by what is said, how sentences open and where it is quiet. Chapters that you have set stay as
        they are.
      </p>
      {proposals.most > proposals.fewest && (
        <div className={styles.slider}>
          <label htmlFor={`${id}-count`}>Chapters in all</label>
          <input
            id={`${id}-count`}
            type="range"
            min={proposals.fewest}
            max={Math.max(count, sliderMost(proposals.suggested, proposals.most))}
            value={count}
            onChange={(event) => setAsked(event.target.valueAsNumber)}
          />
          <output htmlFor={`${id}-count`}>{count}</output>
        </div>
      )}
      {proposed.length > 0 ? (
        <>
          <button type="button" onClick={() => accept(proposed, 0)}>
            {proposed.length === 1 ? 'Accept this chapter' : `Accept all ${proposed.length}`}
          </button>
          <ol ref={list} className={styles.list}>
            {proposed.map((one, index) => (
              <ProposedChapterRow
                key={one.cueId}
                proposed={one}
                change={(edit) =>
                  setEdits((former) => new Map(former).set(one.cueId, { ...former.get(one.cueId), ...edit }))
                }
                listen={() => listen(one.startMs, one.cueId)}
                accept={() => accept([one], index)}
                refuse={() => refuse(one, index)}
              />
            ))}
          </ol>
        </>
      ) : (
        <p>
          Nothing is left to propose{proposals.most > count ? '. Ask for more chapters with the slider' : ''}.
        </p>
      )}
      <p className="hint" role="status">
        {told}
      </p>
      {refused.length > 0 && (
        <button type="button" className="quiet" onClick={() => forgetRefusals(store)}>
          Offer {refused.length === 1 ? 'the refused one' : `the ${refused.length} refused ones`} again
        </button>
      )}
    </section>
  );
}

const leftWords = (left: number): string =>
  left === 0 ? 'None is left.' : left === 1 ? 'One is left.' : `${left} are left.`;
