/** What the database says when a value that must be unique is taken. */

/**
 * Words for the unique rule that an error says was broken: its columns, or the
 * parts of its index's name (`lesson_workshopId_slug_key`), whichever the
 * driver adapter tells; null where it is another error.
 */
export function uniqueViolation(error: unknown): readonly string[] | null {
  if (!isRecord(error) || error['code'] !== 'P2002') return null;
  const constraint = at(error, ['meta', 'driverAdapterError', 'cause', 'constraint']);
  if (!isRecord(constraint)) return [];
  const { fields, index } = constraint;
  if (Array.isArray(fields)) return fields.map((field) => String(field).replaceAll('"', ''));
  return typeof index === 'string' ? index.split('_') : [];
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

const at = (value: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>((inside, key) => (isRecord(inside) ? inside[key] : undefined), value);
