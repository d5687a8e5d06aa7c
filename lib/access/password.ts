/**
 * What a password must be. Length is what counts: NIST SP 800-63B-4 (2025),
 * 3.1.1.2, and OWASP ASVS 5.0, 6.2, both ask for no rules about kinds of
 * characters, a largest length of at least 64, and a refusal of what is easily
 * guessed in this place.
 */

/** Characters. ASVS asks for 8 at the least and recommends 15; NIST asks for 15 where nothing else protects. */
export const SHORTEST_PASSWORD = 15;
/** Characters; a limit at all, so that nobody makes the server hash a novel. */
export const LONGEST_PASSWORD = 128;

export type PasswordFault = 'password-too-short' | 'password-too-long' | 'password-easily-guessed';

/**
 * Why a password cannot be taken, or null. `about` are words that a guesser
 * would try first: the e-mail address, the person's and the workshop's name.
 */
export function passwordFault(password: string, about: readonly string[]): PasswordFault | null {
  const length = [...password].length;
  if (length < SHORTEST_PASSWORD) return 'password-too-short';
  if (length > LONGEST_PASSWORD) return 'password-too-long';
  if (new Set(password).size < 6) return 'password-easily-guessed';
  const plain = password.toLowerCase().replaceAll(/\s/g, '');
  const known = about
    .map((word) => word.toLowerCase().replaceAll(/\s/g, ''))
    .filter((word) => word.length > 0);
  const left = known.reduce((rest, word) => rest.replaceAll(word, ''), plain);
  return left.length < 6 ? 'password-easily-guessed' : null;
}
