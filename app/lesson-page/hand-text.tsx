import { handSegments } from '#lib/lesson/hand-words.ts';

/** Typed text in which words of hand turn round with a mirrored picture (by CSS, see lesson-page.module.css). */
export const HandText = ({ text }: { readonly text: string }) => {
  let at = 0;
  return handSegments(text).map((segment) => {
    const key = at;
    at += segment.text.length;
    return segment.mirrored === null ? (
      segment.text
    ) : (
      <span key={key}>
        <span data-hand="shown">{segment.text}</span>
        <span data-hand="mirrored">{segment.mirrored}</span>
      </span>
    );
  });
};
