'use client';
/** Pictures of the making, computed by the server a moment after it changed; typing never waits for them. */
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import type { PicturesOfMaking } from '#app/pictures/answer-picture.ts';
import { foretoldWords, shapeFaultWords } from '#app/words/shape-words.ts';
import { type Pictured, shapeKey } from '#lib/lesson/pictured.ts';
import { useDraft } from '../draft.client.tsx';
import styles from './weave-pictures.module.css';

const WAIT_MS = 500;
const STEP = 15;
/** Pixels of dragging to one step of turning. */
const DRAG = 14;

export type Pictures = PicturesOfMaking | null;

interface Turned {
  readonly roll: number;
  readonly side: 'front' | 'back';
}

const making = (content: Pictured): Pictured => ({
  start: content.start,
  repeat: content.repeat,
  finishing: content.finishing,
  runs: content.runs,
  endsAfter: content.endsAfter,
  ends: content.ends,
  ringKinds: content.ringKinds,
  leaning: content.leaning,
});

/** The newest pictures that came; those of before stay until then. */
export function useWeavePictures(address: string, turned: Turned): Pictures {
  const { content } = useDraft();
  const [pictures, setPictures] = useState<Pictures>(null);
  const body = JSON.stringify({ making: making(content), ...turned });
  const key = `${shapeKey(content)} ${content.ringKinds.map(({ name, colourCode }) => name + colourCode).join()} ${JSON.stringify(content.runs)} ${content.endsAfter} ${turned.roll} ${turned.side}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only what shows in the pictures asks for new ones
  useEffect(() => {
    const stop = new AbortController();
    const ask = async () => {
      try {
        const answer = await fetch(address, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body,
          signal: stop.signal,
        });
        if (answer.ok) setPictures((await answer.json()) as PicturesOfMaking);
      } catch {
        // Without the server the pictures of before stay; the words beside them are always new.
      }
    };
    const timer = setTimeout(() => void ask(), WAIT_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [address, key]);
  return pictures;
}

const addressOf = (svg: string): string => `data:image/svg+xml,${encodeURIComponent(svg)}`;

/** The picture of one placement; nothing until there is one. */
export function PlacementPicture({ pictures, id }: { readonly pictures: Pictures; readonly id: string }) {
  const picture = pictures?.pictures[id];
  return picture ? (
    // biome-ignore lint/performance/noImgElement: drawn for this screen, there is nothing to optimise
    <img className={styles.step} src={addressOf(picture.svg)} alt={picture.text} />
  ) : null;
}

interface WholePieceProps {
  readonly pictures: Pictures;
  readonly turned: Turned;
  readonly onTurn: (turned: Turned) => void;
}

/** The whole piece, turned about its length by dragging, by arrow keys or by buttons. */
export function WholePiece({ pictures, turned, onTurn }: WholePieceProps) {
  const { content } = useDraft();
  const from = useRef<{ readonly y: number; readonly roll: number } | null>(null);
  if (!pictures) return null;
  const nameOf = (id: string) => content.ringKinds.find((kind) => kind.id === id)?.name ?? '';
  const piece = pictures.pictures['piece'];
  const roll = (to: number) => onTurn({ ...turned, roll: ((to % 360) + 360) % 360 });
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowUp: STEP, ArrowRight: STEP, ArrowDown: -STEP, ArrowLeft: -STEP }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    roll(turned.roll + by);
  };
  const onPointerMove = (event: PointerEvent) => {
    if (!from.current) return;
    const to = from.current.roll + Math.round((from.current.y - event.clientY) / DRAG) * STEP;
    if (((to % 360) + 360) % 360 !== turned.roll) roll(to);
  };
  const drop = () => {
    from.current = null;
  };
  return (
    <figure className={styles.piece}>
      {piece && (
        <>
          <div
            role="slider"
            tabIndex={0}
            aria-label="Roll the piece about its length"
            aria-orientation="vertical"
            aria-valuemin={0}
            aria-valuemax={345}
            aria-valuenow={turned.roll}
            aria-valuetext={`rolled by ${turned.roll} degrees`}
            className={styles.turntable}
            onKeyDown={onKeyDown}
            onPointerDown={(event) => {
              event.currentTarget.setPointerCapture(event.pointerId);
              from.current = { y: event.clientY, roll: turned.roll };
            }}
            onPointerMove={onPointerMove}
            onPointerUp={drop}
            onPointerCancel={drop}
          >
            {/* biome-ignore lint/performance/noImgElement: drawn for this screen, there is nothing to optimise */}
            <img src={addressOf(piece.svg)} alt="" draggable={false} />
          </div>
          <div className={styles.keys}>
            <button type="button" className="quiet" onClick={() => roll(turned.roll + STEP)}>
              Roll up
            </button>
            <button type="button" className="quiet" onClick={() => roll(turned.roll - STEP)}>
              Roll down
            </button>
            <button
              type="button"
              className="quiet"
              onClick={() => onTurn({ ...turned, side: turned.side === 'front' ? 'back' : 'front' })}
            >
              {turned.side === 'front' ? 'Turn over to the back' : 'Turn over to the front'}
            </button>
            <button type="button" className="quiet" onClick={() => onTurn({ roll: 0, side: 'front' })}>
              As at first
            </button>
          </div>
        </>
      )}
      <figcaption className="soft">
        {/* What stands in a slider is not read out: the picture's words stand here. */}
        {piece && <span className="unseen">{piece.text} </span>}
        {pictures.foretold && foretoldWords(pictures.foretold)}
        {pictures.fault && shapeFaultWords(pictures.fault, nameOf)}
      </figcaption>
    </figure>
  );
}
