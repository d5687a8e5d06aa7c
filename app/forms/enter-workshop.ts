/** Goes to the workshop that a route's answer names. */
export function enterWorkshop(answer: unknown): void {
  const slug =
    typeof answer === 'object' && answer !== null && 'workshop' in answer ? String(answer.workshop) : '';
  window.location.assign(`/bench/${encodeURIComponent(slug)}`);
}
