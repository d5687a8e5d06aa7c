CREATE TYPE "copy_state" AS ENUM ('receiving', 'waiting', 'reading', 'ready', 'refused');

-- A portable copy that was sent to a workshop, and what came of it.
CREATE TABLE "portable_copy" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "state" "copy_state" NOT NULL DEFAULT 'receiving',
    "name" TEXT NOT NULL,
    "sizeBytes" BIGINT NOT NULL,
    "attempt" TEXT,
    "step" TEXT,
    "fault" JSONB,
    "lessonIds" JSONB NOT NULL DEFAULT '[]',
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "portable_copy_pkey" PRIMARY KEY ("id")
);

CREATE INDEX "portable_copy_workshopId_idx" ON "portable_copy"("workshopId");

ALTER TABLE "portable_copy" ADD CONSTRAINT "portable_copy_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "workshop"("id") ON DELETE CASCADE ON UPDATE CASCADE;
