/**
 * The sections of a lesson's piece: runs that follow one another and are one
 * weave in rings of the same sizes. Each has a shape of its own; how one goes
 * over into the next is not worked out.
 */
import { inRun, planRuns, type Stretch, unitOf } from '#lib/weave/runs.ts';
import { pieceCell } from '#lib/weave/space/piece-cell.ts';
import { weaveOfPiece } from '#lib/weave/space/piece-in-space.ts';
import { measuresOf } from './measures.ts';
import type { Pictured } from './pictured.ts';
import { unitAlone } from './unit-alone.ts';

export interface Section {
  /** Never empty. */
  readonly stretches: readonly Stretch[];
  readonly unit: string;
  readonly repeats: number;
  /** The lesson with the section's unit as its only repeat, in the sizes of its rings: its shape is the section's. */
  readonly alone: Pictured;
  /** The section as a piece by itself, in the rings of its runs; start and finishing are there for its rings to be named by. */
  readonly piece: Pictured;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

/** The sections of a piece of `repeats` repeats, in order; none where it has no repeat. */
export function sectionsOf(content: Pictured, repeats: number): readonly Section[] {
  if (content.repeat.length === 0) return [];
  const sizes = measuresOf(content);
  const sizeOf = (kind: string): string => `${sizes.get(kind)?.inner} ${sizes.get(kind)?.wire}`;
  const forms = new Map<string, string>();
  const formOfStretch = ({ run }: Stretch): string => {
    const key = `${run?.unit ?? ''} ${JSON.stringify(run?.swaps ?? [])}`;
    const form = forms.get(key) ?? formOf(aloneIn(content, run, sizeOf), run?.unit ?? '', sizeOf);
    forms.set(key, form);
    return form;
  };
  const groups: Stretch[][] = [];
  for (const stretch of planRuns(content.runs, repeats)) {
    const last = groups.at(-1);
    if (last?.[0] && formOfStretch(last[0]) === formOfStretch(stretch)) last.push(stretch);
    else groups.push([stretch]);
  }
  return groups.map((stretches, at): Section => {
    const run = stretches[0]?.run ?? null;
    const isLast = at === groups.length - 1;
    return {
      stretches,
      unit: run?.unit ?? '',
      repeats: stretches.reduce((sum, each) => sum + each.repeats, 0),
      alone: aloneIn(content, run, sizeOf),
      piece: pieceOf(content, stretches, isLast),
      isFirst: at === 0,
      isLast,
    };
  });
}

/** The unit of a run by itself; its rings are exchanged where others of another size stand in for them. */
function aloneIn(content: Pictured, run: Stretch['run'], sizeOf: (kind: string) => string): Pictured {
  const alone = unitAlone(content, run?.unit ?? '');
  const swaps = run?.swaps.filter(({ ringKind, by }) => sizeOf(ringKind) !== sizeOf(by)) ?? [];
  if (!run || swaps.length === 0) return alone;
  const resized = { ...run, swaps };
  return { ...alone, repeat: alone.repeat.map((placement) => inRun(placement, resized)) };
}

/** The stretches as a whole piece whose main unit is the first one's, so that its shape places them. */
function pieceOf(content: Pictured, stretches: readonly Stretch[], isLast: boolean): Pictured {
  const main = stretches[0]?.run?.unit ?? '';
  const renamed = (unit: string): string => (unit === main ? '' : `${unit} `);
  return {
    ...content,
    repeat: content.repeat.map((each) => ({ ...each, unit: renamed(each.unit ?? '') })),
    finishing: isLast ? content.finishing : [],
    endsAfter: isLast ? content.endsAfter : null,
    runs: stretches.flatMap(({ run, repeats }) =>
      run ? [{ ...run, unit: renamed(run.unit), repeats }] : [],
    ),
  };
}

/** The weave that a unit repeats and the size of its ring at each place, as text; its own name and sizes where none is known. */
function formOf(alone: Pictured, unit: string, sizeOf: (kind: string) => string): string {
  const cell = pieceCell(alone);
  const found = cell && weaveOfPiece(cell, alone.own);
  if (!found) {
    const kinds = alone.repeat.flatMap(({ opened, carries }) => [
      opened ?? '',
      ...carries.map(({ ringKind }) => ringKind),
    ]);
    return `unit ${unit}: ${kinds.map(sizeOf).join(', ')}`;
  }
  const {
    known: { weave },
    match,
  } = found;
  const kinds = cell.rings.map(({ ringKind }) => sizeOf(ringKind));
  // Of one size it matters to no ring where its unit begins.
  if (new Set(kinds).size === 1) return `${weave.id}: ${kinds[0]}`;
  const cells = Math.abs(match.cellsARepeat);
  const places = kinds.map((size, at) => {
    const { ring, cell: inCell } = match.images[at] ?? { ring: -1, cell: 0 };
    return `${ring} ${((inCell % cells) + cells) % cells} ${size}`;
  });
  return `${weave.id}, ${cells}: ${places.sort().join(', ')}`;
}
