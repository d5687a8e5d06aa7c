/** The shapes of the pieces asked for last: finding one takes a while, and a page asks for many pictures of it. */
import { LRUCache } from 'lru-cache';
import { pictureTexts, sceneOfLesson, shapeOfLesson } from '#lib/lesson/lesson-pictures.ts';
import { type Pictured, shapeKey } from '#lib/lesson/pictured.ts';

const KEPT = 60;

/** Keeps what was worked out for the pieces asked for last. */
function keptFor<Known extends object>(workOut: (content: Pictured) => Known): (content: Pictured) => Known {
  const known = new LRUCache<string, Known>({ max: KEPT });
  return (content) => {
    const key = shapeKey(content);
    const found = known.get(key) ?? workOut(content);
    known.set(key, found);
    return found;
  };
}

/** The shape of a lesson's piece. */
export const keptShape = keptFor(shapeOfLesson);

/** Placements that are seen in space, and so can be turned: of others the flat scheme is all there is. */
export const keptTurnable = keptFor(
  (content): ReadonlySet<string> =>
    new Set(
      [...pictureTexts(content).keys()].filter(
        (of) => sceneOfLesson(content, keptShape, { of, roll: 0, side: 'front' }) !== null,
      ),
    ),
);
