'use client';
/** A scene of rings that is turned by dragging, by arrow keys or by two sliders; drawn on a plain canvas. */
import { type PointerEvent, useEffect, useId, useRef, useState } from 'react';
import { scaleOf } from '#lib/weave/picture/draw-rings.ts';
import { drawScene, type Scene } from '#lib/weave/picture/draw-scene.ts';
import { turnedBy } from '#lib/weave/picture/turned-scene.ts';
import type { View } from '#lib/weave/picture/view.ts';
import { dot, type Vector } from '#lib/weave/space/vector.ts';
import { paintScene } from './paint-scene.client.ts';
import styles from './turned-view.module.css';

/** Degrees to one press of an arrow key, and to one pixel of dragging. */
const KEY_STEP = 5;
const DRAG = 0.5;
const MOST_SWING = 90;
/** Straight pieces of a ring while it moves. */
const PIECES = 48;
/** After so long without a movement it is drawn with care. */
const REST_MS = 260;
const MOST_LARGER = 4;

interface Turned {
  readonly roll: number;
  readonly swing: number;
  readonly larger: number;
}

const AS_AT_FIRST: Turned = { roll: 0, swing: 0, larger: 1 };

const wrapped = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;
const clamped = (value: number, most: number): number => Math.max(-most, Math.min(most, value));

/** Roll and swing of each arrow key. */
const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [KEY_STEP, 0],
  ArrowDown: [-KEY_STEP, 0],
  ArrowLeft: [0, -KEY_STEP],
  ArrowRight: [0, KEY_STEP],
};

const turnedOn = (before: Turned, [roll, swing]: readonly [number, number]): Turned => ({
  ...before,
  roll: wrapped(before.roll + roll),
  swing: clamped(before.swing + swing, MOST_SWING),
});

export function TurnedView({ scene, isMirrored }: { readonly scene: Scene; readonly isMirrored: boolean }) {
  const [turned, setTurned] = useState(AS_AT_FIRST);
  const canvas = useRef<HTMLCanvasElement>(null);
  const drag = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const id = useId();
  const turn = (roll: number, swing: number) => setTurned((before) => turnedOn(before, [roll, swing]));
  useEffect(() => {
    let isOver = false;
    const move = () => canvas.current && paintQuickly(canvas.current, { scene, isMirrored, turned });
    const rest = () => {
      if (canvas.current) void paintWithCare(canvas.current, { scene, isMirrored, turned }, () => isOver);
    };
    const frame = requestAnimationFrame(move);
    const timer = setTimeout(rest, REST_MS);
    const again = () => {
      move();
      rest();
    };
    window.addEventListener('resize', again);
    return () => {
      isOver = true;
      cancelAnimationFrame(frame);
      clearTimeout(timer);
      window.removeEventListener('resize', again);
    };
  }, [scene, isMirrored, turned]);
  // Arrow keys turn it wherever in the sheet the focus is, but on the sliders, which have their own.
  useEffect(() => {
    const sheet = canvas.current?.closest('dialog');
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.target instanceof HTMLInputElement) return;
      const by = STEPS[event.key];
      if (!by) return;
      event.preventDefault();
      setTurned((before) => turnedOn(before, by));
    };
    sheet?.addEventListener('keydown', onKeyDown);
    return () => sheet?.removeEventListener('keydown', onKeyDown);
  }, []);
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
    <div>
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
}

interface Place {
  readonly context: CanvasRenderingContext2D;
  readonly view: View;
  /** Canvas units to one unit of the scene. */
  readonly scale: number;
  readonly middle: readonly [number, number];
}

/** The canvas made as fine as the screen, and where the scene stands on it. */
function placeOn(canvas: HTMLCanvasElement, { scene, isMirrored, turned }: Painted): Place | null {
  const context = canvas.getContext('2d');
  if (!context) return null;
  const sharp = Math.min(2, window.devicePixelRatio || 1);
  const { width, height } = canvas.getBoundingClientRect();
  const fine = [Math.round(width * sharp), Math.round(height * sharp)] as const;
  if (canvas.width !== fine[0]) canvas.width = fine[0];
  if (canvas.height !== fine[1]) canvas.height = fine[1];
  const scale = fitOf(scene, width, height) * turned.larger * sharp;
  const straight = turnedBy(scene.view, turned.roll, turned.swing);
  const [rx, ry, rz] = straight.right;
  const view = isMirrored ? { ...straight, right: [-rx, -ry, -rz] as const } : straight;
  const middle = middleOf(scene);
  return {
    context,
    view,
    scale,
    middle: [
      canvas.width / 2 - dot(view.right, middle) * scale,
      canvas.height / 2 + dot(view.up, middle) * scale,
    ],
  };
}

const clear = ({ context }: Place): void =>
  context.clearRect(0, 0, context.canvas.width, context.canvas.height);

function paintQuickly(canvas: HTMLCanvasElement, painted: Painted): void {
  const place = placeOn(canvas, painted);
  if (!place) return;
  clear(place);
  paintScene(place.context, painted.scene, { ...place, piecesARing: PIECES });
}

/** The drawing of the still pictures in this view, put in the place of the quick one unless that has moved on. */
async function paintWithCare(
  canvas: HTMLCanvasElement,
  painted: Painted,
  isOver: () => boolean,
): Promise<void> {
  const place = placeOn(canvas, painted);
  if (!place) return;
  const { elements, box } = drawScene(painted.scene, place.view);
  const [left, top, right, bottom] = [box[0] - ROUND, box[1] - ROUND, box[2] + ROUND, box[3] + ROUND];
  const to = place.scale / scaleOf(painted.scene.rings);
  const [wide, high] = [(right - left) * to, (bottom - top) * to];
  const picture = new Image();
  picture.src = `data:image/svg+xml,${encodeURIComponent(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${left} ${top} ${right - left} ${bottom - top}" width="${wide}" height="${high}">${elements.join('')}</svg>`,
  )}`;
  try {
    await picture.decode();
  } catch {
    // The quick drawing stays.
    return;
  }
  if (isOver()) return;
  clear(place);
  place.context.drawImage(picture, place.middle[0] + left * to, place.middle[1] + top * to, wide, high);
}

/** Room round a drawing for its numbers, in picture units. */
const ROUND = 14;

function middleOf({ rings }: Scene): Vector {
  const middle = (axis: 0 | 1 | 2): number => {
    const at = rings.map(({ ring }) => ring.centre[axis]);
    return (Math.min(...at) + Math.max(...at)) / 2;
  };
  return [middle(0), middle(1), middle(2)];
}

/** As large as it fits whichever way it is turned. */
function fitOf(scene: Scene, width: number, height: number): number {
  const { view } = scene;
  const middle = middleOf(scene);
  let [long, wide] = [0, 0];
  for (const { ring } of scene.rings) {
    const { centre, radius, wire } = ring;
    const off = [centre[0] - middle[0], centre[1] - middle[1], centre[2] - middle[2]] as const;
    const along = Math.abs(dot(view.right, off));
    const across = Math.hypot(dot(view.up, off), dot(view.toward, off));
    long = Math.max(long, along + radius + wire);
    wide = Math.max(wide, across + radius + wire);
  }
  return Math.min(width / 2 / Math.max(long, 1e-6), height / 2 / Math.max(wide, 1e-6));
}
