/** The shapes of a lesson's own sequences, as far as they are known; screens ask here before they draw. */
import { database } from '#lib/data/database.ts';
import { queue } from '#lib/jobs/queue.ts';
import type { Pictured } from '#lib/lesson/pictured.ts';
import { withOwnShapes } from '#lib/shapes/know-own-shapes.ts';

/** The lesson to draw pictures of. A shape that nobody knows yet is asked of the worker; until then flat schemes stand in. */
export const toBePictured = <P extends Pictured>(content: P): Promise<P> =>
  withOwnShapes({ db: database(), queue, now: () => new Date() }, content);
