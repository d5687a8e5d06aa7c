'use client';

import { type RefObject, useCallback, useEffect, useRef, useState } from 'react';
import { type Stop, stopCrossed } from '#lib/lesson/holding.ts';

/** A named span that can be looped. */
export interface Loop {
  readonly startMs: number;
  readonly endMs: number;
}

interface Asked {
  readonly stops: readonly Stop[];
  readonly holding: boolean;
  readonly loop: Loop | null;
  readonly countIn: boolean;
}

export interface Playing {
  readonly atMs: number;
  readonly playing: boolean;
  /** The step at which playing waits for the pupil, or null. */
  readonly heldAt: Stop | null;
  /** 3, 2, 1 while counting in, else 0. */
  readonly count: number;
  /** @param untilMs where it stops by itself */
  readonly playFrom: (atMs: number, untilMs?: number | null) => void;
  readonly seek: (atMs: number) => void;
  readonly toggle: () => void;
  readonly goOn: () => void;
}

const COUNT_FROM = 3;

/** Follows a media element: its time, holding at steps, looping with a count-in. */
export function usePlaying(media: RefObject<HTMLMediaElement | null>, asked: Asked): Playing {
  const [atMs, setAtMs] = useState(0);
  const [playing, setPlaying] = useState(false);
  const [heldAt, setHeldAt] = useState<Stop | null>(null);
  const [count, setCount] = useState(0);
  const lastMs = useRef(0);
  const wishes = useRef(asked);
  const stopsAt = useRef<number | null>(null);
  useEffect(() => {
    wishes.current = asked;
  });

  const seek = useCallback(
    (toMs: number) => {
      if (!media.current) return;
      lastMs.current = toMs;
      stopsAt.current = null;
      media.current.currentTime = toMs / 1000;
      setAtMs(toMs);
      setHeldAt(null);
      setCount(0);
    },
    [media],
  );

  const play = useCallback(() => {
    // A browser may refuse to start sound by itself; the play button is still there.
    media.current?.play().catch(() => setPlaying(false));
  }, [media]);

  const playFrom = useCallback(
    (fromMs: number, untilMs: number | null = null) => {
      seek(fromMs);
      stopsAt.current = untilMs;
      play();
    },
    [seek, play],
  );

  useEffect(() => {
    const element = media.current;
    if (!element) return;
    let frame = 0;
    const restart = (loop: Loop) => {
      if (wishes.current.countIn) {
        element.pause();
        element.currentTime = loop.startMs / 1000;
        lastMs.current = loop.startMs;
        setCount(COUNT_FROM);
      } else playFrom(loop.startMs);
    };
    const follow = () => {
      const now = Math.round(element.currentTime * 1000);
      const { holding, stops, loop } = wishes.current;
      const stop = holding && !element.paused ? stopCrossed(stops, lastMs.current, now) : null;
      const until = stopsAt.current;
      if (until !== null && now >= until && !element.paused) {
        stopsAt.current = null;
        element.pause();
      }
      if (loop && now >= loop.endMs - 40 && lastMs.current <= loop.endMs) restart(loop);
      else if (stop) {
        element.pause();
        element.currentTime = stop.atMs / 1000;
        lastMs.current = stop.atMs;
        setHeldAt(stop);
        setAtMs(stop.atMs);
      } else {
        lastMs.current = Math.max(now, element.paused ? now : lastMs.current);
        setAtMs((before) => (Math.abs(before - now) < 100 && !element.paused ? before : now));
      }
    };
    const everyFrame = () => {
      follow();
      if (!element.paused) frame = requestAnimationFrame(everyFrame);
    };
    const events: Record<string, () => void> = {
      play: () => {
        setPlaying(true);
        setHeldAt(null);
        setCount(0);
        frame = requestAnimationFrame(everyFrame);
      },
      pause: () => setPlaying(false),
      seeking: () => {
        const now = Math.round(element.currentTime * 1000);
        // A real jump; going to a stop lands a hair before it, which must not count as crossing it anew.
        if (Math.abs(now - lastMs.current) > 250) lastMs.current = now;
        setAtMs(now);
      },
      // Frames stop in a hidden window while its sound goes on.
      timeupdate: follow,
      ended: follow,
    };
    for (const [name, run] of Object.entries(events)) element.addEventListener(name, run);
    return () => {
      cancelAnimationFrame(frame);
      for (const [name, run] of Object.entries(events)) element.removeEventListener(name, run);
    };
  }, [media, playFrom]);

  useEffect(() => {
    if (count === 0) return;
    const timer = setTimeout(() => (count > 1 ? setCount(count - 1) : play()), 1000);
    return () => clearTimeout(timer);
  }, [count, play]);

  const toggle = useCallback(() => {
    if (count > 0) setCount(0);
    else if (media.current?.paused) play();
    else media.current?.pause();
  }, [media, play, count]);

  return { atMs, playing, heldAt, count, playFrom, seek, toggle, goOn: play };
}
