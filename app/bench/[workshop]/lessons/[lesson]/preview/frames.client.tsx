'use client';
/** The page of the draft in frames as wide as what pupils hold. */
import { useId, useRef, useState } from 'react';
import { kitFor } from '#lib/kit/kit-list.ts';
import { sizeWords } from '#lib/lesson/asked-measure.ts';
import { useDraft } from '../draft.client.tsx';
import { dressForPaper } from './dress-for-paper.ts';
import styles from './preview.module.css';

/** Widths in CSS pixels: common practice; paper is A4 at 96 to the inch, less margins of 1 cm (CSS Values 4). */
const FRAMES = [
  { id: 'phone', label: 'Phone', width: 390, height: 780 },
  { id: 'tablet', label: 'Tablet', width: 820, height: 1_040 },
  { id: 'window', label: 'Window', width: 1_280, height: 800 },
  { id: 'paper', label: 'Paper', width: 718, height: 1_047 },
] as const;
type FrameId = (typeof FRAMES)[number]['id'];

interface FramesProps {
  /** Address of the page that is framed. */
  readonly page: string;
  /** Address of the lesson's routes. */
  readonly api: string;
}

export function Frames({ page, api }: FramesProps) {
  const { content, saveState } = useDraft();
  const [shown, setShown] = useState<FrameId>('phone');
  const [turn, setTurn] = useState(0);
  const frame = useRef<HTMLIFrameElement>(null);
  const name = useId();
  const { label, width, height } = FRAMES.find(({ id }) => id === shown) ?? FRAMES[0];
  const sheets = content.sizes.filter(({ bodyMm }) => kitFor(content, bodyMm).ok);
  return (
    <section aria-labelledby={`${name}-title`}>
      <h3 id={`${name}-title`} className="unseen">
        The page in a frame
      </h3>
      <div className={styles.choice}>
        <fieldset className={styles.frames}>
          <legend>As seen on</legend>
          {FRAMES.map((each) => (
            <label key={each.id}>
              <input
                type="radio"
                name={name}
                checked={each.id === shown}
                onChange={() => setShown(each.id)}
              />
              {each.label}
            </label>
          ))}
        </fieldset>
        <button type="button" className="quiet" onClick={() => setTurn(turn + 1)}>
          Load it again
        </button>
        <a href={page} target="_blank" rel="noreferrer">
          Open it in a window of its own
        </a>
      </div>
      <p role="status" className="hint">
        {shown === 'paper'
          ? 'As the page prints on A4. The sheets for the bench are files of their own.'
          : `${width} pixels wide, exactly as it would be published. `}
        {saveState === 'saved' ? '' : 'What is not saved yet is not in it. '}
      </p>
      {shown === 'paper' ? (
        <ul className={styles.sheets}>
          <li>
            <a href={`${api}/sheet.pdf`} target="_blank" rel="noreferrer">
              Steps and every size, PDF
            </a>
          </li>
          {sheets.map((size) => (
            <li key={size.id}>
              <a
                href={`${api}/kit-files/kit.pdf?measure=${size.bodyMm}&unit=mm&of=wrist`}
                target="_blank"
                rel="noreferrer"
              >
                Kit for {sizeWords(size)}, PDF
              </a>
            </li>
          ))}
        </ul>
      ) : null}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className={styles.stage} aria-label={`${label}, scrolls sideways`} tabIndex={0}>
        <iframe
          key={`${shown} ${turn}`}
          ref={frame}
          className={styles.frame}
          data-frame={shown}
          title={`The lesson page on ${label.toLowerCase()}`}
          src={`${page}?framed`}
          width={width}
          height={height}
          onLoad={() => {
            const inside = frame.current?.contentDocument;
            if (shown === 'paper' && inside) dressForPaper(inside);
          }}
        />
      </section>
    </section>
  );
}
