'use client';

import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useId, useMemo, useRef, useState } from 'react';
import { sendJson } from '#app/forms/send-json.ts';
import { dayOf } from '#app/words/days.ts';
import { descriptionWarningWords, FORMAT_WORDS, PART_WORDS } from '#app/words/description-words.ts';
import { changedLines } from '#lib/description/changed-lines.ts';
import type { DescriptionSetup } from '#lib/description/description-setup.ts';
import { composeDescription } from '#lib/description/description-text.ts';
import { DESCRIPTION_FORMATS, type DescriptionFormat } from '#lib/description/write-description.ts';
import type { Content } from '#lib/lesson/content.ts';
import styles from './description.module.css';
import { toClipboard } from './to-clipboard.ts';

export type Copied = Partial<Record<DescriptionFormat, { readonly text: string; readonly day: string }>>;

interface DescriptionProps {
  readonly content: Content;
  readonly setup: DescriptionSetup;
  readonly lessonAddress: string;
  readonly durationMs: number | null;
  readonly copied: Copied;
  /** Of this lesson's routes. */
  readonly api: string;
  readonly mayEdit: boolean;
  /** Where the workshop words its texts; null for members who may not. */
  readonly setupPath: string | null;
}

const grouped = new Intl.NumberFormat('en-GB');

/** The text to take along, what a place may stumble over in it, and what changed since it was last taken. */
export function Description(props: DescriptionProps) {
  const { content, setup, lessonAddress, durationMs } = props;
  const router = useRouter();
  const [format, setFormat] = useState<DescriptionFormat>('text');
  const [copied, setCopied] = useState(props.copied);
  const composed = useMemo(
    () => composeDescription({ content, setup, lessonAddress, durationMs, format }),
    [content, setup, lessonAddress, durationMs, format],
  );
  const area = useRef<HTMLTextAreaElement>(null);
  const [told, setTold] = useState('');
  const group = useId();

  const remember = async () => {
    if (!props.mayEdit) return;
    const sent = await sendJson(`${props.api}/copied-texts`, 'PUT', { format, text: composed.text });
    if (!sent.ok) {
      setTold('Copied. It could not be noted that you did, so later changes cannot be shown.');
      return;
    }
    // “Where to paste again” stands on the same page.
    router.refresh();
    setCopied({ ...copied, [format]: { text: composed.text, day: dayOf(new Date()) } });
  };
  const copy = async () => {
    try {
      await toClipboard(composed.text, format === 'html');
      setTold('Copied.');
    } catch {
      // Without leave to write the clipboard the text is at least marked.
      area.current?.select();
      setTold('Your browser did not allow copying. The text is marked: press Ctrl+C.');
    }
    await remember();
  };
  const { characters, bytes } = setup.limits;
  return (
    <>
      <fieldset className={styles['formats']}>
        <legend className="unseen">Written as</legend>
        {DESCRIPTION_FORMATS.map((each) => (
          <label key={each}>
            <input type="radio" name={group} checked={each === format} onChange={() => setFormat(each)} />
            {FORMAT_WORDS[each]}
          </label>
        ))}
      </fieldset>
      {composed.warnings.length + composed.leftOut.length > 0 && (
        <ul className={`notice caution ${styles['warnings']}`} aria-label="What to look at in the text">
          {composed.leftOut.length > 0 && (
            <li>
              Left out, so that it is not too long:{' '}
              {composed.leftOut.map((kind) => PART_WORDS[kind].toLowerCase()).join('; ')}.
            </li>
          )}
          {composed.warnings.map((warning) => {
            const words = descriptionWarningWords(warning);
            return <li key={words}>{words}</li>;
          })}
        </ul>
      )}
      <textarea
        ref={area}
        className={styles['text']}
        readOnly
        value={composed.text}
        aria-label="Description text"
        rows={14}
      />
      <p className="row apart">
        <button type="button" className="quiet" onClick={() => void copy()}>
          Copy the text
        </button>
        <span className="soft">
          {count(composed.characters, characters)} characters, {count(composed.bytes, bytes)} bytes
        </span>
      </p>
      <p role="status" className="hint">
        {told}
      </p>
      <SinceCopied copied={copied[format]} now={composed.text} />
      {props.setupPath && (
        <p>
          <Link href={props.setupPath}>Parts, order, wording and limits of these texts</Link>
        </p>
      )}
    </>
  );
}

const count = (is: number, most: number | null): string =>
  most === null ? grouped.format(is) : `${grouped.format(is)} of ${grouped.format(most)}`;

/** Tells whether the text must be pasted again, and which of its lines differ. */
function SinceCopied({ copied, now }: { copied: Copied['text']; now: string }) {
  const changed = useMemo(() => (copied ? changedLines(copied.text, now) : []), [copied, now]);
  if (!copied) return null;
  if (copied.text === now || changed.length === 0) {
    return <p className="soft">Nothing has changed since you copied it on {copied.day}.</p>;
  }
  const lines = changed.filter(({ is }) => is !== 'same').length;
  return (
    <details className={styles['changed']}>
      <summary>
        Since you copied it on {copied.day}, {lines === 1 ? '1 line differs' : `${lines} lines differ`}: paste
        it again
      </summary>
      <ol>
        {changed.map(({ is, line }, index) => (
          // The same line may stand in a text twice.
          // biome-ignore lint/suspicious/noArrayIndexKey: lines have no other name than their place
          <li key={index} data-is={is}>
            {is === 'gone' && <del>{line}</del>}
            {is === 'new' && <ins>{line}</ins>}
            {is === 'same' && line}
          </li>
        ))}
      </ol>
    </details>
  );
}
