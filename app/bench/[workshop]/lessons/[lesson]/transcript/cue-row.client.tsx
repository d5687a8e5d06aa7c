'use client';
/** One cue of the document: its time, its stretch of the ribbon, its text. */
import { memo, type ReactNode, type RefObject, useMemo } from 'react';
import { formatTimeCode } from '#lib/time/time-code.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import styles from './cue-row.module.css';
import { pauseHeight } from './document-items.ts';
import { ribbonPath } from './ribbon-path.ts';

/** A stretch of the text that is marked: words found. */
export interface Mark {
  readonly start: number;
  readonly end: number;
  readonly current: boolean;
}

export interface CueRowProps {
  readonly cue: Cue;
  readonly pauseMs: number;
  readonly peaks: Uint8Array | null;
  readonly marks: readonly Mark[] | undefined;
  /** Being played. */
  readonly isCurrent: boolean;
  /** Has the keyboard's place in the list. */
  readonly isActive: boolean;
  readonly isChosen: boolean;
  /** The playhead's mark, in the row that is played. */
  readonly playhead: RefObject<HTMLSpanElement | null>;
  /** The editor in place of the text, and the tools below it; null where there are none. */
  readonly editor: ReactNode;
  readonly tools: ReactNode;
}

export const CueRow = memo(function CueRow(props: CueRowProps) {
  const { cue, pauseMs, peaks, isCurrent, isActive, isChosen, editor } = props;
  return (
    // The list handles clicks and keys; the cue is a stop for the keyboard, as one of many.
    <div
      className={styles.cue}
      data-cue={cue.id}
      data-current={isCurrent || undefined}
      data-active={isActive || undefined}
      data-chosen={isChosen || undefined}
    >
      <Sound cue={cue} peaks={peaks} playhead={isCurrent ? props.playhead : null} />
      <div className={styles.words}>
        <span className={styles.time}>
          {cue.timing === 'approximate' && (
            <>
              <span aria-hidden="true">≈ </span>
              <span className="unseen">about </span>
            </>
          )}
          {formatTimeCode(cue.startMs)}
          {isCurrent && <span className="unseen"> being played</span>}
          {isChosen && <span className="unseen"> chosen</span>}
        </span>
        {editor ?? (
          // biome-ignore lint/a11y/useSemanticElements: a paragraph takes no name and no focus
          <div
            role="group"
            aria-label={`${formatTimeCode(cue.startMs)} ${cue.text || 'no words yet'}`}
            className={styles.text}
            tabIndex={isActive ? 0 : -1}
            data-text={cue.id}
          >
            {cue.text === '' ? <span className="soft">No words yet</span> : marked(cue.text, props.marks)}
          </div>
        )}
      </div>
      {props.tools && (
        <>
          <span className={styles.thread} aria-hidden="true" />
          {props.tools}
        </>
      )}
      <Quiet cue={cue} pauseMs={pauseMs} peaks={peaks} />
      {pauseMs >= 1_500 && <p className={styles.pause}>{(pauseMs / 1000).toFixed(1)} s without words</p>}
    </div>
  );
});

function marked(text: string, marks: readonly Mark[] | undefined): ReactNode {
  if (!marks) return text;
  const parts: ReactNode[] = [];
  let from = 0;
  for (const { start, end, current } of marks) {
    parts.push(
      text.slice(from, start),
      <mark key={start} data-current={current || undefined}>
        {text.slice(start, end)}
      </mark>,
    );
    from = end;
  }
  return [...parts, text.slice(from)];
}

/** The ribbon beside the words. Decorative: the times stand beside it as text. */
function Sound({
  cue: { id, startMs, endMs },
  peaks,
  playhead,
}: Pick<CueRowProps, 'cue' | 'peaks'> & { playhead: RefObject<HTMLSpanElement | null> | null }) {
  const outline = useMemo(() => ribbonPath(peaks, startMs, endMs), [peaks, startMs, endMs]);
  return (
    <div className={styles.sound} data-sound={id} aria-hidden="true">
      <Outline path={outline} />
      {playhead && <span ref={playhead} className={styles.playhead} />}
    </div>
  );
}

/** The ribbon until the next cue: longer where the pause is longer. */
function Quiet({ cue: { endMs }, pauseMs, peaks }: Pick<CueRowProps, 'cue' | 'pauseMs' | 'peaks'>) {
  const outline = useMemo(
    () => (pauseMs > 0 ? ribbonPath(peaks, endMs, endMs + pauseMs) : null),
    [peaks, endMs, pauseMs],
  );
  return (
    <div className={styles.quiet} style={{ height: pauseHeight(pauseMs) }} aria-hidden="true">
      {outline && <Outline path={outline} />}
    </div>
  );
}

const Outline = ({ path }: { path: string }) => (
  // biome-ignore lint/a11y/noSvgWithoutTitle: hidden from assistive technology together with its frame
  <svg viewBox="0 0 100 100" preserveAspectRatio="none" focusable="false">
    <path d={path} />
  </svg>
);
