import { answerWithCookies } from '#app/http/answer-with-cookies.ts';
import { withCaller } from '#app/http/with-member.ts';
import { signOutEverywhere } from '#lib/access/sign-in.ts';

export const POST = withCaller(async (request, caller) =>
  answerWithCookies((await signOutEverywhere(caller, request.headers)).cookies),
);
