-- What a workshop has at hand (lib/kit/stock.ts).
CREATE TABLE "stock_item" (
  "workshopId" TEXT NOT NULL,
  "key" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "unit" TEXT NOT NULL,
  "onHandMilli" INTEGER NOT NULL,
  "offer" JSONB,
  "updatedAt" TIMESTAMP(3) NOT NULL,
  CONSTRAINT "stock_item_pkey" PRIMARY KEY ("workshopId", "key")
);
ALTER TABLE "stock_item" ADD CONSTRAINT "stock_item_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "workshop" ("id") ON DELETE CASCADE ON UPDATE CASCADE;
