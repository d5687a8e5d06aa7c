/** Answers with a picture of a lesson; the shapes asked for last are kept, as finding one takes a while. */
import { z } from 'zod';
import { answerText } from '#app/http/answer-text.ts';
import { fault } from '#app/http/with-member.ts';
import {
  drawLesson,
  type Foretold,
  foretoldOf,
  type PictureAsked,
  shapeOfLesson,
} from '#lib/lesson/lesson-pictures.ts';
import { type Pictured, shapeKey } from '#lib/lesson/pictured.ts';
import type { PieceShapeFault } from '#lib/weave/space/piece-in-space.ts';

const query = z.object({
  roll: z.coerce.number().int().multipleOf(15).min(0).max(345).default(0),
  side: z.enum(['front', 'back']).default('front'),
});

const KEPT = 60;
const shapes = new Map<string, ReturnType<typeof shapeOfLesson>>();

/** The shape of a lesson's piece, found once for as long as it is among those asked for last. */
function keptShape(content: Pictured): ReturnType<typeof shapeOfLesson> {
  const key = shapeKey(content);
  const shape = shapes.get(key) ?? shapeOfLesson(content);
  shapes.delete(key);
  shapes.set(key, shape);
  const [oldest] = shapes.keys();
  if (shapes.size > KEPT && oldest !== undefined) shapes.delete(oldest);
  return shape;
}

/** @param file `ID.svg` of a placement, or `piece.svg` */
export function answerPicture(request: Request, content: Pictured, file: string, cache: string): Response {
  const asked = query.safeParse(Object.fromEntries(new URL(request.url).searchParams));
  if (!asked.success || !file.endsWith('.svg')) return fault(404, 'not-found');
  const picture = drawLesson(content, keptShape(content), { of: file.slice(0, -4), ...asked.data });
  return picture
    ? answerText(request, picture.svg, { type: 'image/svg+xml; charset=utf-8', cache })
    : fault(404, 'not-found');
}

/** The pictures of one making, by what they show, and what its shape foretells or why there is none. */
export interface PicturesOfMaking {
  readonly pictures: Readonly<Record<string, { readonly svg: string; readonly text: string }>>;
  readonly foretold: Foretold | null;
  readonly fault: PieceShapeFault | null;
}

export function picturesOf(content: Pictured, turned: Omit<PictureAsked, 'of'>): PicturesOfMaking {
  const shape = keptShape(content);
  const placements = [...content.start, ...content.repeat, ...content.finishing];
  const pictures = ['piece', ...placements.map(({ id }) => id)].flatMap((of) => {
    const picture = drawLesson(
      content,
      shape,
      of === 'piece' ? { of, ...turned } : { of, roll: 0, side: 'front' },
    );
    return picture ? [[of, picture] as const] : [];
  });
  return {
    pictures: Object.fromEntries(pictures),
    foretold: shape.ok ? foretoldOf(shape.value) : null,
    fault: shape.ok ? null : shape.fault,
  };
}
