/**
 * Whether a ring sequence can be made as it is told: every ring that a
 * placement passes is there, every ring ends up held, the repeat is one, and
 * the ends are what they are said to be. It follows the order of adding only;
 * whether a hand or pliers get there it cannot know.
 */
import { type EndFault, endFaults } from './ends.ts';
import { type Piece, type Placement, SEQUENCE_PARTS, type SequencePart } from './placement.ts';
import { repeatsShowing, unitOf, unitsOf } from './runs.ts';
import { type Woven, type WovenRing, walkPiece } from './walk.ts';

/** What is wrong; passes are counted from 1. */
export type PieceProblem =
  /** The row has only `there` rings at that moment; `repeat` from 1, null outside the repeat. */
  | {
      readonly code: 'ring-not-there';
      readonly pass: number;
      readonly row: string;
      readonly nth: number;
      readonly there: number;
      readonly repeat: number | null;
    }
  | { readonly code: 'laid-not-there' }
  /** The same ring is passed twice, or passed and carried. */
  | { readonly code: 'passed-twice'; readonly pass: number; readonly first: number }
  | { readonly code: 'nothing-opened' }
  /** Every repeat passes one and the same ring, or another pattern of rings than the repeat before. */
  | { readonly code: 'not-periodic'; readonly pass: number; readonly how: 'same ring' | 'other rings' }
  /** The piece falls apart: nothing holds what this placement adds. */
  | { readonly code: 'not-joined'; readonly rings: number }
  | ({ readonly code: 'ends-otherwise' } & EndFault)
  /** `endsAfter` names a placement that the last unit does not have. */
  | { readonly code: 'end-not-there' }
  | { readonly code: 'run-without-unit'; readonly run: string; readonly unit: string };

export type PieceFault = PieceProblem & {
  /** The placement where it starts; null where it is about the whole piece. */
  readonly placementId: string | null;
};

export interface PieceCheck {
  /** In the order of the piece. */
  readonly faults: readonly PieceFault[];
  /** Placements that do not tell which rings they pass: with one of them links are not known, and little is checked. */
  readonly untold: number;
}

/** Repeats walked to see whether the repeat is one: more than any ring reaches back. */
const REPEATS_WALKED = 12;

/** Every fault of a piece, each once, where it starts. A piece without placements has none. */
export function checkPiece(piece: Piece): PieceCheck {
  const woven = walkPiece(piece, repeatsShowing(piece));
  const untold = untoldOf(piece);
  const inside = [
    ...planFaults(piece),
    ...turnFaults(woven),
    ...unitsOf(piece).flatMap((unit) => periodFaults(piece, unit)),
    ...(untold === 0 ? joinFaults(woven) : []),
  ];
  // Ends follow from everything before them: where that is wrong, they would only repeat it.
  const faults = inside.length > 0 || untold > 0 ? inside : statedEndFaults(piece, woven);
  return { faults: onceEach(faults, piece), untold };
}

/** The first ring of a piece has nothing to pass; every other opened ring passes something, and should say what. */
function untoldOf(piece: Piece): number {
  const [, ...later] = SEQUENCE_PARTS.flatMap((part) => piece[part]);
  const unnamed = SEQUENCE_PARTS.flatMap((part) => piece[part]).filter(({ passes }) =>
    passes.some(({ ring }) => !ring),
  );
  const passless = later.filter(({ opened, passes }) => opened !== null && passes.length === 0);
  return unnamed.length + passless.length;
}

const planFaults = (piece: Piece): readonly PieceFault[] => [
  ...(piece.runs ?? [])
    .filter((run) => unitOf(piece, run.unit).length === 0)
    .map(({ id, unit }): PieceFault => ({ code: 'run-without-unit', run: id, unit, placementId: null })),
  ...(piece.endsAfter &&
  !unitOf(piece, piece.runs?.at(-1)?.unit ?? '').some(({ id }) => id === piece.endsAfter)
    ? [{ code: 'end-not-there', placementId: null } as const]
    : []),
];

/** Faults of single turns: rings that are not there, and rings passed twice. */
function turnFaults(woven: Woven): readonly PieceFault[] {
  const rowSizes = new Map<string, number>();
  return woven.turns.flatMap((turn) => {
    const { placement } = turn;
    const placementId = placement.id;
    const faults: PieceFault[] = [];
    if (placement.opened === null && placement.passes.length > 0)
      faults.push({ code: 'nothing-opened', placementId });
    placement.passes.forEach(({ ring }, index) => {
      if (!ring) return;
      const found = turn.passed[index] ?? null;
      if (found === null)
        faults.push({
          code: 'ring-not-there',
          placementId,
          pass: index + 1,
          row: ring.row,
          nth: ring.nth,
          there: rowSizes.get(ring.row) ?? 0,
          repeat: turn.repeat === null ? null : turn.repeat + 1,
        });
      const first = turn.passed.indexOf(found);
      if (found !== null && first < index)
        faults.push({ code: 'passed-twice', placementId, pass: index + 1, first: first + 1 });
    });
    if (turn.laid.includes(null)) faults.push({ code: 'laid-not-there', placementId });
    for (const ring of [turn.opened, ...turn.carried]) {
      const row = ring === null ? undefined : woven.rings[ring]?.row;
      if (row !== undefined) rowSizes.set(row, (rowSizes.get(row) ?? 0) + 1);
    }
    return faults;
  });
}

/**
 * Walks one unit alone, often, and compares two late repeats: each pass must
 * reach the same ring of the same earlier repeat. A pass that reaches what the
 * start laid every time hangs the whole piece on one ring.
 */
function periodFaults(piece: Piece, unit: string): readonly PieceFault[] {
  const alone = unitOf(piece, unit).map(({ unit: _, ...placement }) => placement);
  const woven = walkPiece({ start: piece.start, repeat: alone, finishing: [] }, REPEATS_WALKED);
  return alone.flatMap((placement) =>
    placement.passes.flatMap(({ ring }, pass): readonly PieceFault[] => {
      if (!ring) return [];
      const [before, last] = [REPEATS_WALKED - 2, REPEATS_WALKED - 1].map((repeat) =>
        reached(woven, placement, pass, repeat),
      );
      if (!before || !last) return [];
      const fault = { code: 'not-periodic', pass: pass + 1, placementId: placement.id } as const;
      if (before.ring.index === last.ring.index) return [{ ...fault, how: 'same ring' }];
      return before.reaches === last.reaches ? [] : [{ ...fault, how: 'other rings' }];
    }),
  );
}

/** The ring that a pass reaches in one repeat, and where it stands seen from there. */
function reached(
  woven: Woven,
  placement: Placement,
  pass: number,
  repeat: number,
): { readonly ring: WovenRing; readonly reaches: string } | null {
  const turn = woven.turns.find((each) => each.repeat === repeat && each.placement.id === placement.id);
  const ring = woven.rings[turn?.passed[pass] ?? -1];
  const origin = ring && woven.turns[ring.turn];
  if (!ring || !origin) return null;
  const back = origin.repeat === null ? 'start' : repeat - origin.repeat;
  return { ring, reaches: `${origin.placement.id} ${ring.slot} ${back}` };
}

/** Rings that nothing joins to the first one, at the placement that brought the first of them. */
function joinFaults({ rings, links, turns }: Woven): readonly PieceFault[] {
  const parent = rings.map(({ index }) => index);
  const rootOf = (ring: number): number => {
    let root = ring;
    while (parent[root] !== root) root = parent[root] ?? root;
    parent[ring] = root;
    return root;
  };
  for (const { by, through } of links) parent[rootOf(by)] = rootOf(through);
  const loose = rings.filter(({ index }) => rootOf(index) !== rootOf(0));
  const first = loose[0];
  const placement = first && turns[first.turn]?.placement;
  return placement
    ? [
        {
          code: 'not-joined',
          rings: loose.filter(({ turn }) => turn === first.turn).length,
          placementId: placement.id,
        },
      ]
    : [];
}

function statedEndFaults(piece: Piece, woven: Woven): readonly PieceFault[] {
  if (!piece.ends || woven.rings.length === 0) return [];
  return endFaults(woven, piece.ends).map((fault) => ({
    code: 'ends-otherwise',
    ...fault,
    placementId: (fault.end === 'first' ? woven.turns[0] : woven.turns.at(-1))?.placement.id ?? null,
  }));
}

/** One fault of a kind a placement and pass, in the order of the piece. */
function onceEach(faults: readonly PieceFault[], piece: Piece): readonly PieceFault[] {
  const seen = new Map<string, PieceFault>();
  for (const fault of faults) {
    const key = [
      fault.placementId,
      fault.code,
      'pass' in fault ? fault.pass : '',
      'end' in fault ? fault.end : '',
    ];
    const full = 'asked' in fault ? [...key, fault.asked.row, fault.asked.nth] : key;
    if (!seen.has(full.join('/'))) seen.set(full.join('/'), fault);
  }
  const order = SEQUENCE_PARTS.flatMap((part: SequencePart) => piece[part].map(({ id }) => id));
  const placeOf = (fault: PieceFault): number =>
    fault.placementId === null ? -1 : order.indexOf(fault.placementId);
  return [...seen.values()].toSorted((one, other) => placeOf(one) - placeOf(other));
}
