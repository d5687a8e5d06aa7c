-- Kits that were made up together of one revision (lib/kit/recorded-batch.ts).
CREATE TABLE "kit_batch" (
  "id" TEXT NOT NULL,
  "lessonId" TEXT NOT NULL,
  "revision" INTEGER NOT NULL,
  "madeOn" DATE NOT NULL,
  "rule" TEXT NOT NULL,
  "kits" JSONB NOT NULL,
  "note" TEXT NOT NULL,
  "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT "kit_batch_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "kit_batch_lessonId_idx" ON "kit_batch" ("lessonId");
ALTER TABLE "kit_batch" ADD CONSTRAINT "kit_batch_lessonId_fkey" FOREIGN KEY ("lessonId") REFERENCES "lesson" ("id") ON DELETE CASCADE ON UPDATE CASCADE;
