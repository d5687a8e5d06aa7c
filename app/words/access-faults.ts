/** Words for what can go wrong with accounts, invitations, members and workshops. */

import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from '#lib/access/password.ts';
import type { PasswordChangeFault, SignInFault } from '#lib/access/sign-in.ts';
import type { MemberFault } from '#lib/bench/change-members.ts';
import type { DeleteLessonFault } from '#lib/bench/delete-lesson.ts';
import type { InvitationFault } from '#lib/bench/use-invitation.ts';

/** Codes that any route may answer with. */
type CommonCode =
  | 'not-signed-in'
  | 'not-found'
  | 'role-too-small'
  | 'other-origin'
  | 'from-another-site'
  | 'body-too-large'
  | 'unexpected'
  | 'no-answer';

type Code =
  | CommonCode
  | 'slug-taken'
  | 'too-many-preview-addresses'
  | (SignInFault | PasswordChangeFault | InvitationFault | MemberFault | DeleteLessonFault)['code'];

/** What a fault says, and at which field it belongs; null is the form as a whole. */
export interface FaultWords {
  readonly field: string | null;
  readonly text: string;
}

const whole = (text: string): FaultWords => ({ field: null, text });
const at = (field: string, text: string): FaultWords => ({ field, text });

const WORDS: Readonly<Record<Code, (facts: Facts) => FaultWords>> = {
  'sign-in-not-right': () =>
    whole('This e-mail address and password do not belong together. Check both and try again.'),
  'too-many-tries': ({ until }) =>
    whole(
      `There were too many tries. To keep guessers out, please wait until ${clock(until)} and try again.`,
    ),
  'current-password-not-right': () => at('current', 'This is not your present password.'),
  'password-too-short': () =>
    at(
      'password',
      `At least ${SHORTEST_PASSWORD} characters, please. Four or five words together are easy to keep in mind.`,
    ),
  'password-too-long': () => at('password', `At most ${LONGEST_PASSWORD} characters, please.`),
  'password-easily-guessed': () =>
    at(
      'password',
      'This is easily guessed. Leave out names and addresses, and do not repeat the same few characters.',
    ),
  'email-taken': () =>
    at(
      'email',
      'There is an account with this address already. Sign in with it, then open this address again.',
    ),
  'too-many-preview-addresses': () =>
    whole('This lesson has as many secret addresses as it may. Withdraw one that nobody needs any more.'),
  'invitation-not-open': () =>
    whole('This address was used already, was withdrawn, or is too old. Ask for a new one.'),
  'last-owner': () =>
    whole('A workshop needs an owner. Make somebody else an owner first, then change this.'),
  'published-needs-owner': () =>
    whole('This lesson is published. Only an owner of the workshop can delete it.'),
  'slug-taken': () => at('slug', 'Another workshop has this address, or had it. Choose another one.'),
  'not-signed-in': () =>
    whole('You are no longer signed in. Sign in again in another tab; what you typed here stays.'),
  'not-found': () => whole('This is no longer there. Load the page again to see what is.'),
  'role-too-small': () => whole('Your role in this workshop does not allow this. Ask an owner.'),
  'other-origin': () =>
    whole('The browser said that another site sent this. Open the page by its own address and try again.'),
  'from-another-site': () =>
    whole('The browser said that another site sent this. Open the page by its own address and try again.'),
  'body-too-large': () => whole('This is too long to be saved. Shorten it and try again.'),
  unexpected: ({ incident }) =>
    whole(
      `Something went wrong on our side, and nothing was changed. What you typed stays here. Incident ${incident ?? 'without a number'}.`,
    ),
  'no-answer': () =>
    whole('The server did not answer. What you typed stays here: check the connection and try again.'),
};

type Facts = { readonly until?: unknown; readonly incident?: unknown };

/** Words for a fault by its code; codes unknown here get those for what nobody foresaw. */
export function accessFaultWords(code: string, facts: Facts = {}): FaultWords {
  const known = Object.hasOwn(WORDS, code) ? (code as Code) : 'unexpected';
  return WORDS[known](facts);
}

/** Words for a field that was not filled in as it must be. */
export const fieldWords = (field: string): string => FIELDS[field] ?? 'Please look at this once more.';

const FIELDS: Readonly<Record<string, string>> = {
  name: 'Enter a name, of up to 120 characters.',
  workshopName: 'Enter a name for the workshop, of up to 120 characters.',
  email: 'Enter an e-mail address, such as name@example.org.',
  password: 'Enter a password.',
  next: 'Enter the new password.',
  current: 'Enter your present password.',
  title: 'Enter a title, of up to 300 characters.',
  about: 'At most 5,000 characters, please.',
  note: 'At most 200 characters, please.',
  currency: 'Choose a currency from the list.',
  language: 'Choose a language from the list.',
  slug: 'Use small letters a to z, digits, and single hyphens between them.',
};

const clock = (until: unknown): string =>
  typeof until === 'string' && !Number.isNaN(Date.parse(until))
    ? new Date(until).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })
    : 'a little later';
