/** The picture of a whole length and its words: in one where it is one weave, else section after section. */
import { type WeavePicture, wholeOf } from '#lib/weave/picture/draw-piece.ts';
import { scaleOf } from '#lib/weave/picture/draw-rings.ts';
import { finishedWords, runsWords, sectionsWords } from '#lib/weave/picture/say-step.ts';
import { drawSections, type NamedLength } from '#lib/weave/picture/sections-in-lines.ts';
import { drawWholeLength, type Stretched, stretchesOf } from '#lib/weave/picture/whole-length.ts';
import { planRuns, unitsOf } from '#lib/weave/runs.ts';
import { type PieceShapeFault, type PlacedPiece, placePiece } from '#lib/weave/space/piece-in-space.ts';
import { walkPiece } from '#lib/weave/walk.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { hasTooManyRings } from './fits-a-picture.ts';
import { type ShapeOf, weaveOfLesson } from './lesson-pictures.ts';
import { measuresOf } from './measures.ts';
import { looksOf, type Pictured } from './pictured.ts';
import { type Section, sectionsOf } from './sections.ts';

/** A part of a piece that is not drawn, and why. */
export interface NotDrawn {
  /** `2 plain pairs × 3`, as it stands in the picture. */
  readonly label: string;
  readonly fault: PieceShapeFault;
}

export interface WholePicture extends WeavePicture {
  readonly notDrawn: readonly NotDrawn[];
  /** Part after part, as they are several weaves: a taller picture, with names in it. */
  readonly isInParts: boolean;
}

/** The parts of a piece that cannot be drawn; told only where it has several. */
export function partsNotDrawn(content: Pictured, repeats: number, shapeOf: ShapeOf): readonly NotDrawn[] {
  const sections = sectionsOf(content, repeats);
  if (sections.length < 2) return [];
  const labels = labelsOf(content, sections);
  return sections.flatMap(({ alone }, at) => {
    const shape = shapeOf(alone);
    return shape.ok ? [] : [{ label: labels[at] ?? '', fault: shape.fault }];
  });
}

interface WholeAsked {
  readonly repeats: number;
  readonly isMirrored: boolean;
}

/** The whole length of a piece of `repeats` repeats; null where no shape is known or no picture can hold it. */
export function drawWhole(content: Pictured, shapeOf: ShapeOf, asked: WholeAsked): WholePicture | null {
  if (hasTooManyRings(content, asked.repeats)) return null;
  const sections = sectionsOf(content, asked.repeats);
  const [only] = sections;
  if (only && sections.length > 1) return inParts(content, sections, shapeOf, asked);
  const shape = only && shapeOf(only.alone);
  if (!only || !shape?.ok) return null;
  const text = wholeText(content, asked.repeats);
  const placed = placePiece(only.piece, shape.value, asked.repeats, measuresOf(content));
  const whole = wholeOf(placed, shape.value, lookedAt(content, asked), text);
  const picture = drawWholeLength(placed, shape.value, whole);
  return picture && { ...picture, notDrawn: [], isInParts: false };
}

const lookedAt = (content: Pictured, { isMirrored }: WholeAsked) =>
  ({ kinds: looksOf(content), roll: 0, side: 'front', isMirrored }) as const;

function inParts(
  content: Pictured,
  sections: readonly Section[],
  shapeOf: ShapeOf,
  asked: WholeAsked,
): WholePicture | null {
  const sizes = measuresOf(content);
  const placed = sections.map((section) => {
    const shape = shapeOf(section.alone);
    if (!shape.ok) return { section, ready: null };
    const piece = ownRings(section, placePiece(section.piece, shape.value, section.repeats, sizes));
    const whole = wholeOf(piece, shape.value, lookedAt(content, asked), '');
    return { section, ready: { shape: shape.value, piece, whole } };
  });
  const by = scaleOf(placed.flatMap(({ ready }) => ready?.whole.rings ?? []));
  const known = new Map<string, Stretched>();
  const cut = ({ section, ready }: (typeof placed)[number]): Stretched | null => {
    if (!ready) return null;
    const key = `${likeness(section)} ${section.isFirst} ${section.isLast}`;
    const found = known.get(key) ?? stretchesOf(ready.piece, ready.shape, ready.whole, by, `p${known.size}`);
    if (found) known.set(key, found);
    return found;
  };
  const labels = labelsOf(content, sections);
  const named = placed.map(
    (each, at): NamedLength => ({ label: labels[at] ?? '', cut: cut(each) ?? 'missing' }),
  );
  if (named.every((each) => each.cut === 'missing')) return null;
  const notDrawn = partsNotDrawn(content, asked.repeats, shapeOf);
  const round = roundOf(sections);
  const lengths: readonly NamedLength[] = round
    ? [
        ...named.slice(0, round.length),
        { label: `${round.length + 1} to ${round.lastFrom}: the same again`, cut: 'left out' },
        ...named.slice(round.lastFrom),
      ]
    : named;
  const text = wholeText(content, asked.repeats, new Set(notDrawn.map(({ label }) => label)));
  return { ...drawSections(lengths, { text, isMirrored: asked.isMirrored }), notDrawn, isInParts: true };
}

/** Without the rings of the start in all but the first: they are there only so that others can be named. */
function ownRings({ isFirst }: Section, { woven, rings }: PlacedPiece): PlacedPiece {
  if (isFirst) return { woven, rings };
  const own = rings.map((ring, at) =>
    woven.turns[woven.rings[at]?.turn ?? -1]?.part === 'start' ? null : ring,
  );
  return { woven, rings: own };
}

/** Equal for sections that look alike, but for their ends. */
const likeness = ({ stretches }: Section): string =>
  JSON.stringify(stretches.map(({ run, repeats }) => [run?.unit, run?.swaps, repeats]));

/** Rounds from which on only the first and the last are drawn. */
const MANY_ROUNDS = 4;

/** Where the same sections come again and again: how many make one round, and how many there are before the last; null where they do not. */
function roundOf(
  sections: readonly Section[],
): { readonly length: number; readonly lastFrom: number } | null {
  const keys = sections.map(likeness);
  const most = Math.floor(keys.length / MANY_ROUNDS);
  const length = Array.from({ length: most }, (_, at) => at + 1).find((period) =>
    keys.every((key, at) => at < period || key === keys[at - period]),
  );
  return length === undefined ? null : { length, lastFrom: (Math.floor(keys.length / length) - 1) * length };
}

const LONGEST_LABEL = 36;

/** `2 plain pairs × 3`. */
const labelsOf = (content: Pictured, sections: readonly Section[]): readonly string[] =>
  sections.map((section, at) => {
    const count = ` × ${section.repeats}`;
    const name = `${at + 1} ${labelName(content, section).replace(/^the /, '')}`;
    const room = LONGEST_LABEL - count.length;
    return `${name.length > room ? `${name.slice(0, room - 1).trimEnd()}…` : name}${count}`;
  });

/** Of one unit in other rings the rings say more than its name, and are shorter. */
function labelName(content: Pictured, section: Section): string {
  const swaps = section.stretches[0]?.run?.swaps ?? [];
  if (unitsOf(content).length > 1 || swaps.length === 0) return nameOf(section);
  const names = swaps.map(({ by }) => content.ringKinds.find(({ id }) => id === by)?.name.trim() ?? '');
  return [...new Set(names)].join(' + ') || nameOf(section);
}

/** What a section's unit is called; the main one by its weave too, where that is known. */
function nameOf({ unit, alone, piece }: Section): string {
  if (unit !== '') return unit;
  const weave = findWeave(weaveOfLesson(alone) ?? '')?.name.split(',')[0];
  if (unitsOf(piece).length < 2) return weave ?? 'the repeat unit';
  return weave === undefined ? 'the main unit' : `the main unit (${weave})`;
}

/**
 * The text alternative of the picture of a whole length; made without any
 * shape.
 *
 * @param notDrawn labels of parts that are not drawn
 */
export function wholeText(
  content: Pictured,
  repeats: number,
  notDrawn: ReadonlySet<string> = new Set(),
): string {
  const kinds = looksOf(content);
  const all = finishedWords(walkPiece(content, repeats), kinds);
  const sections = sectionsOf(content, repeats);
  if (sections.length < 2) return `${all} ${runsWords(planRuns(content.runs, repeats), kinds)}`;
  const labels = labelsOf(content, sections);
  const round = roundOf(sections);
  const parts = sections.slice(0, round?.length).map((section, at) => ({
    name: nameOf(section),
    stretches: section.stretches,
    isDrawn: !notDrawn.has(labels[at] ?? ''),
  }));
  return `${all} ${sectionsWords(parts, { of: sections.length, kinds })}`;
}
