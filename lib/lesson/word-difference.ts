/** What changed in a text, word by word. */

export interface TextPart {
  readonly how: 'same' | 'added' | 'removed';
  readonly text: string;
}

/** Texts of more words are compared without their common middle being looked for. */
const MOST_WORDS = 3_000;

/**
 * The parts of both texts in reading order: those that are the same and those
 * removed make the older text, those that are the same and those added the
 * newer one. The longest common row of words is kept (Wagner and Fischer 1974).
 */
export function wordDifference(before: string, after: string): readonly TextPart[] {
  const old = wordsOf(before);
  const now = wordsOf(after);
  let start = 0;
  while (start < old.length && start < now.length && old[start] === now[start]) start += 1;
  let end = 0;
  while (
    end < old.length - start &&
    end < now.length - start &&
    old[old.length - 1 - end] === now[now.length - 1 - end]
  ) {
    end += 1;
  }
  const oldMiddle = old.slice(start, old.length - end);
  const nowMiddle = now.slice(start, now.length - end);
  return joined([
    ...old.slice(0, start).map((text): TextPart => ({ how: 'same', text })),
    ...middle(oldMiddle, nowMiddle),
    ...old.slice(old.length - end).map((text): TextPart => ({ how: 'same', text })),
  ]);
}

/** Words, each with the space that follows it. */
const wordsOf = (text: string): readonly string[] => text.match(/\s+|\S+\s*/g) ?? [];

function middle(old: readonly string[], now: readonly string[]): readonly TextPart[] {
  const removed = old.map((text): TextPart => ({ how: 'removed', text }));
  const added = now.map((text): TextPart => ({ how: 'added', text }));
  if (old.length === 0 || now.length === 0 || old.length > MOST_WORDS || now.length > MOST_WORDS) {
    return [...removed, ...added];
  }
  const common = commonRows(old, now);
  const parts: TextPart[] = [];
  let i = 0;
  let j = 0;
  while (i < old.length && j < now.length) {
    if (old[i] === now[j]) {
      parts.push({ how: 'same', text: old[i] ?? '' });
      i += 1;
      j += 1;
    } else if (common(i + 1, j) >= common(i, j + 1)) {
      parts.push({ how: 'removed', text: old[i] ?? '' });
      i += 1;
    } else {
      parts.push({ how: 'added', text: now[j] ?? '' });
      j += 1;
    }
  }
  return [...parts, ...removed.slice(i), ...added.slice(j)];
}

/** For each pair of places the length of the longest row that is common to what follows them. */
function commonRows(old: readonly string[], now: readonly string[]): (i: number, j: number) => number {
  const width = now.length + 1;
  const lengths = new Uint16Array((old.length + 1) * width);
  const at = (i: number, j: number): number => lengths[i * width + j] ?? 0;
  for (let i = old.length - 1; i >= 0; i--) {
    for (let j = now.length - 1; j >= 0; j--) {
      lengths[i * width + j] =
        old[i] === now[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  }
  return at;
}

/** Neighbours of one kind as one part. */
function joined(parts: readonly TextPart[]): readonly TextPart[] {
  const all: { how: TextPart['how']; text: string }[] = [];
  for (const { how, text } of parts) {
    const last = all.at(-1);
    if (last?.how === how) last.text += text;
    else all.push({ how, text });
  }
  return all;
}
