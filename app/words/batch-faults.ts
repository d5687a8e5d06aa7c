/** Words for batches that could not be recorded. */
export function batchFaultWords(code: string, facts: Readonly<Record<string, unknown>> = {}): string {
  switch (code) {
    case 'no-kits':
      return 'Say how many kits of at least one size you made up.';
    case 'too-many-kits':
      return 'Of one size a batch holds at most 10,000 kits.';
    case 'revision-not-found':
      return 'This revision is not published any more. Reload the page.';
    case 'kit-not-computed':
      return `This revision gives no kit for ${namesOf(facts['names'])}. Take the number out, or choose another revision.`;
    case 'fields-not-valid':
      return 'Something in the form cannot be kept. Look at the day and the numbers.';
    case 'no-answer':
      return 'The server did not answer. Nothing was recorded; try again.';
    default:
      return 'The batch could not be recorded. Reload the page and try again.';
  }
}

const namesOf = (names: unknown): string => (Array.isArray(names) ? names.join(', ') : 'one of the sizes');
