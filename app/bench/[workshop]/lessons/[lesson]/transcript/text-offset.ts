/** The character of an element's text that lies at a point of the window; null where none does. */
export function textOffsetAt(element: Element, x: number, y: number): number | null {
  const caret = document.caretPositionFromPoint?.(x, y);
  if (!caret || !element.contains(caret.offsetNode)) return null;
  const range = document.createRange();
  range.setStart(element, 0);
  range.setEnd(caret.offsetNode, caret.offset);
  return range.toString().length;
}
