/**
 * Puts the keyboard into a field of a thing that was just added, once it is on
 * the screen: who adds by keyboard goes on typing, and a space in her words
 * does not press the button again.
 * @param id of the field itself, or of the thing whose first field is meant.
 */
export function focusAdded(id: string): void {
  requestAnimationFrame(() => {
    const added = document.getElementById(id);
    const field = added?.matches('input, textarea, select')
      ? added
      : added?.querySelector<HTMLElement>('input, textarea, select');
    field?.focus();
  });
}
