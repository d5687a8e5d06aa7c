/** A picture in words, from the very facts that it is drawn from. */
import type { Stretch } from '../runs.ts';
import type { Woven, WovenTurn } from '../walk.ts';
import type { RingLine } from './ring-line.ts';

/** What each ring kind is called, its colour, `#rrggbb`, and the line that it bears. */
export type KindLooks = ReadonlyMap<
  string,
  { readonly name: string; readonly colour: string; readonly line?: RingLine }
>;

export interface StepSaid {
  readonly woven: Woven;
  readonly turn: WovenTurn;
  readonly kinds: KindLooks;
}

const bareName = (name: string): string => name.trim().replace(/\s*rings?$/i, '');

function ringsOf(kind: string, count: number, kinds: KindLooks): string {
  const bare = bareName(kinds.get(kind)?.name ?? '');
  const noun = count === 1 ? 'ring' : 'rings';
  return bare === '' ? noun : `${bare} ${noun}`;
}

const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

const byNumber = (rings: readonly number[]): string => listed(rings.map((ring) => String(ring + 1)));

/** Rings by their numbers: `ring 4`, `rings 4 and 5`. */
const numbered = (rings: readonly number[]): string =>
  `${rings.length === 1 ? 'ring' : 'rings'} ${byNumber(rings)}`;

/** Neighbours that are alike, together. */
function grouped<T>(things: readonly T[], areAlike: (a: T, b: T) => boolean): readonly (readonly T[])[] {
  const groups: T[][] = [];
  for (const thing of things) {
    const last = groups.at(-1);
    if (last?.[0] !== undefined && areAlike(last[0], thing)) last.push(thing);
    else groups.push([thing]);
  }
  return groups;
}

/** `Opened large ring 6 enters, from the back, rings 4 and 5; carries small rings 7 and 8, entered from the front.` */
export function stepWords({ woven, turn, kinds }: StepSaid): string {
  const kindOf = (ring: number): string => woven.rings[ring]?.ringKind ?? '';
  const named = (rings: readonly number[]): string =>
    `${ringsOf(kindOf(rings[0] ?? -1), rings.length, kinds)} ${byNumber(rings)}`;
  if (turn.opened === null) {
    const said = grouped(turn.carried, (a, b) => kindOf(a) === kindOf(b)).map(named);
    return said.length === 0
      ? 'Nothing is added.'
      : `Laid out, closed: ${listed(said)}.${linesWords(kinds, turn.carried.map(kindOf))}`;
  }
  const clauses = [`Opened ${named([turn.opened])}`];
  const passes = turn.placement.passes.flatMap(({ from }, at) => {
    const ring = turn.passed[at] ?? null;
    return ring === null ? [] : [{ from, ring }];
  });
  const entered = grouped(passes, (a, b) => a.from === b.from).map(
    (run) => `from the ${run[0]?.from}, ${numbered(run.map(({ ring }) => ring))}`,
  );
  if (entered.length > 0) clauses.push(` enters, ${entered.join('; then, ')}`);
  const sideOf = (ring: number): string =>
    woven.links.find((link) => link.by === turn.opened && link.through === ring)?.from ?? '';
  const carried = grouped(turn.carried, (a, b) => kindOf(a) === kindOf(b) && sideOf(a) === sideOf(b)).map(
    (rings) => {
      const side = sideOf(rings[0] ?? -1);
      return side === '' ? named(rings) : `${named(rings)}, entered from the ${side}`;
    },
  );
  // Each with a comma of its own, so that it is clear where the next one begins.
  if (carried.length > 0) clauses.push(`${entered.length > 0 ? ';' : ''} carries ${carried.join(', and ')}`);
  const shown = [turn.opened, ...turn.carried].map(kindOf);
  return `${clauses.join('')}.${lieWords(turn)}${linesWords(kinds, shown)}`;
}

/** How what was added is laid, as a sentence of its own; empty where it is as it falls. */
function lieWords({ placement, laid }: WovenTurn): string {
  const known = laid.filter((ring) => ring !== null);
  const rings = known.length === 0 ? 'what was added' : numbered(known);
  switch (placement.lie) {
    case 'as it falls':
      return '';
    case 'fold back':
      return ` Then fold back ${rings}.`;
    case 'part':
      return ` Then part ${rings}.`;
    case 'through between':
      return known.length === 0 ? ' It goes through between the pair.' : ` It goes through between ${rings}.`;
    case 'over':
    case 'under':
      return ` It lies ${placement.lie} ${known.length === 0 ? 'the one before' : rings}.`;
  }
}

/** Which of some ring kinds bear a line in pictures, as sentences; empty where none does. */
export const linesWords = (kinds: KindLooks, shown: Iterable<string>): string =>
  [...new Set(shown)]
    .flatMap((kind) => {
      const line = kinds.get(kind)?.line;
      const rings = ringsOf(kind, 2, kinds);
      if (!line) return [];
      return [
        ` ${rings.charAt(0).toUpperCase()}${rings.slice(1)} bear a ${line === 'dashed' ? 'dashed ' : ''}line.`,
      ];
    })
    .join('');

/** What the finished piece shows: how many rings, and of which kind. */
export function finishedWords(woven: Woven, kinds: KindLooks): string {
  const counts = new Map<string, number>();
  for (const { ringKind } of woven.rings) counts.set(ringKind, (counts.get(ringKind) ?? 0) + 1);
  const all = woven.rings.length;
  const [first = ['', 0]] = counts;
  // A closed group of rings has no length to be pulled to.
  const how = woven.turns.some(({ repeat }) => repeat !== null) ? ', pulled taut' : '';
  if (counts.size < 2)
    return `A piece of ${all} ${ringsOf(first[0], all, kinds)}${how}.${linesWords(kinds, counts.keys())}`;
  const parts = [...counts].map(([kind, count]) => `${count} ${ringsOf(kind, count, kinds)}`);
  return `A piece of ${all} rings${how}: ${listed(parts)}.${linesWords(kinds, counts.keys())}`;
}

/**
 * How colours and units fall along the piece: `11 repeats as described, then 3
 * with small blue rings.`
 *
 * @param main what the main unit is called, where there are others
 */
export function runsWords(stretches: readonly Stretch[], kinds: KindLooks, main = ''): string {
  const said = stretches.map(({ run, repeats }, at) => {
    const name = run?.unit || main;
    const unit = name === '' ? '' : ` of ${name}`;
    const how = swapWords(run, kinds) || (unit === '' ? ' as described' : '');
    return `${repeats}${at === 0 ? (repeats === 1 ? ' repeat' : ' repeats') : ''}${unit}${how}`;
  });
  return said.length === 0 ? '' : `${said.join(', then ')}.`;
}

/** ` with small blue rings`; empty where no other rings stand in. */
function swapWords(run: Stretch['run'], kinds: KindLooks): string {
  const swaps = (run?.swaps ?? []).map(({ by }) => ringsOf(by, 2, kinds));
  return swaps.length > 0 ? ` with ${listed(swaps)}` : '';
}

/** A part of a piece that is a weave of its own. */
export interface SaidSection {
  readonly name: string;
  readonly stretches: readonly Stretch[];
  readonly isDrawn: boolean;
}

/** `Its 3 parts follow one another, each drawn by itself: part 1, 5 repeats of byzantine; …`; where parts come round again, of one round. */
export function sectionsWords(
  sections: readonly SaidSection[],
  { of, kinds }: { readonly of: number; readonly kinds: KindLooks },
): string {
  const said = sections.map(({ name, stretches, isDrawn }, at) => {
    const runs = stretches.map(
      ({ run, repeats }, stretch) =>
        `${repeats}${stretch === 0 ? ` ${repeats === 1 ? 'repeat' : 'repeats'} of ${name}` : ''}${swapWords(run, kinds) || (stretch === 0 ? '' : ' as described')}`,
    );
    return `part ${at + 1}, ${runs.join(', then ')}${isDrawn ? '' : ', which cannot be drawn'}`;
  });
  const again = of > sections.length ? '; and so on in the same way' : '';
  return `Its ${of} parts follow one another, each drawn by itself: ${said.join('; ')}${again}. A dashed line stands where one part goes over into the next: how the rings lie there is not worked out.`;
}
