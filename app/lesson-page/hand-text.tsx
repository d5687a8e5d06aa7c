import { handSegments } from '#lib/lesson/hand-words.ts';

interface HandTextProps {
  readonly text: string;
  /** The part of it that is shown, from and up to these places; the whole where left out. */
  readonly from?: number;
  readonly to?: number;
}

/** Typed text in which words of hand turn round with a mirrored picture (by CSS, see lesson-page.module.css). */
export const HandText = ({ text, from = 0, to = text.length }: HandTextProps) => {
  let at = 0;
  return handSegments(text).map((segment) => {
    const start = at;
    at += segment.text.length;
    const shown = segment.text.slice(Math.max(0, from - start), Math.max(0, to - start));
    return segment.mirrored === null || shown !== segment.text ? (
      shown
    ) : (
      <span key={start}>
        <span data-hand="shown">{segment.text}</span>
        <span data-hand="mirrored">{segment.mirrored}</span>
      </span>
    );
  });
};
