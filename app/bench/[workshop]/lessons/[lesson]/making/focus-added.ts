import { flushSync } from 'react-dom';

/**
 * Puts the keyboard into a field of a thing that was just added: who adds by
 * keyboard goes on typing, and a space in her words does not press the button
 * again. At once, not with the next frame, which a busy machine draws late.
 * @param id of the field itself, or of the thing whose first field is meant.
 */
export function focusAdded(id: string): void {
  // What was added is drawn here, so that there is something to go to.
  flushSync(() => undefined);
  const added = document.getElementById(id);
  const field = added?.matches('input, textarea, select')
    ? added
    : added?.querySelector<HTMLElement>('input, textarea, select');
  field?.focus();
}
