/** An empty answer that sets the session's cookies. */
export function answerWithCookies(cookies: readonly string[]): Response {
  const headers = new Headers({ 'cache-control': 'no-store' });
  for (const cookie of cookies) headers.append('set-cookie', cookie);
  return new Response(null, { status: 204, headers });
}
