/** Sends JSON to one of our routes from the browser. */

export type Sent =
  | { readonly ok: true; readonly answer: unknown }
  | { readonly ok: false; readonly code: string; readonly facts: Readonly<Record<string, unknown>> };

/** The route's answer, or its fault; `no-answer` where the server could not be reached. */
export async function sendJson(
  to: string,
  method: 'POST' | 'PUT' | 'PATCH' | 'DELETE',
  body?: unknown,
): Promise<Sent> {
  try {
    const response = await fetch(to, {
      method,
      ...(body === undefined
        ? {}
        : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    });
    const answer: unknown = response.status === 204 ? null : await response.json().catch(() => null);
    if (response.ok) return { ok: true, answer };
    const { code, ...facts } = faultIn(answer);
    return { ok: false, code: typeof code === 'string' ? code : 'unexpected', facts };
  } catch {
    return { ok: false, code: 'no-answer', facts: {} };
  }
}

function faultIn(answer: unknown): Record<string, unknown> {
  if (typeof answer !== 'object' || answer === null || !('fault' in answer)) return {};
  const { fault } = answer;
  return typeof fault === 'object' && fault !== null ? { ...fault } : {};
}
