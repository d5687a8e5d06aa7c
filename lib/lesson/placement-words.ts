/**
 * What is opened, carried and passed, as words: read under a step, and the
 * text alternative of its still, so that a pupil who does not see the picture
 * has the same facts.
 */
import type { Content, Placement } from './content.ts';
import { countWord } from './count-word.ts';
import { passesWords } from './passes-words.ts';

/** `one large copper ring`, `two large copper rings`; a kind named `copper ring` keeps its name. */
export function ringsWord(name: string, count: number): string {
  const bare = name.trim().replace(/\s*rings?$/i, '');
  const noun = count === 1 ? 'ring' : 'rings';
  return `${countWord(count)} ${bare === '' ? noun : `${bare} ${noun}`}`;
}

const LIE_WORDS: Readonly<Record<Placement['lie'], string>> = {
  'as it falls': '',
  'fold back': 'fold it back',
  part: 'part the pair',
  'through between': 'lay it through between the pair',
  over: 'lay it over the one before',
  under: 'lay it under the one before',
};

type Kinds = Pick<Content, 'ringKinds'>;

const nameOf = (content: Kinds, id: string): string =>
  content.ringKinds.find((kind) => kind.id === id)?.name.trim() ?? '';

/**
 * The facts of a placement in the order in which hands do them: opened,
 * carried, passed, laid. Empty parts are left out; `[]` where it says nothing.
 */
export function placementFacts(content: Kinds, placement: Placement): readonly string[] {
  const carried = placement.carries
    .map((carry) => {
      const rings = ringsWord(nameOf(content, carry.ringKind), carry.count);
      const side =
        placement.opened === null || !carry.from
          ? ''
          : ` from ${carry.count === 1 ? 'its' : 'their'} ${carry.from}`;
      return `${rings}${side}`;
    })
    .join(' and ');
  const facts: string[] = [];
  if (placement.opened !== null) facts.push(`open ${ringsWord(nameOf(content, placement.opened), 1)}`);
  if (carried !== '')
    facts.push(
      placement.opened === null ? `lay out ${carried}, closed` : `pick up ${carried}, closed beforehand`,
    );
  const passes = passesWords(placement.passes);
  if (passes !== '') facts.push(`go ${passes}`);
  const lie = LIE_WORDS[placement.lie];
  if (lie !== '') facts.push(lie);
  return facts;
}

/** A still's text alternative: where it stands, then the facts; the sentence beside it is not repeated. */
export function stillText(content: Kinds, where: string, placement: Placement | null): string {
  const facts = placement ? placementFacts(content, placement) : [];
  return facts.length === 0 ? `${where}, as shown in the recording.` : `${where}: ${facts.join('; ')}.`;
}
