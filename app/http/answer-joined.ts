/** The answer to a used one-time address: signed in where the account is new, and the workshop's slug. */
import { signIn } from '#lib/access/sign-in.ts';
import type { InvitationFault } from '#lib/bench/use-invitation.ts';
import type { Result } from '#lib/result.ts';
import { fault } from './answer-safely.ts';
import { placeOf } from './place-of.ts';

export async function answerJoined(
  request: Request,
  joined: Result<string, InvitationFault>,
  account: { readonly email: string; readonly password: string } | null,
): Promise<Response> {
  if (!joined.ok) return fault(joined.fault.code === 'invitation-not-open' ? 410 : 422, joined.fault.code);
  const headers = new Headers({ 'cache-control': 'no-store' });
  if (account) {
    // Where this fails (too many tries from this place), the account is made and the sign-in screen follows.
    const signed = await signIn({ ...account, place: placeOf(request) }, new Date());
    for (const cookie of signed.ok ? signed.value.cookies : []) headers.append('set-cookie', cookie);
  }
  return Response.json({ workshop: joined.value }, { status: 201, headers });
}
