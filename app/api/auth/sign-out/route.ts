import { answerWithCookies } from '#app/http/answer-with-cookies.ts';
import { withAnyone } from '#app/http/with-member.ts';
import { signOut } from '#lib/access/sign-in.ts';

export const POST = withAnyone(async (request) =>
  answerWithCookies((await signOut(request.headers)).cookies),
);
