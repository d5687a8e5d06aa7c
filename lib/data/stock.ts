/** Queries of what a workshop has at hand. */
import { type StockItem, stockItem } from '#lib/kit/stock.ts';
import type { Queries } from './database.ts';
import { Prisma } from './generated/client.ts';

/** Everything that a workshop counted, by name. */
export async function findStock(db: Queries, workshopId: string): Promise<readonly StockItem[]> {
  const rows = await db.stockItem.findMany({
    where: { workshopId },
    select: { key: true, name: true, unit: true, onHandMilli: true, offer: true },
    orderBy: [{ name: 'asc' }, { key: 'asc' }],
  });
  return rows.map((row) => stockItem.parse(row));
}

/** Keeps a count; the newer one of a thing stands. */
export async function putStock(db: Queries, workshopId: string, { key, ...item }: StockItem): Promise<void> {
  const data = {
    ...item,
    offer: item.offer === null ? Prisma.DbNull : JSON.parse(JSON.stringify(item.offer)),
  };
  await db.stockItem.upsert({
    where: { workshopId_key: { workshopId, key } },
    create: { workshopId, key, ...data },
    update: data,
  });
}
