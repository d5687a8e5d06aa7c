/** A day in words, the same on every machine: `25 November 2026`, in UTC. */
const format = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
});

export const dayOf = (date: Date): string => format.format(date);
