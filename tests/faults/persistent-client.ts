/** Asks again as a browser would until there is an answer, while the other side is being killed. */
import { setTimeout as pause } from 'node:timers/promises';

/** Longest time without any answer, ms: every outage here is over much sooner. */
const PATIENCE_MS = 120_000;

/**
 * The first answer that is one: no broken connection, no 5xx.
 * @param ask makes the request; called anew for each try.
 */
export async function answerTo(
  ask: () => Promise<Response>,
): Promise<{ status: number; headers: Headers; body: string }> {
  const deadline = Date.now() + PATIENCE_MS;
  let last = '';
  while (Date.now() < deadline) {
    try {
      const response = await ask();
      const body = await response.text();
      if (response.status < 500) return { status: response.status, headers: response.headers, body };
      last = `${response.status} ${body.slice(0, 300)}`;
    } catch (error) {
      last = String(error);
    }
    await pause(100);
  }
  throw new Error(`No answer for ${PATIENCE_MS / 1000} s; the last try: ${last}`);
}
