'use client';

import { type RefObject, useEffect, useState } from 'react';
import styles from './player.module.css';

interface CaptionLineProps {
  readonly media: RefObject<HTMLMediaElement | null>;
  readonly language: string;
}

/** Captions under the picture, where they hide no hands. The browser keeps the time; only its drawing is ours. */
export function CaptionLine({ media, language }: CaptionLineProps) {
  const [text, setText] = useState('');
  useEffect(() => {
    const track = media.current
      ? [...media.current.textTracks].find((candidate) => candidate.kind === 'captions')
      : undefined;
    if (!track) return;
    track.mode = 'hidden';
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
      {text}
    </p>
  );
}
