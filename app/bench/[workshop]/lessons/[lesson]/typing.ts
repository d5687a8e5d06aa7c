/** Whether keys belong to the text that is being written. */

const TEXT_TYPES: ReadonlySet<string> = new Set([
  'text',
  'search',
  'url',
  'email',
  'tel',
  'password',
  'number',
  'date',
  'time',
]);

/** Whether an element is a field that text is written into. */
export const isWritten = (target: EventTarget | null): boolean =>
  (target instanceof HTMLInputElement && TEXT_TYPES.has(target.type) && !target.readOnly) ||
  (target instanceof HTMLTextAreaElement && !target.readOnly) ||
  (target instanceof HTMLElement && target.isContentEditable);
