import { describe, expect, test } from 'vitest';
import { passwordFault } from '#lib/access/password.ts';

describe('a password', () => {
  test('of several plain words is taken, spaces and all', () => {
    expect(passwordFault('kettle orchard violin seven', [])).toBeNull();
  });

  // NIST SP 800-63B-4, 3.1.1.2: at least 15 characters where a password alone protects.
  test('is counted in code points, not in code units', () => {
    expect(passwordFault('abcdefghijklmn', [])).toBe('password-too-short');
    expect(passwordFault('abcdefghijklmno', [])).toBeNull();
    expect(passwordFault('🐚🪸🐠🐡🐬🦑', [])).toBe('password-too-short');
  });

  // The same: at least 64 characters must be possible. OWASP ASVS 5.0, 6.2.9.
  test('may be long', () => {
    expect(passwordFault('correct sailing '.repeat(4), [])).toBeNull();
    expect(passwordFault('correct sailing '.repeat(9), [])).toBe('password-too-long');
  });

  test.each([
    ['a few characters over and over', 'abababababababababab', []],
    ['the e-mail address', 'ines@example.org', ['ines@example.org']],
    ['the name written twice', 'Ines Holt Ines Holt', ['Ines Holt']],
    ['the workshop with a year', 'Rowan Ring Workshop 2026', ['Rowan Ring Workshop']],
  ])('made of %s is easily guessed', (_, password, about) => {
    expect(passwordFault(password, about)).toBe('password-easily-guessed');
  });
});
