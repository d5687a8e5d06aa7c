/** Signing in and out, and what a person changes about their own account. */
import { APIError } from 'better-auth/api';
import { database } from '#lib/data/database.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import { accounts } from './accounts.ts';
import type { Caller } from './caller.ts';
import { type PasswordFault, passwordFault } from './password.ts';
import { countTry, forgetTries } from './sign-in-limit.ts';

/** Cookies for the answer, one Set-Cookie header each. */
export interface SessionCookies {
  readonly cookies: readonly string[];
}

export type TooManyTries = { readonly code: 'too-many-tries'; readonly until: string };
export type SignInFault = { readonly code: 'sign-in-not-right' } | TooManyTries;

/** Signs in; which of address and password is wrong is not told. `place` is the caller's network address. */
export async function signIn(
  { email, password, place }: { readonly email: string; readonly password: string; readonly place: string },
  now: Date,
): Promise<Result<SessionCookies, SignInFault>> {
  const tried = { account: email, place };
  const until = await countTry(database(), tried, now);
  if (until) return failed({ code: 'too-many-tries', until: until.toISOString() });
  try {
    const { headers } = await accounts().api.signInEmail({ body: { email, password }, returnHeaders: true });
    await forgetTries(database(), tried, now);
    return ok({ cookies: headers.getSetCookie() });
  } catch (error) {
    if (isRefusal(error)) return failed({ code: 'sign-in-not-right' });
    throw error;
  }
}

/** Ends the session behind the cookies; harmless where there is none. */
export async function signOut(requestHeaders: Headers): Promise<SessionCookies> {
  const { headers } = await accounts().api.signOut({ headers: requestHeaders, returnHeaders: true });
  return { cookies: headers.getSetCookie() };
}

/** Ends every session of the caller, on every device. */
export async function signOutEverywhere(caller: Caller, requestHeaders: Headers): Promise<SessionCookies> {
  await database().session.deleteMany({ where: { userId: caller.userId } });
  return signOut(requestHeaders);
}

export type PasswordChangeFault =
  | { readonly code: PasswordFault | 'current-password-not-right' }
  | TooManyTries;

/** Gives the caller a new password; their other sessions end and this one goes on under a new cookie. */
export async function changePassword(
  caller: Caller,
  { current, next }: { readonly current: string; readonly next: string },
  requestHeaders: Headers,
  now: Date,
): Promise<Result<SessionCookies, PasswordChangeFault>> {
  const weakness = passwordFault(next, [caller.email, caller.name]);
  if (weakness) return failed({ code: weakness });
  const tried = { account: caller.userId, place: 'change of password' };
  const until = await countTry(database(), tried, now);
  if (until) return failed({ code: 'too-many-tries', until: until.toISOString() });
  try {
    const { headers } = await accounts().api.changePassword({
      body: { currentPassword: current, newPassword: next, revokeOtherSessions: true },
      headers: requestHeaders,
      returnHeaders: true,
    });
    await forgetTries(database(), tried, now);
    return ok({ cookies: headers.getSetCookie() });
  } catch (error) {
    if (isRefusal(error)) return failed({ code: 'current-password-not-right' });
    throw error;
  }
}

/** Gives the caller another name. */
export async function changeName(caller: Caller, name: string): Promise<void> {
  await database().user.update({ where: { id: caller.userId }, data: { name } });
}

const isRefusal = (error: unknown): boolean =>
  error instanceof APIError && error.statusCode >= 400 && error.statusCode < 500;
