CREATE TYPE "comparison_state" AS ENUM ('waiting', 'comparing', 'ready', 'failed', 'accepted', 'refused');

-- A recording that may take the place of a lesson's own, and what its sound says about the two.
CREATE TABLE "recording_comparison" (
    "id" TEXT NOT NULL,
    "lessonId" TEXT NOT NULL,
    "oldRecordingId" TEXT NOT NULL,
    "newRecordingId" TEXT NOT NULL,
    "state" "comparison_state" NOT NULL DEFAULT 'waiting',
    "step" TEXT,
    "percent" INTEGER NOT NULL DEFAULT 0,
    "edits" JSONB,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "recording_comparison_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "recording_comparison_newRecordingId_key" ON "recording_comparison"("newRecordingId");

CREATE INDEX "recording_comparison_lessonId_idx" ON "recording_comparison"("lessonId");

ALTER TABLE "recording_comparison" ADD CONSTRAINT "recording_comparison_lessonId_fkey" FOREIGN KEY ("lessonId") REFERENCES "lesson"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "recording_comparison" ADD CONSTRAINT "recording_comparison_oldRecordingId_fkey" FOREIGN KEY ("oldRecordingId") REFERENCES "recording"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "recording_comparison" ADD CONSTRAINT "recording_comparison_newRecordingId_fkey" FOREIGN KEY ("newRecordingId") REFERENCES "recording"("id") ON DELETE CASCADE ON UPDATE CASCADE;
