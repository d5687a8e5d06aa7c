/** What of a lesson its computed pictures depend on; light enough for any screen. */
import { sizesOf } from '#lib/rings/ring.ts';
import type { KindLooks } from '#lib/weave/picture/say-step.ts';
import type { OwnShapes } from '#lib/weave/space/own-weave.ts';
import { type Content, content as contentSchema } from './content.ts';
import { ringLines } from './ring-lines.ts';

/** What of a lesson its pictures are computed from. */
export const pictured = contentSchema
  .pick({
    start: true,
    repeat: true,
    finishing: true,
    runs: true,
    endsAfter: true,
    ends: true,
    ringKinds: true,
    leaning: true,
  })
  // What the lesson calls its weave: its sequence is held against that.
  .extend({ weave: contentSchema.shape.weave.default('') });
export type Pictured = Pick<Content, keyof typeof pictured.shape> & {
  /** What is known of the shapes of her own sequences; absent: nobody looked. Never part of what is sent or stored. */
  readonly own?: OwnShapes | undefined;
};

/** The parts of a lesson that its pictures are computed from. */
export const PICTURED = pictured.keyof().options;

/** What each ring kind is called and looks like in pictures. */
export function looksOf({ ringKinds }: Pick<Pictured, 'ringKinds'>): KindLooks {
  const lines = ringLines(ringKinds);
  return new Map(
    ringKinds.map(({ id, name, colourCode }) => {
      const line = lines.get(id);
      return [id, { name, colour: colourCode, ...(line && { line }) }];
    }),
  );
}

/** All that the shape of a lesson depends on, as text: equal texts have equal shapes. */
export const shapeKey = ({ start, repeat, finishing, ringKinds, leaning, own }: Pictured): string =>
  JSON.stringify([
    [start, repeat, finishing].map((part) =>
      part.map(({ id, opened, row, unit, passes, carries, lie, lays }) => [
        id,
        opened,
        row,
        unit,
        passes,
        carries,
        lie,
        lays,
      ]),
    ),
    ringKinds.map((kind) => [kind.id, sizesOf(kind).innerMm, sizesOf(kind).wireMm]),
    leaning,
    ownStates(own),
  ]);

/** What is known of her own sequences, as data to compare. */
export const ownStates = (own: OwnShapes | undefined): readonly (readonly [string, string])[] =>
  [...(own ?? [])].map(([key, { state }]) => [key, state]);
