/** A text with what is gone struck through and what is new underlined. */
import type { TextPart } from '#lib/lesson/word-difference.ts';

export function WordParts({ parts }: { readonly parts: readonly TextPart[] }) {
  return parts.map(({ how, text }, k) => {
    const key = `${k} ${how}`;
    if (how === 'removed') return <del key={key}>{text}</del>;
    if (how === 'added') return <ins key={key}>{text}</ins>;
    return <span key={key}>{text}</span>;
  });
}
