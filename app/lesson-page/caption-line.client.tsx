'use client';

import { type ReactNode, type RefObject, useEffect, useState } from 'react';
import styles from './player.module.css';
import { TERM_BOX } from './term-box.ts';
import terms from './terms.module.css';

interface CaptionLineProps {
  readonly media: RefObject<HTMLMediaElement | null>;
  readonly language: string;
}

/** Captions under the picture, where they hide no hands. The browser keeps the time; only its drawing is ours. */
export function CaptionLine({ media, language }: CaptionLineProps) {
  const [text, setText] = useState('');
  const [boxes, setBoxes] = useState<ReadonlyMap<string, string>>(new Map());
  useEffect(() => {
    const track = media.current
      ? [...media.current.textTracks].find((candidate) => candidate.kind === 'captions')
      : undefined;
    if (!track) return;
    track.mode = 'hidden';
    setBoxes(termsOnPage());
    const show = () =>
      setText(
        [...(track.activeCues ?? [])]
          .map((cue) => ('getCueAsHTML' in cue ? (cue as VTTCue).getCueAsHTML().textContent : ''))
          .join('\n'),
      );
    track.addEventListener('cuechange', show);
    show();
    return () => {
      track.removeEventListener('cuechange', show);
      track.mode = 'disabled';
    };
  }, [media]);
  return (
    <p className={styles.captions} lang={language}>
      <span>{explained(text, boxes, () => media.current?.pause())}</span>
    </p>
  );
}

/** Terms as the page explains them elsewhere, in small letters, with the boxes that tell their meaning. */
const termsOnPage = (): ReadonlyMap<string, string> =>
  new Map(
    [...document.querySelectorAll(`button[popovertarget^="${TERM_BOX}"]:not([popovertargetaction])`)].map(
      (button) => [button.textContent.toLowerCase(), button.getAttribute('popovertarget') ?? ''],
    ),
  );

/** Words that can be pressed; the recording waits for who reads. */
function explained(text: string, boxes: ReadonlyMap<string, string>, onRead: () => void): ReactNode {
  const known = [...boxes.keys()]
    .filter((term) => term !== '')
    .sort((one, other) => other.length - one.length)
    .map((term) => term.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&'));
  if (known.length === 0) return text;
  const parts = text.split(new RegExp(`(?<![\\p{L}\\p{N}])(${known.join('|')})(?![\\p{L}\\p{N}])`, 'iu'));
  return parts.map((part, at) =>
    at % 2 === 0 ? (
      part
    ) : (
      <button
        // biome-ignore lint/suspicious/noArrayIndexKey: parts have no other name than their place
        key={at}
        type="button"
        className={terms['term']}
        popoverTarget={boxes.get(part.toLowerCase()) ?? ''}
        onClick={onRead}
      >
        {part}
      </button>
    ),
  );
}
