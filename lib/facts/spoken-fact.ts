/** A fact that is said aloud, with the moment and the words that it was said in, and what it is read from. */
import type { Sentence } from '#lib/chapters/sentences.ts';
import type { Token } from '#lib/glossary/spoken-number.ts';
import type { Content } from '#lib/lesson/content.ts';

export type FactKind =
  | 'wire'
  | 'inner diameter'
  | 'aspect ratio'
  | 'rings'
  | 'repeats'
  | 'share prepared'
  | 'metal or colour';

export interface SpokenFact {
  /** The same for the same words in the same sentence. */
  readonly id: string;
  readonly kind: FactKind;
  readonly cueId: string;
  readonly startMs: number;
  readonly endMs: number;
  /** The sentence that it is said in. */
  readonly quote: string;
  /** The number; millimetres where a length was said with its unit. */
  readonly value: number;
  /** As it would be typed: `18 gauge`, `11/64 in`, `44`. */
  readonly stated: string;
  /** System of a gauge, or the unit of a length; null where none was said. */
  readonly system: 'SWG' | 'AWG' | 'mm' | 'in' | null;
  /** Ids of the ring kinds that it may be said of. */
  readonly ringKinds: readonly string[];
  readonly prepared: 'opened' | 'closed' | null;
  /** Name of the size that it is said for, or null. */
  readonly size: string | null;
  /** Whether it is said of one repeat. */
  readonly ofRepeat: boolean;
}

/** A sentence, and what is known where it is said. */
export interface Telling {
  readonly sentence: Sentence;
  readonly tokens: readonly Token[];
  /** Words of this sentence and the next: a system is often said after the number. */
  readonly onward: readonly string[];
  readonly content: Pick<Content, 'ringKinds' | 'sizes' | 'chapters'>;
  /** Kinds spoken of, where the sentence itself names none. */
  readonly subject: readonly string[];
}

/** The word at a place; empty beyond the ends. */
export const wordAt = (tokens: readonly Token[], at: number): string => tokens[at]?.word ?? '';

/** The fact of this kind that the sentence tells; `more` says what is not read from the sentence alone. */
export function factSaid(
  { sentence, content, subject }: Telling,
  kind: FactKind,
  value: number,
  stated: string,
  more: Partial<SpokenFact> = {},
): SpokenFact {
  return {
    id: `${sentence.cueId} ${sentence.startMs} ${kind} ${stated}`,
    kind,
    cueId: sentence.cueId,
    startMs: sentence.startMs,
    endMs: sentence.endMs,
    quote: sentence.text,
    value,
    stated,
    system: null,
    ringKinds: subject,
    prepared: null,
    size: sizeSaid(sentence.text, content.sizes),
    ofRepeat: isOfRepeat(sentence, content.chapters),
    ...more,
  };
}

/** Kind of the chapter in which a sentence is said. */
export const chapterKindAt = (sentence: Sentence, chapters: Content['chapters']): string | undefined =>
  chapters.filter(({ startMs }) => startMs <= sentence.startMs + 500).sort((a, b) => b.startMs - a.startMs)[0]
    ?.kind;

/** `for a medium wrist`, `the medium size`: the size that is spoken of. */
export function sizeSaid(text: string, sizes: Content['sizes']): string | null {
  const said = sizes.find(({ name }) => {
    const plain = name.trim().replace(/[^\p{L}\d ]/gu, '');
    return (
      plain !== '' &&
      new RegExp(`\\b${plain}(?:-sized?)? (?:wrist|size|one|bracelet|length|ankle|neck)`, 'iu').test(text)
    );
  });
  return said?.name ?? null;
}

function isOfRepeat(sentence: Sentence, chapters: Content['chapters']): boolean {
  if (/\b(repeat|unit)s?\b/i.test(sentence.text)) return true;
  return chapterKindAt(sentence, chapters) === 'repeat unit';
}
