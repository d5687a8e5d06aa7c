'use client';
/** Pictures of the making, computed by the server a moment after it changed; typing never waits for them. */
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import type { PicturesOfMaking } from '#app/pictures/answer-picture.ts';
import { TurnButton } from '#app/pictures/turn-button.client.tsx';
import { notDrawnWords } from '#app/words/picture-words.ts';
import { proofWords } from '#app/words/proof-words.ts';
import { countsWords, fitWords, foretoldWords, shapeFaultWords } from '#app/words/shape-words.ts';
import { type Pictured, shapeKey } from '#lib/lesson/pictured.ts';
import type { UnitProof } from '#lib/lesson/prove-lesson.ts';
import type { WholePicture } from '#lib/lesson/whole-picture.ts';
import { SEQUENCE_PARTS } from '#lib/weave/placement.ts';
import { unitsOf } from '#lib/weave/runs.ts';
import { usualBandOf } from '#lib/weave/usual-bands.ts';
import { useDraft } from '../draft.client.tsx';
import { useForetold } from './use-foretold.ts';
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
  weave: content.weave,
});

interface Asked {
  readonly address: string;
  readonly body: string;
  /** What shows in the answer: only what is another one asks anew. */
  readonly key: string;
  /** How long a change waits for the next one. */
  readonly waitMs: number;
}

/** The newest answer that came; that of before stays until then. The server says when to ask again, while the worker still derives a shape. */
function useAnswer<Answer>({ address, body, key, waitMs }: Asked): Answer | null {
  const [answer, setAnswer] = useState<Answer | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only what shows in the answer asks for a new one
  useEffect(() => {
    const stop = new AbortController();
    let timer: ReturnType<typeof setTimeout>;
    const ask = async () => {
      try {
        const response = await fetch(address, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body,
          signal: stop.signal,
        });
        if (!response.ok) return;
        setAnswer((await response.json()) as Answer | null);
        const again = Number(response.headers.get('retry-after'));
        if (again > 0 && !stop.signal.aborted) timer = setTimeout(() => void ask(), 1000 * again);
      } catch {
        // Without the server the answer of before stays; the words beside it are always new.
      }
    };
    timer = setTimeout(() => void ask(), waitMs);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [address, key]);
  return answer;
}

const coloursKey = ({ ringKinds }: Pictured): string =>
  ringKinds.map(({ name, colourCode }) => name + colourCode).join();

/** The newest pictures that came. */
export function useWeavePictures(address: string, turned: Turned): Pictures {
  const { content } = useDraft();
  return useAnswer<PicturesOfMaking>({
    address,
    body: JSON.stringify({ making: making(content), ...turned }),
    key: `${shapeKey(content)} ${coloursKey(content)} ${JSON.stringify(content.runs)} ${content.endsAfter} ${content.weave} ${turned.roll} ${turned.side}`,
    waitMs: WAIT_MS,
  });
}

/** The whole length of so many repeats, in its colours; null until it came, and where it has no picture. */
export function useWholeLength(address: string, repeats: number): WholePicture | null {
  const { content } = useDraft();
  return useAnswer<WholePicture>({
    address,
    body: oneOf(content, { of: 'whole', as: 'picture', repeats }),
    key: `${shapeKey(content)} ${coloursKey(content)} ${JSON.stringify(content.runs)} ${repeats}`,
    waitMs: 2 * WAIT_MS,
  });
}

/** What is sent for one thing alone. */
const oneOf = (
  content: Pictured,
  one: { readonly of: string; readonly as: 'picture' | 'scene'; readonly repeats?: number },
): string => JSON.stringify({ making: making(content), roll: 0, side: 'front', one });

export function WholeLengthPicture({ picture }: { readonly picture: WholePicture }) {
  const { content } = useDraft();
  return (
    <>
      {/* biome-ignore lint/performance/noImgElement: drawn for this screen, there is nothing to optimise */}
      <img
        className={picture.isInParts ? styles.inParts : styles.whole}
        src={addressOf(picture.svg)}
        alt={picture.text}
      />
      {picture.isInParts && <p className="soft">{picture.text}</p>}
      {notDrawnWords(picture.notDrawn, content.ringKinds).map((words) => (
        <p key={words} className="notice caution">
          {words}
        </p>
      ))}
    </>
  );
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

function Proved({ unit, proof }: UnitProof) {
  const { content } = useDraft();
  const placed = SEQUENCE_PARTS.flatMap((part) =>
    content[part].map(({ id }, index) => ({ id, name: `${part} ${index + 1}` })),
  );
  const places =
    proof.state === 'differs'
      ? placed.filter(({ id }) => proof.contradictions.some(({ placementId }) => placementId === id))
      : [];
  return (
    <span className={`${styles.proof} ${proof.state === 'agrees' ? '' : 'notice caution'}`}>
      {unitsOf(content).length > 1 && `${unit === '' ? 'The main unit' : `The unit ${unit}`}. `}
      {proofWords(proof)}{' '}
      {places.map(({ id, name }, at) => (
        <span key={id}>
          {at > 0 && ', '}
          <a href={`#${id}`}>{name}</a>
        </span>
      ))}
      {places.length > 0 && '.'}
    </span>
  );
}

interface WholePieceProps {
  readonly address: string;
  readonly pictures: Pictures;
  readonly turned: Turned;
  readonly onTurn: (turned: Turned) => void;
}

/** The whole piece, turned about its length by dragging, by arrow keys or by buttons. */
export function WholePiece({ address, pictures, turned, onTurn }: WholePieceProps) {
  const { content } = useDraft();
  const from = useRef<{ readonly y: number; readonly roll: number } | null>(null);
  const told = useForetold({ ...making(content), own: new Map(pictures?.own) });
  if (!pictures && !told) return null;
  const foretold = told ? (told.ok ? told.value : null) : pictures?.foretold;
  const fault = told ? (told.ok ? null : told.fault) : pictures?.fault;
  const nameOf = (id: string) => content.ringKinds.find((kind) => kind.id === id)?.name ?? '';
  const piece = pictures?.pictures['piece'];
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
            <TurnButton
              address={address}
              body={oneOf(content, { of: 'piece', as: 'scene' })}
              what="the piece"
            />
          </div>
        </>
      )}
      <figcaption className="soft">
        {/* What stands in a slider is not read out: the picture's words stand here. */}
        {piece && <span className="unseen">{piece.text} </span>}
        {foretold &&
          `${unitsOf(content).length > 1 ? 'The main unit. ' : ''}${foretoldWords(foretold)} ${countsWords(content, foretold)} ${fitWords(foretold, usualBandOf(content.weave, content.otherNames)?.band ?? null)}`}
        {fault && shapeFaultWords(fault, nameOf)}
        {pictures?.proofs.map(({ unit, proof }) => (
          <Proved key={unit} unit={unit} proof={proof} />
        ))}
      </figcaption>
    </figure>
  );
}
