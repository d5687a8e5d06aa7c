/** Playing the recording: one media element, told and watched from many places. */

/** How far back and forward a little is, ms: about a short sentence. */
export const LITTLE_MS = 3_000;
/** Speeds, slowest first. */
export const SPEEDS = [0.5, 0.65, 0.8, 1, 1.25, 1.5] as const;

export interface PlayerState {
  readonly ready: boolean;
  readonly playing: boolean;
  readonly speed: number;
}

export type Player = ReturnType<typeof createPlayer>;

export function createPlayer() {
  let media: HTMLMediaElement | null = null;
  let state: PlayerState = { ready: false, playing: false, speed: 1 };
  let frame = 0;
  const watchers = new Set<() => void>();
  const tickers = new Set<(ms: number) => void>();

  const timeMs = () => Math.round((media?.currentTime ?? 0) * 1000);
  const tick = () => {
    for (const ticker of tickers) ticker(timeMs());
  };
  const run = () => {
    tick();
    frame = requestAnimationFrame(run);
  };
  function look() {
    const playing = media !== null && !media.paused;
    state = { ready: media !== null, playing, speed: media?.playbackRate ?? state.speed };
    cancelAnimationFrame(frame);
    if (playing) run();
    else tick();
    for (const watcher of watchers) watcher();
  }
  const seek = (ms: number) => {
    if (!media) return;
    const end = Number.isFinite(media.duration) ? media.duration : Number.POSITIVE_INFINITY;
    media.currentTime = Math.min(Math.max(ms, 0) / 1000, end);
    tick();
  };
  // A browser may refuse to play (no sound device, page not touched yet); the button then shows that it did not.
  const play = () => void media?.play().catch(look);

  return {
    timeMs,
    seek,
    play,
    getState: () => state,
    attach(element: HTMLMediaElement | null) {
      media = element;
      look();
    },
    /** To be called when the media element says that something about it changed. */
    look,
    playFrom(ms: number) {
      seek(ms);
      play();
    },
    toggle() {
      if (state.playing) media?.pause();
      else play();
    },
    nudge: (byMs: number) => seek(timeMs() + byMs),
    setSpeed(speed: number) {
      if (media) media.playbackRate = speed;
    },
    /** One speed slower (-1) or faster (1). */
    changeSpeed(by: -1 | 1) {
      const at = SPEEDS.findIndex((speed) => speed >= state.speed);
      const next = SPEEDS[(at < 0 ? SPEEDS.length - 1 : at) + by];
      if (media && next !== undefined) media.playbackRate = next;
    },
    subscribe(watcher: () => void) {
      watchers.add(watcher);
      return () => {
        watchers.delete(watcher);
      };
    },
    /** Calls back with the playing place, ms, at each frame while playing and whenever it moves. */
    onTick(ticker: (ms: number) => void) {
      tickers.add(ticker);
      return () => {
        tickers.delete(ticker);
      };
    },
  };
}
