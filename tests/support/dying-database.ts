/** A program that dies before its n-th question to the database. */
import type { Database } from '#lib/data/database.ts';

export function dyingBefore(
  db: Database,
  nth: number,
): { readonly client: Database; readonly died: () => boolean } {
  let asked = 0;
  const client = db.$extends({
    query: {
      async $allOperations({ args, query }) {
        asked += 1;
        if (asked === nth) throw new Error('died');
        return query(args);
      },
    },
  });
  return { client: client as unknown as Database, died: () => asked >= nth };
}
