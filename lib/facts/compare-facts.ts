/**
 * What was said aloud, set beside what the lesson says in writing: ring kinds,
 * sequence and kit. Only what can be compared is judged; the rest is shown.
 */
import { type KitList, kitFor } from '#lib/kit/kit-list.ts';
import type { Content } from '#lib/lesson/content.ts';
import { gaugeToMm } from '#lib/rings/gauges.ts';
import { formatSize } from '#lib/rings/parse-size.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { countSequence } from '#lib/weave/sequence.ts';
import type { SpokenFact } from './spoken-fact.ts';

export type Standing = 'agrees' | 'contradicts' | 'nothing to compare';

export interface ComparedFact {
  readonly fact: SpokenFact;
  readonly standing: Standing;
  /** What the lesson has in its place, in words: `18 SWG (1.2192 mm)`, `52 of 104 opened`; empty where nothing. */
  readonly written: string;
  /** Names of the ring kinds that it may be said of; empty where it is said of all. */
  readonly names: readonly string[];
}

/** Sizes said by ear are rounded: `about one point two millimetres` is 1.2192. */
const SIZE_SHARE = 0.04;
const RATIO_OFF = 0.11;

type Compared = readonly [Standing, string];
const NOTHING: Compared = ['nothing to compare', ''];

export function compareFacts(facts: readonly SpokenFact[], content: Content): readonly ComparedFact[] {
  return facts.map((fact) => {
    const kinds = content.ringKinds.filter(({ id }) => fact.ringKinds.includes(id));
    const [standing, written] = compare(fact, kinds, content);
    return {
      fact,
      standing,
      written,
      names: kinds.length < content.ringKinds.length ? kinds.map(({ name }) => name) : [],
    };
  });
}

function compare(fact: SpokenFact, kinds: readonly RingKind[], content: Content): Compared {
  switch (fact.kind) {
    case 'wire':
    case 'inner diameter':
      return compareSize(fact, kinds);
    case 'aspect ratio':
      return anyOf(
        kinds.map((kind) => sizesOf(kind).aspectRatio),
        (ratio) => Math.abs(ratio - fact.value) <= RATIO_OFF,
        (ratio) => ratio.toFixed(1),
      );
    case 'repeats':
      return compareRepeats(fact, content);
    case 'rings':
      return compareCount(fact, content);
    case 'share prepared':
      return compareShare(fact, content);
    case 'metal or colour':
      return ['contradicts', content.ringKinds.map(({ name }) => name).join(', ')];
  }
}

/** Agrees where one does; contradicts where there are some and none does. */
function anyOf<T>(some: readonly T[], agrees: (one: T) => boolean, written: (one: T) => string): Compared {
  const hit = some.find(agrees);
  if (hit !== undefined) return ['agrees', written(hit)];
  return some.length === 0 ? NOTHING : ['contradicts', [...new Set(some.map(written))].join(', ')];
}

function compareSize(fact: SpokenFact, kinds: readonly RingKind[]): Compared {
  const sizes = kinds.map((kind) => (fact.kind === 'wire' ? kind.wire : kind.innerDiameter));
  if (/gauge$/.test(fact.stated)) return anyOf(sizes, (size) => gaugeFits(fact, size), formatSize);
  const measured = kinds.map((kind) => ({
    size: fact.kind === 'wire' ? kind.wire : kind.innerDiameter,
    kind,
  }));
  return anyOf(
    measured,
    ({ size, kind }) =>
      [size.mm, fact.kind === 'wire' ? null : kind.measuredInnerMm].some(
        (mm) => mm !== null && near(mm, fact.value),
      ),
    ({ size }) => formatSize(size),
  );
}

const near = (mm: number, said: number): boolean => Math.abs(mm - said) <= Math.max(0.05, mm * SIZE_SHARE);

/** A gauge fits by its number where the lesson states one in that system, else by its millimetres. */
function gaugeFits(fact: SpokenFact, size: RingKind['wire']): boolean {
  const stated = /^(\S+) (SWG|AWG)$/.exec(size.stated);
  if (stated && (fact.system === null || fact.system === stated[2])) return Number(stated[1]) === fact.value;
  const systems = fact.system === 'SWG' || fact.system === 'AWG' ? [fact.system] : (['SWG', 'AWG'] as const);
  return systems.some((system) => {
    const mm = gaugeToMm(system, fact.value);
    return mm !== null && near(size.mm, mm);
  });
}

const kitsOf = (content: Content): readonly { readonly name: string; readonly kit: KitList }[] =>
  content.sizes.flatMap(({ name, bodyMm }) => {
    const kit = kitFor(content, bodyMm);
    return kit.ok ? [{ name, kit: kit.value }] : [];
  });

function compareRepeats(fact: SpokenFact, content: Content): Compared {
  const kits = kitsOf(content).filter(({ name }) => name === fact.size);
  return anyOf(
    kits,
    ({ kit }) => kit.repeats === fact.value,
    ({ name, kit }) => `${kit.repeats} repeats for ${name}`,
  );
}

function compareCount(fact: SpokenFact, content: Content): Compared {
  const all = fact.ringKinds.length === content.ringKinds.length;
  const ofKind = new Set(fact.ringKinds);
  if (fact.size !== null) {
    const lines = kitsOf(content)
      .filter(({ name }) => name === fact.size)
      .flatMap(({ kit }) => kit.rings.filter(({ ringKind }) => ofKind.has(ringKind.id)));
    const counts = lines.map((line) => ({
      name: line.ringKind.name,
      count: fact.prepared === null ? line.net : line[fact.prepared],
      spare: fact.prepared === null ? line.issued : -1,
    }));
    const sum = { name: 'all', count: counts.reduce((total, { count }) => total + count, 0), spare: -1 };
    return countOf(all ? [sum] : counts.length > 1 ? [...counts, sum] : counts, fact);
  }
  if (!fact.ofRepeat || content.repeat.length === 0) return NOTHING;
  const counts = [...countSequence(content)].flatMap(([id, { repeat }]) =>
    ofKind.has(id)
      ? [
          {
            name: nameOf(content, id),
            count: fact.prepared === null ? repeat.opened + repeat.closed : repeat[fact.prepared],
            spare: -1,
          },
        ]
      : [],
  );
  const sum = {
    name: 'each repeat',
    count: counts.reduce((total, { count }) => total + count, 0),
    spare: -1,
  };
  return countOf(all ? [sum] : counts.length > 1 ? [...counts, sum] : counts, fact);
}

const countOf = (
  counts: readonly { readonly name: string; readonly count: number; readonly spare: number }[],
  fact: SpokenFact,
): Compared =>
  anyOf(
    counts,
    ({ count, spare }) => count === fact.value || spare === fact.value,
    ({ name, count }) => `${count} (${name})`,
  );

const nameOf = (content: Content, id: string): string =>
  content.ringKinds.find((kind) => kind.id === id)?.name ?? '';

/** `half of them open`: agrees where the kits come within one ring in twenty of it. */
function compareShare(fact: SpokenFact, content: Content): Compared {
  const { prepared } = fact;
  if (prepared === null) return NOTHING;
  return anyOf(
    kitsOf(content).filter(({ kit }) => kit.totals.net > 0),
    ({ kit }) => Math.abs(kit.totals[prepared] / kit.totals.net - fact.value) <= 0.05,
    ({ name, kit }) => `${kit.totals[prepared]} of ${kit.totals.net} ${prepared} for ${name}`,
  );
}
