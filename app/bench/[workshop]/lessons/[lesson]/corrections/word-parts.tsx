/** A text with what is gone struck through and what is new underlined. */
import { Fragment } from 'react';
import type { TextPart } from '#lib/lesson/word-difference.ts';

export function WordParts({ parts }: { readonly parts: readonly TextPart[] }) {
  return parts.map(({ how, text }, k) => {
    const key = `${k} ${how}`;
    // `2` and `3` side by side would read as one number.
    const apart = parts[k + 1]?.how === 'added' && !/\s$/.test(text) ? ' ' : '';
    if (how === 'removed') {
      return (
        <Fragment key={key}>
          <del>{text}</del>
          {apart}
        </Fragment>
      );
    }
    if (how === 'added') return <ins key={key}>{text}</ins>;
    return <span key={key}>{text}</span>;
  });
}
