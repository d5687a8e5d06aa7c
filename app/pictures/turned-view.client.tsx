'use client';
/** A scene of rings that is turned by dragging, by arrow keys or by two sliders; drawn on a plain canvas. */
import { type KeyboardEvent, type PointerEvent, useEffect, useId, useRef, useState } from 'react';
import { type Scene, turnedBy } from '#lib/weave/picture/turned-scene.ts';
import { dot, type Vector } from '#lib/weave/space/vector.ts';
import { paintScene } from './paint-scene.client.ts';
import styles from './turned-view.module.css';

/** Degrees to one press of an arrow key, and to one pixel of dragging. */
const KEY_STEP = 5;
const DRAG = 0.5;
const MOST_SWING = 90;
/** Pieces of a ring while it moves and once it rests. */
const MOVING = 40;
const RESTING = 96;
const REST_MS = 140;
const MOST_LARGER = 4;

interface Turned {
  readonly roll: number;
  readonly swing: number;
  readonly larger: number;
}

const AS_AT_FIRST: Turned = { roll: 0, swing: 0, larger: 1 };

const wrapped = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;
const clamped = (value: number, most: number): number => Math.max(-most, Math.min(most, value));

export function TurnedView({ scene, isMirrored }: { readonly scene: Scene; readonly isMirrored: boolean }) {
  const [turned, setTurned] = useState(AS_AT_FIRST);
  const canvas = useRef<HTMLCanvasElement>(null);
  const drag = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const id = useId();
  const turn = (roll: number, swing: number) =>
    setTurned((before) => ({
      ...before,
      roll: wrapped(before.roll + roll),
      swing: clamped(before.swing + swing, MOST_SWING),
    }));
  useEffect(() => {
    const draw = (pieces: number) =>
      canvas.current && paint(canvas.current, { scene, isMirrored, turned, pieces });
    const frame = requestAnimationFrame(() => draw(MOVING));
    const rest = setTimeout(() => draw(RESTING), REST_MS);
    const again = () => draw(RESTING);
    window.addEventListener('resize', again);
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(rest);
      window.removeEventListener('resize', again);
    };
  }, [scene, isMirrored, turned]);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.target instanceof HTMLInputElement) return;
    const by = {
      ArrowUp: [KEY_STEP, 0],
      ArrowDown: [-KEY_STEP, 0],
      ArrowLeft: [0, -KEY_STEP],
      ArrowRight: [0, KEY_STEP],
    }[event.key];
    if (!by) return;
    event.preventDefault();
    turn(by[0] ?? 0, by[1] ?? 0);
  };
  const onPointerMove = (event: PointerEvent) => {
    if (!drag.current) return;
    const [dx, dy] = [event.clientX - drag.current.x, event.clientY - drag.current.y];
    drag.current = { x: event.clientX, y: event.clientY };
    turn(-dy * DRAG, dx * DRAG);
  };
  const drop = () => {
    drag.current = null;
  };
  const larger = (by: number) =>
    setTurned((before) => ({ ...before, larger: Math.max(1, Math.min(MOST_LARGER, before.larger * by)) }));
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: arrow keys anywhere in the view turn it; the sliders say so
    <div onKeyDown={onKeyDown}>
      <canvas
        ref={canvas}
        className={styles['canvas']}
        role="img"
        aria-label={scene.text}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          drag.current = { x: event.clientX, y: event.clientY };
        }}
        onPointerMove={onPointerMove}
        onPointerUp={drop}
        onPointerCancel={drop}
      />
      <p className={styles['said']}>
        {scene.text} <span className="soft">Drag the picture, or use the arrow keys.</span>
      </p>
      <div className={styles['sliders']}>
        <label htmlFor={`${id}roll`}>Roll about its length</label>
        <input
          id={`${id}roll`}
          type="range"
          min={-180}
          max={180}
          step={KEY_STEP}
          value={Math.round(turned.roll)}
          aria-valuetext={rollWords(turned)}
          onChange={(event) => setTurned({ ...turned, roll: Number(event.currentTarget.value) })}
        />
        <label htmlFor={`${id}swing`}>Swing its ends</label>
        <input
          id={`${id}swing`}
          type="range"
          min={-MOST_SWING}
          max={MOST_SWING}
          step={KEY_STEP}
          value={Math.round(turned.swing)}
          aria-valuetext={swingWords(turned)}
          onChange={(event) => setTurned({ ...turned, swing: Number(event.currentTarget.value) })}
        />
      </div>
      <div className="row">
        <button type="button" className="quiet" onClick={() => setTurned(AS_AT_FIRST)}>
          As at first
        </button>
        <button type="button" className="quiet" onClick={() => turn(180, 0)}>
          Turn over
        </button>
        <button type="button" className="quiet" onClick={() => larger(1.35)}>
          Larger
        </button>
        <button type="button" className="quiet" onClick={() => larger(1 / 1.35)}>
          Smaller
        </button>
      </div>
    </div>
  );
}

const rollWords = ({ roll }: Turned): string => {
  const degrees = Math.round(roll);
  const side = Math.abs(degrees) > 90 ? 'seen from the back' : 'seen from the front';
  return degrees === 0 ? 'as in the picture' : `rolled by ${degrees} degrees, ${side}`;
};
const swingWords = ({ swing }: Turned): string => {
  const degrees = Math.round(swing);
  if (degrees === 0) return 'level';
  return `${degrees > 0 ? 'right' : 'left'} end ${Math.abs(degrees)} degrees towards you`;
};

interface Painted {
  readonly scene: Scene;
  readonly isMirrored: boolean;
  readonly turned: Turned;
  readonly pieces: number;
}

function paint(canvas: HTMLCanvasElement, { scene, isMirrored, turned, pieces }: Painted): void {
  const context = canvas.getContext('2d');
  if (!context) return;
  const sharp = Math.min(2, window.devicePixelRatio || 1);
  const { width, height } = canvas.getBoundingClientRect();
  canvas.width = Math.round(width * sharp);
  canvas.height = Math.round(height * sharp);
  const fit = fitOf(scene, width, height) * turned.larger * sharp;
  const straight = turnedBy(scene.view, turned.roll, turned.swing);
  const [rx, ry, rz] = straight.right;
  const view = isMirrored ? { ...straight, right: [-rx, -ry, -rz] as const } : straight;
  const middle = middleOf(scene);
  const [x, y] = [dot(view.right, middle), -dot(view.up, middle)];
  paintScene(context, scene, {
    view,
    scale: fit,
    middle: [canvas.width / 2 - x * fit, canvas.height / 2 - y * fit],
    piecesARing: pieces,
  });
}

function middleOf({ rings }: Scene): Vector {
  const middle = (axis: 0 | 1 | 2): number => {
    const at = rings.map(({ centre }) => centre[axis]);
    return (Math.min(...at) + Math.max(...at)) / 2;
  };
  return [middle(0), middle(1), middle(2)];
}

/** As large as it fits whichever way it is turned. */
function fitOf(scene: Scene, width: number, height: number): number {
  const { view } = scene;
  const middle = middleOf(scene);
  let [long, wide] = [0, 0];
  for (const { centre, radius, wire } of scene.rings) {
    const off = [centre[0] - middle[0], centre[1] - middle[1], centre[2] - middle[2]] as const;
    const along = Math.abs(dot(view.right, off));
    const across = Math.hypot(dot(view.up, off), dot(view.toward, off));
    long = Math.max(long, along + radius + wire);
    wide = Math.max(wide, across + radius + wire);
  }
  return Math.min(width / 2 / Math.max(long, 1e-6), height / 2 / Math.max(wide, 1e-6));
}
