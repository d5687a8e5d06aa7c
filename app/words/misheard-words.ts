/** Words for why something is offered, and for what is said aloud against what is written. */
import type { ComparedFact } from '#lib/facts/compare-facts.ts';
import type { Unsaid } from '#lib/facts/never-said.ts';
import type { SpokenFact } from '#lib/facts/spoken-fact.ts';
import type { Reason } from '#lib/glossary/suggestion.ts';

export function reasonWords(reason: Reason): string {
  switch (reason) {
    case 'sound':
      return 'Sounds like it.';
    case 'known confusion':
      return 'Often heard for it.';
    case 'taken before':
      return 'You took this before.';
    case 'no such gauge':
      return 'No wire is sold in that gauge; the number that sounds alike is.';
    case 'links run together':
      return 'A weave’s number of links, run together.';
    case 'point lost':
      return 'Too large for a ring: a point may be lost.';
    case 'kit says otherwise':
      return 'The lesson states the number that sounds alike.';
  }
}

/** `wire 18 gauge`, `44 rings`: a fact in short. */
export function factWords({ kind, stated, system, prepared }: SpokenFact): string {
  switch (kind) {
    case 'wire':
      return `wire ${stated}${/gauge$/.test(stated) ? (system === null ? ', no system' : ` ${system}`) : ''}`;
    case 'inner diameter':
      return `inner diameter ${stated}${system === null ? ', no unit' : ''}`;
    case 'aspect ratio':
      return `aspect ratio ${stated}`;
    case 'rings':
      return `${ringsWords(stated)}${prepared === null ? '' : `, ${prepared}`}`;
    case 'repeats':
      return `${stated} repeats`;
    case 'share prepared':
      return stated;
    case 'metal or colour':
      return `${stated} rings`;
  }
}

/** What the lesson has for it: `44 (large blue)`, `18 SWG (1.2192 mm)`. */
export const writtenWords = ({ fact, written }: ComparedFact): string =>
  fact.kind === 'metal or colour' ? `only ${written}` : written;

/** `wire 16 gauge SWG; the lesson: 18 SWG`. */
export const contradictionWords = (compared: ComparedFact): string =>
  `${factWords(compared.fact)}; the lesson: ${writtenWords(compared)}`;

/** What was wrong and what is right, to begin a correction with: plain values where there is one of each. */
export function valuesToCorrect(compared: ComparedFact): { readonly wrong: string; readonly right: string } {
  const { fact, written } = compared;
  const one = /^([^,(]+?)(?: \([^)]*\)| for [^,]*)?$/.exec(written)?.[1];
  if (one !== undefined && (fact.kind === 'wire' || fact.kind === 'inner diameter')) {
    const system = /gauge$/.test(fact.stated) && fact.system !== null ? ` ${fact.system}` : '';
    return { wrong: `${fact.stated}${system}`, right: one };
  }
  if (one !== undefined && fact.kind === 'rings') {
    return { wrong: ringsWords(fact.stated), right: ringsWords(one) };
  }
  if (one !== undefined && fact.kind === 'repeats') return { wrong: `${fact.stated} repeats`, right: one };
  return { wrong: `I said: “${fact.quote}”`, right: rightWords(compared) };
}

const ringsWords = (count: string): string => `${count} ${count === '1' ? 'ring' : 'rings'}`;

function rightWords({ fact, written, names }: ComparedFact): string {
  const of = names.length > 0 ? ` of ${names.join(', ')}` : '';
  switch (fact.kind) {
    case 'wire':
    case 'inner diameter':
    case 'aspect ratio':
      return `The ${fact.kind}${of} is ${written}.`;
    case 'rings':
      return `It takes ${written}.`;
    case 'repeats':
    case 'share prepared':
      return `It is ${written}.`;
    case 'metal or colour':
      return `The rings of this lesson are ${written}.`;
  }
}

/** One sentence; several names stand with commas between. */
export function unsaidWords({ code, name }: Unsaid): string {
  const of = name.trim() === '' ? 'a ring kind' : name;
  switch (code) {
    case 'wire without system':
      return `The gauge of ${of} is said without its system: the same number means different wires.`;
    case 'wire':
      return `The wire of ${of} is never said.`;
    case 'inner diameter':
      return `The inner diameter of ${of} is never said.`;
    case 'metal':
      return `The metal of ${of} is never said.`;
    case 'colour':
      return `The colour of ${of} is never said: who only listens cannot tell it apart.`;
    case 'count':
      return `How many of ${of} are needed is never said.`;
    case 'leaning':
      return `That the piece leans ${name} is never said.`;
  }
}
