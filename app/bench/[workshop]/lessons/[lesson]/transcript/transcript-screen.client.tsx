'use client';
import Link from 'next/link';
/** The working surface: picture and chapters on one side, the transcript as a page beside them. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Habits } from '#lib/chapters/openers.ts';
import { speechBetween } from '#lib/transcript/spread-script.ts';
import { useDraftPart, useDraftStore } from '../draft.client.tsx';
import { thingInAddress } from '../land-on-thing.client.tsx';
import { ApproximateTimes } from './approximate-times.client.tsx';
import { CaptionQuality } from './caption-quality.client.tsx';
import { ChapterList } from './chapter-list.client.tsx';
import type { Mark } from './cue-row.client.tsx';
import { Document, type DocumentHandle } from './document.client.tsx';
import { FindBar } from './find-bar.client.tsx';
import { actOf, type KeyAct } from './keys.ts';
import { KeysSheet } from './keys-sheet.client.tsx';
import { createMarkUp } from './mark-up.ts';
import { useNewRecording } from './new-recording.ts';
import { Picture, type PlayedRecording } from './picture.client.tsx';
import { createPlayer, LITTLE_MS } from './player.ts';
import { ProposedChapters } from './proposed-chapters.client.tsx';
import { ToDecide } from './to-decide/to-decide.client.tsx';
import styles from './transcript-screen.module.css';

const KEYS_SETTING = 'benchleaf.keys';
const NO_PAUSES: PlayedRecording['pauses'] = [];
const NARROW = '(max-width: 60rem)';

export function TranscriptScreen({
  recording,
  recordingsAddress,
  recordingAddress,
  lessonAddress,
  habits,
  glossaryAddress,
}: {
  recording: PlayedRecording | null;
  /** Of the list of the lesson's recordings. */
  recordingsAddress: string;
  /** Address below which the recording's files lie. */
  recordingAddress: string;
  lessonAddress: string;
  /** How the workshop's other lessons are parted into chapters. */
  habits: Habits;
  /** Address of the workshop's glossary below `/bench` and below `/api/workshops`. */
  glossaryAddress: string;
}) {
  const store = useDraftStore();
  const mayEdit = useDraftPart((state) => state.mayEdit);
  const cueCount = useDraftPart((state) => state.cues.length);
  const player = useMemo(() => createPlayer(), []);
  const markUp = useMemo(() => {
    const speech = recording ? speechBetween(recording.pauses, recording.durationMs) : [];
    return createMarkUp(store, () => crypto.randomUUID(), speech);
  }, [store, recording]);
  const text = useRef<DocumentHandle>(null);
  const side = useRef<HTMLDivElement>(null);
  const proposeButton = useRef<HTMLButtonElement>(null);
  const peaks = usePeaks(recording && `${recordingAddress}/peaks`);
  const [marks, setMarks] = useState<ReadonlyMap<string, readonly Mark[]>>(new Map());
  const [finding, setFinding] = useState(false);
  const [proposing, setProposing] = useState(false);
  const [captioning, setCaptioning] = useState(false);
  const captionsButton = useRef<HTMLButtonElement>(null);
  const [following, setFollowing] = useState(true);
  const [keysOn, setKeysOn] = useKeysSetting();
  const bringIn = `${lessonAddress}/bring-in`;
  useNewRecording(recordingsAddress, recording?.id ?? null);

  const setChapterHere = useCallback(() => {
    text.current?.goTo(markUp.setChapter(player.timeMs()), { title: true });
  }, [markUp, player]);

  const doAct = useCallback(
    (act: KeyAct) => {
      const { cues } = store.getState();
      const id = text.current?.activeId() ?? null;
      const at = cues.findIndex((cue) => cue.id === id);
      switch (act) {
        case 'play':
          return player.toggle();
        case 'back':
          return player.nudge(-LITTLE_MS);
        case 'forward':
          return player.nudge(LITTLE_MS);
        case 'slower':
          return player.changeSpeed(-1);
        case 'faster':
          return player.changeSpeed(1);
        case 'chapter':
          return setChapterHere();
        case 'next-cue':
        case 'former-cue': {
          const to = cues[at + (act === 'next-cue' ? 1 : -1)];
          if (to) text.current?.goTo(to.id);
          return;
        }
        case 'join': {
          const joined = id && markUp.joinWithNext(id);
          if (joined) text.current?.goTo(joined);
          return;
        }
        case 'begin-here':
          return id ? markUp.retime(id, { startMs: player.timeMs() }) : undefined;
        case 'end-here':
          return id ? markUp.retime(id, { endMs: player.timeMs() }) : undefined;
      }
    },
    [store, player, markUp, setChapterHere],
  );

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (document.querySelector('dialog[open]')) return;
      if (asksToFind(event)) {
        // A second press inside the search leads to the browser's own.
        if (event.target instanceof Element && event.target.closest('search')) return;
        event.preventDefault();
        setFinding(true);
        return;
      }
      const row = keysOn ? actOf(event) : null;
      if (!row || (row.edits && !mayEdit)) return;
      event.preventDefault();
      doAct(row.act);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [keysOn, mayEdit, doAct]);

  const pictureHeight = useCallback(
    () => (window.matchMedia(NARROW).matches ? (side.current?.offsetHeight ?? 0) : 0),
    [],
  );
  const coveredTop = useCallback(
    () => pictureHeight() + (document.querySelector<HTMLElement>('search')?.offsetHeight ?? 0),
    [pictureHeight],
  );
  useCovered(coveredTop, pictureHeight);
  // Other screens lead here by the id of a chapter or a cue. Their rows are there only once they are near.
  useEffect(() => {
    const land = () => {
      const thing = thingInAddress();
      const { cues, content } = store.getState();
      const chapter = content.chapters.find(({ id }) => id === thing);
      const cue = cues.find(({ id }) => id === thing);
      if (chapter) text.current?.goTo(thing, { title: true });
      else if (cue) text.current?.goTo(thing);
      const startMs = (chapter ?? cue)?.startMs;
      if (startMs !== undefined) player.seek(startMs);
    };
    land();
    window.addEventListener('hashchange', land);
    return () => window.removeEventListener('hashchange', land);
  }, [store, player]);
  const showCue = useCallback((id: string) => text.current?.show(id), []);
  const closeCaptions = useCallback(() => {
    setCaptioning(false);
    captionsButton.current?.focus();
  }, []);
  const closeFind = useCallback((foundId: string | null) => {
    setFinding(false);
    const id = foundId ?? text.current?.activeId();
    if (id) text.current?.goTo(id);
  }, []);

  return (
    <main className={styles.surface}>
      <h2 className="unseen">Transcript</h2>
      <div className={styles.side}>
        <div ref={side} className={styles.sticky}>
          <Picture recording={recording} address={recordingAddress} bringIn={bringIn} player={player} />
          {recording && !following && (
            <button type="button" className={styles.backToPlace} onClick={() => text.current?.follow()}>
              Back to playing place
            </button>
          )}
          <ApproximateTimes
            markUp={markUp}
            player={player}
            hasRecording={recording !== null}
            show={showCue}
          />
        </div>
        <ChapterList
          goTo={(id, startMs) => {
            player.seek(startMs);
            text.current?.goTo(id, { title: true });
          }}
        />
      </div>
      <div className={styles.page}>
        <div className={styles.pageBar}>
          {mayEdit && recording && (
            <button id="set-chapter" type="button" className="quiet" onClick={setChapterHere}>
              Set a chapter here
            </button>
          )}
          {mayEdit && cueCount > 0 && (
            <button
              ref={proposeButton}
              type="button"
              className="quiet"
              aria-expanded={proposing}
              onClick={() => setProposing(!proposing)}
            >
              Propose chapters
            </button>
          )}
          <button
            type="button"
            className="quiet"
            aria-expanded={finding}
            onClick={() => setFinding(!finding)}
          >
            Find
          </button>
          <button
            type="button"
            className="quiet"
            ref={captionsButton}
            aria-expanded={captioning}
            onClick={() => setCaptioning(!captioning)}
          >
            Captions
          </button>
          <KeysSheet on={keysOn} setOn={setKeysOn} />
        </div>
        {finding && <FindBar markUp={markUp} show={showCue} onMarks={setMarks} close={closeFind} />}
        {proposing && mayEdit && cueCount > 0 && (
          <ProposedChapters
            pauses={recording?.pauses ?? NO_PAUSES}
            habits={habits}
            listen={(atMs, cueId) => {
              player.seek(atMs);
              text.current?.show(cueId);
            }}
            close={() => {
              setProposing(false);
              proposeButton.current?.focus();
            }}
          />
        )}
        {captioning && <CaptionQuality markUp={markUp} show={showCue} close={closeCaptions} />}
        {!finding && (
          <ToDecide
            markUp={markUp}
            player={recording && player}
            api={`/api/workshops${glossaryAddress}`}
            glossaryAddress={`/bench${glossaryAddress}`}
            show={showCue}
            onMarks={setMarks}
          />
        )}
        {cueCount === 0 && (
          <div className={styles.empty}>
            <p>
              There is no transcript yet. <Link href={bringIn}>Bring one in</Link>, or write the first cue.
            </p>
            {mayEdit && (
              <button type="button" onClick={() => text.current?.goTo(markUp.insertAfter(null), { edit: 0 })}>
                Write the first cue
              </button>
            )}
          </div>
        )}
        <Document
          ref={text}
          player={player}
          markUp={markUp}
          recording={recording}
          peaks={peaks}
          marks={marks}
          coveredTop={coveredTop}
          onFollowing={setFollowing}
        />
      </div>
    </main>
  );
}

/** The recording's peaks, null until they are there (or where there are none: the ribbon is then a line). */
const asksToFind = (event: KeyboardEvent): boolean =>
  (event.ctrlKey || event.metaKey) && event.key === 'f' && !event.shiftKey && !event.altKey;

function usePeaks(address: string | null): Uint8Array | null {
  const [peaks, setPeaks] = useState<Uint8Array | null>(null);
  useEffect(() => {
    setPeaks(null);
    if (!address) return;
    const gone = new AbortController();
    const load = async () => {
      const response = await fetch(address, { signal: gone.signal });
      if (response.ok) setPeaks(new Uint8Array(await response.arrayBuffer()));
    };
    load().catch(() => undefined);
    return () => gone.abort();
  }, [address]);
  return peaks;
}

function useKeysSetting() {
  const [on, setOn] = useState(true);
  useEffect(() => setOn(localStorage.getItem(KEYS_SETTING) !== 'off'), []);
  const set = (next: boolean) => {
    setOn(next);
    localStorage.setItem(KEYS_SETTING, next ? 'on' : 'off');
  };
  return [on, set] as const;
}

/** Tells the browser how much of the window's top is covered, so that what gets the focus is not hidden; and the search where the picture ends. */
function useCovered(coveredTop: () => number, pictureHeight: () => number) {
  useEffect(() => {
    const root = document.documentElement;
    const look = () => {
      // The search itself lies in what it covers: counted there, every letter typed would scroll the page.
      const isSought = document.activeElement?.closest('search');
      root.style.scrollPaddingTop = `${isSought ? pictureHeight() : coveredTop() + 12}px`;
      root.style.setProperty('--below-picture', `${pictureHeight() + 8}px`);
    };
    look();
    const observer = new ResizeObserver(look);
    observer.observe(document.body);
    document.addEventListener('focusin', look);
    return () => {
      observer.disconnect();
      document.removeEventListener('focusin', look);
      root.style.removeProperty('scroll-padding-top');
      root.style.removeProperty('--below-picture');
    };
  }, [coveredTop, pictureHeight]);
}
