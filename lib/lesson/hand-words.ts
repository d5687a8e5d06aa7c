/**
 * Words of hand in a sentence: what a mirrored picture turns round. English
 * only; `right` in its other senses is left alone, since a wrong turn is worse
 * than none.
 */
export interface HandSegment {
  readonly text: string;
  /** The word of the other hand, where this segment is one; null for plain text. */
  readonly mirrored: string | null;
}

const HAND =
  /\b(left|right)(?=[ -](?:hand(?:ed)?|leaning|lean|side|edge|end|thumb|forefinger|pliers|row|ring|loop|pair)\b)|(?<=\b(?:to|on|from|towards?|at) (?:the|your|my|its) )(?:left|right)\b|(?<=\b(?:leans?|lean to|turn|swing|tilt) )(?:left|right)\b/gi;

const OTHER: Readonly<Record<string, string>> = {
  left: 'right',
  right: 'left',
  Left: 'Right',
  Right: 'Left',
};

/** The sentence in segments; one plain segment where it names no hand. Joined texts give the sentence. */
export function handSegments(sentence: string): readonly HandSegment[] {
  const segments: HandSegment[] = [];
  let from = 0;
  for (const match of sentence.matchAll(HAND)) {
    if (match.index > from) segments.push({ text: sentence.slice(from, match.index), mirrored: null });
    segments.push({ text: match[0], mirrored: OTHER[match[0]] ?? OTHER[match[0].toLowerCase()] ?? null });
    from = match.index + match[0].length;
  }
  if (from < sentence.length) segments.push({ text: sentence.slice(from), mirrored: null });
  return segments;
}
