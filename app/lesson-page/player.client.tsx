'use client';

import { type ReactNode, useCallback, useEffect, useRef, useState } from 'react';
import type { Content } from '#lib/lesson/content.ts';
import { type Fragment, writeFragment } from '#lib/time/media-fragment.ts';
import { CaptionLine } from './caption-line.client.tsx';
import { ChapterList, type PlayerChapter } from './chapter-list.client.tsx';
import { HeldStep, type PlayerStop } from './held-step.client.tsx';
import styles from './player.module.css';
import { PlayerControls } from './player-controls.client.tsx';
import { PlayerNotes } from './player-notes.client.tsx';
import { writtenInPage } from './poster-in-page.ts';
import { keepPlace, recallPlace } from './remembered-place.ts';
import { useMomentLinks } from './use-moment-links.client.ts';
import { usePlaying } from './use-playing.client.ts';

interface PlayerProps {
  /** Address of the page, for links that work without script. */
  readonly page: string;
  readonly recording: string;
  readonly poster: string | null;
  readonly captions: string | null;
  readonly chaptersFile: string;
  readonly title: string;
  readonly language: string;
  readonly hasVideo: boolean;
  readonly width: number | null;
  readonly height: number | null;
  readonly durationMs: number;
  readonly chapters: readonly PlayerChapter[];
  readonly stops: readonly PlayerStop[];
  readonly corrections: Content['corrections'];
  /** What an address asks to be played; null for all. */
  readonly playAt: Fragment | null;
  /** Under which the place is kept on the device. */
  readonly placeKey: string;
}

/**
 * The recording. Without script it is the browser's own player with captions
 * and links to chapters; with it come looping, slow play, the mirrored
 * picture, holding at each step, and corrections at their moment.
 */
export function Player(props: PlayerProps) {
  const { page, chapters, stops, corrections, durationMs, placeKey, playAt } = props;
  const media = useRef<HTMLVideoElement & HTMLAudioElement>(null);
  const section = useRef<HTMLElement>(null);
  const [scripted, setScripted] = useState(false);
  const [rate, setRate] = useState(1);
  const [mirrored, setMirrored] = useState(false);
  const [holding, setHolding] = useState(false);
  const [goOnAfterMs, setGoOnAfterMs] = useState<number | null>(null);
  const [captionsOn, setCaptionsOn] = useState(true);
  const [loopId, setLoopId] = useState<string | null>(null);
  const [countIn, setCountIn] = useState(true);
  const [leftOffMs, setLeftOffMs] = useState(0);
  const loop = chapters.find((chapter) => chapter.id === loopId) ?? null;
  const playing = usePlaying(media, { stops, holding, loop, countIn });
  const { atMs, playFrom } = playing;
  const cameFrom = useMomentLinks(section, playFrom);

  const asked = playAt !== null;
  useEffect(() => {
    const place = recallPlace(placeKey);
    setRate(place.rate);
    setMirrored(place.mirrored);
    setHolding(place.holding);
    setGoOnAfterMs(place.goOnAfterMs);
    setCaptionsOn(place.captions);
    if (!asked && place.atMs > 5_000) setLeftOffMs(place.atMs);
    setScripted(true);
  }, [placeKey, asked]);

  useEffect(() => {
    if (!media.current) return;
    media.current.playbackRate = rate;
    media.current.preservesPitch = true;
  }, [rate]);

  useEffect(() => {
    section.current?.closest('article')?.toggleAttribute('data-mirrored', mirrored);
  }, [mirrored]);

  // Every five seconds of playing, and with every changed wish.
  const fifth = Math.floor(atMs / 5_000);
  useEffect(() => {
    if (!scripted) return;
    keepPlace(placeKey, {
      atMs: fifth === 0 ? leftOffMs : fifth * 5_000,
      rate,
      mirrored,
      holding,
      goOnAfterMs,
      captions: captionsOn,
    });
  }, [scripted, placeKey, fifth, leftOffMs, rate, mirrored, holding, goOnAfterMs, captionsOn]);

  const toggleLoop = useCallback(
    (id: string) => {
      const chapter = chapters.find((candidate) => candidate.id === id);
      if (loopId === id || !chapter) setLoopId(null);
      else {
        setLoopId(id);
        playFrom(chapter.startMs);
      }
    },
    [chapters, loopId, playFrom],
  );

  const held = stops.find((stop) => stop.id === playing.heldAt?.id) ?? null;
  const shownFromMs = Math.max(
    ...stops.flatMap((stop) => (held && stop.atMs < held.atMs ? [stop.atMs] : [])),
  );

  return (
    <section id="player" ref={section} className={styles.player} aria-label="Recording">
      <div className={styles.frame} data-mirrored-picture={mirrored || undefined}>
        <Media {...props} media={media} controls={!scripted}>
          {props.captions === null ? null : (
            <track kind="captions" src={props.captions} srcLang={props.language} label="Captions" default />
          )}
          <track kind="chapters" src={props.chaptersFile} srcLang={props.language} label="Chapters" />
        </Media>
        {playing.count > 0 ? (
          <p className={styles.count} role="status">
            {playing.count}
          </p>
        ) : null}
        {mirrored ? <p className={styles.mirrorSign}>mirrored</p> : null}
        {held && props.hasVideo ? (
          // The same as the button below, for a finger that does not aim.
          <button
            type="button"
            className={styles.tapOn}
            tabIndex={-1}
            aria-hidden="true"
            onClick={playing.goOn}
          >
            <span>Tap to go on</span>
          </button>
        ) : null}
      </div>
      {scripted ? (
        <>
          {captionsOn && props.captions !== null ? (
            <CaptionLine media={media} language={props.language} />
          ) : null}
          {held ? (
            <HeldStep
              key={held.id}
              step={held}
              goOnAfterMs={goOnAfterMs}
              onGoOn={playing.goOn}
              onAgain={Number.isFinite(shownFromMs) ? () => playFrom(shownFromMs) : null}
            />
          ) : null}
          <PlayerNotes
            corrections={corrections}
            atMs={atMs}
            leftOffMs={leftOffMs}
            onResume={() => {
              playFrom(leftOffMs);
              setLeftOffMs(0);
            }}
            cameFrom={cameFrom}
          />
          <PlayerControls
            media={media}
            playing={playing}
            durationMs={durationMs}
            hasVideo={props.hasVideo}
            hasCaptions={props.captions !== null}
            hasStops={stops.length > 0}
            repeat={chapters.find((chapter) => chapter.kind === 'repeat unit') ?? null}
            wishes={{ rate, mirrored, holding, goOnAfterMs, captionsOn, loopId, countIn }}
            onRate={setRate}
            onMirrored={setMirrored}
            onHolding={setHolding}
            onGoOnAfter={setGoOnAfterMs}
            onCaptions={setCaptionsOn}
            onLoop={toggleLoop}
            onCountIn={setCountIn}
          />
        </>
      ) : null}
      <ChapterList page={page} chapters={chapters} atMs={scripted ? atMs : null} />
    </section>
  );
}

interface MediaProps extends PlayerProps {
  readonly media: React.RefObject<(HTMLVideoElement & HTMLAudioElement) | null>;
  readonly controls: boolean;
  readonly children: ReactNode;
}

/** The browser's own element; a moment in the address becomes a media fragment. */
const Media = ({ media, controls, children, ...props }: MediaProps) => {
  const src = props.playAt === null ? props.recording : `${props.recording}#${writeFragment(props.playAt)}`;
  const poster = props.playAt === null && props.hasVideo ? props.poster : null;
  return props.hasVideo ? (
    // biome-ignore lint/a11y/useMediaCaption: captions are among the children
    <video
      ref={media}
      src={src}
      poster={poster === null ? undefined : writtenInPage(poster)}
      // The server writes the poster itself, where the browser only knows its address.
      suppressHydrationWarning
      width={props.width ?? undefined}
      height={props.height ?? undefined}
      controls={controls}
      preload="metadata"
      playsInline
      aria-label={props.title}
    >
      {children}
    </video>
  ) : (
    // biome-ignore lint/a11y/useMediaCaption: captions are among the children
    <audio ref={media} src={src} controls={controls} preload="metadata" aria-label={props.title}>
      {children}
    </audio>
  );
};
