/**
 * The outermost layer of every route: what nobody foresaw is logged under an
 * incident's number and answered with that number alone.
 */
import { randomUUID } from 'node:crypto';
import { isOwnRequest } from '#lib/access/same-origin.ts';
import { environment } from '#lib/config/environment.ts';
import { log } from '#lib/config/log.ts';

/** A refusal in JSON: `{ fault: { code, ... } }`. */
export const fault = (status: number, code: string, facts: Record<string, unknown> = {}): Response =>
  Response.json({ fault: { code, ...facts } }, { status, headers: { 'cache-control': 'no-store' } });

/** Refuses what another site sent, runs the handler, and turns a throw into a 500 with an incident's number. */
export async function answerSafely(request: Request, handle: () => Promise<Response>): Promise<Response> {
  try {
    if (!isOwnRequest(request, environment().BENCHLEAF_ADDRESS)) return fault(403, 'other-origin');
    return await handle();
  } catch (error) {
    const incident = randomUUID();
    log().error({ incident, method: request.method, err: error }, 'A request failed');
    return fault(500, 'unexpected', { incident });
  }
}
