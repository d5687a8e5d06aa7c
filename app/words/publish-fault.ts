/** Words for why nothing was published. */

/** @param code of the refusal, or `no-answer` where none came */
export function publishFaultWords(code: string): string {
  switch (code) {
    case 'draft-is-newer':
      return 'The draft was changed since this page showed it. Look at it again, then publish.';
    case 'something-missing':
      return 'Something still has to be mended before publishing; see the list above.';
    case 'recording-changed':
      return 'The recording was replaced at the same moment. Look at the lesson again, then publish.';
    case 'picture-not-taken':
      return 'A picture of a step could not be taken in time, so nothing was published. Try again in a minute.';
    case 'not-signed-in':
      return 'You are signed out. Sign in in another window, then publish again here.';
    case 'role-too-small':
      return 'Publishing needs the role of an editor. Ask an owner of the workshop.';
    case 'not-found':
      return 'This lesson is not there any more.';
    case 'no-answer':
      return 'No answer came. Look at your connection and press the button again: a revision is never published twice.';
    default:
      return 'Nothing was published. Please try again.';
  }
}
