/** Answers with a picture of a lesson. */
import { createHash } from 'node:crypto';
import { LRUCache } from 'lru-cache';
import { z } from 'zod';
import { answerText } from '#app/http/answer-text.ts';
import { fault } from '#app/http/with-member.ts';
import { type Foretold, foretoldOf } from '#lib/lesson/foretell.ts';
import { drawLesson, type PictureAsked, sceneOfLesson, weaveOfLesson } from '#lib/lesson/lesson-pictures.ts';
import { ownStates, PICTURED, type Pictured } from '#lib/lesson/pictured.ts';
import { proveUnits, type UnitProof } from '#lib/lesson/prove-lesson.ts';
import { drawWhole, type WholePicture } from '#lib/lesson/whole-picture.ts';
import { isWaiting } from '#lib/shapes/know-own-shapes.ts';
import type { WeavePicture } from '#lib/weave/picture/draw-piece.ts';
import type { Scene } from '#lib/weave/picture/draw-scene.ts';
import type { OwnShape } from '#lib/weave/space/own-weave.ts';
import type { PieceShapeFault } from '#lib/weave/space/piece-in-space.ts';
import { keptShape } from './kept-shapes.ts';
import { pngOf, SOCIAL } from './make-png.ts';
import { toBePictured } from './own-shapes.ts';

const query = z.object({
  roll: z.coerce.number().int().multipleOf(15).min(0).max(345).default(0),
  side: z.enum(['front', 'back']).default('front'),
  hand: z.enum(['shown', 'mirrored']).default('shown'),
  /** Of `whole` alone: how many repeats the piece has. */
  repeats: z.coerce.number().int().min(1).max(1_000).default(24),
});

/**
 * @param file `ID.svg` of a placement, `piece.svg`, or `whole.svg` with `?repeats=`; the same with `.png` to
 *   print, `social.png` the piece as networks show it; `ID.json` and `piece.json` to be turned by hand
 */
export async function answerPicture(
  request: Request,
  { content: told, file, kept }: { readonly content: Pictured; readonly file: string; readonly kept: string },
): Promise<Response> {
  const asked = query.safeParse(Object.fromEntries(new URL(request.url).searchParams));
  const [, of, form] = /^(.+)\.(svg|json|png)$/.exec(file) ?? [];
  if (!asked.success || of === undefined) return fault(404, 'not-found');
  const { roll, side, hand, repeats } = asked.data;
  const content = await toBePictured(told);
  // What is drawn while a shape is still sought is soon drawn better.
  const cache = isWaiting(content) ? 'no-cache' : kept;
  const isSocial = form === 'png' && of === 'social';
  const wishes = { of: isSocial ? 'piece' : of, roll, side, isMirrored: hand === 'mirrored' };
  if (form === 'json') {
    const scene = sceneOfLesson(content, keptShape, wishes);
    const type = 'application/json; charset=utf-8';
    return scene ? answerText(request, JSON.stringify(scene), { type, cache }) : fault(404, 'not-found');
  }
  const svg = keptDrawing([content, wishes, repeats], () =>
    of === 'whole'
      ? drawWhole(content, keptShape, { repeats, ...wishes })
      : drawLesson(content, keptShape, wishes),
  );
  if (svg === null) return fault(404, 'not-found');
  if (form === 'png')
    return answerText(request, await pngOf(svg, isSocial ? SOCIAL : null), { type: 'image/png', cache });
  return answerText(request, svg, { type: 'image/svg+xml; charset=utf-8', cache });
}

/** Drawings asked for last, by all that they are drawn from: every pupil's browser asks for the same ten. */
const drawings = new LRUCache<string, string>({
  maxSize: 4_000_000,
  sizeCalculation: ({ length }) => length,
});

/** What was drawn before of the same content with the same wishes, or is drawn now; null where nothing can be. */
function keptDrawing(
  [content, ...wishes]: readonly [Pictured, ...unknown[]],
  draw: () => WeavePicture | null,
): string | null {
  const drawnFrom = [...PICTURED.map((part) => content[part]), ownStates(content.own)];
  const key = createHash('sha256')
    .update(JSON.stringify([drawnFrom, wishes]))
    .digest('base64url');
  const svg = drawings.get(key) ?? draw()?.svg ?? null;
  if (svg !== null) drawings.set(key, svg);
  return svg;
}

/** One picture of a making that is not saved, or what is to be turned; null where there is none. */
export const oneOfMaking = (
  content: Pictured,
  {
    of,
    as,
    repeats,
    isMirrored = false,
  }: {
    readonly of: string;
    readonly as: 'picture' | 'scene';
    readonly repeats: number;
    readonly isMirrored?: boolean;
  },
): WeavePicture | WholePicture | Scene | null => {
  const asked = { of, roll: 0, side: 'front', isMirrored } as const;
  if (as === 'scene') return sceneOfLesson(content, keptShape, asked);
  return of === 'whole'
    ? drawWhole(content, keptShape, { repeats, isMirrored })
    : drawLesson(content, keptShape, asked);
};

/** The pictures of one making, by what they show, and what its shape foretells or why there is none. */
export interface PicturesOfMaking {
  readonly pictures: Readonly<Record<string, { readonly svg: string; readonly text: string }>>;
  readonly foretold: Foretold | null;
  readonly fault: PieceShapeFault | null;
  /** One a unit that can be held against a shape. */
  readonly proofs: readonly UnitProof[];
  /** Shapes of her own sequences, so that the screen can reckon with them too; their keys first. */
  readonly own: readonly (readonly [string, OwnShape])[];
  /** Id of the weave in space that the sequence is or comes nearest to, whether or not its rings fit; null where none is known. */
  readonly weave: string | null;
}

export function picturesOf(content: Pictured, turned: Omit<PictureAsked, 'of'>): PicturesOfMaking {
  const shape = keptShape(content);
  const proofs = proveUnits(content, keptShape);
  const main = proofs.find(({ unit }) => unit === '')?.proof;
  const placements = [...content.start, ...content.repeat, ...content.finishing];
  const pictures = ['piece', ...placements.map(({ id }) => id)].flatMap((of) => {
    const picture = drawLesson(
      content,
      keptShape,
      of === 'piece' ? { of, ...turned } : { of, roll: 0, side: 'front' },
    );
    return picture ? [[of, picture] as const] : [];
  });
  return {
    pictures: Object.fromEntries(pictures),
    foretold: shape.ok ? foretoldOf(shape.value) : null,
    fault: shape.ok ? null : shape.fault,
    proofs,
    own: [...(content.own ?? [])],
    weave: weaveOfLesson(content) ?? (main?.state === 'differs' ? main.weave : null),
  };
}
