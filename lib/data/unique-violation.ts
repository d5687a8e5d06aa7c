/** What the database says when a value that must be unique is taken. */

/**
 * The columns of the unique rule that an error says was broken, or null where
 * it is another error. With a driver adapter they stand deep inside the error.
 */
export function uniqueViolation(error: unknown): readonly string[] | null {
  if (!isRecord(error) || error['code'] !== 'P2002') return null;
  const constraint = at(error, ['meta', 'driverAdapterError', 'cause', 'constraint']);
  const fields = isRecord(constraint) ? constraint['fields'] : undefined;
  return Array.isArray(fields) ? fields.map((field) => String(field).replaceAll('"', '')) : [];
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

const at = (value: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>((inside, key) => (isRecord(inside) ? inside[key] : undefined), value);
