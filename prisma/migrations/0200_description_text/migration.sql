-- How a workshop words its description texts.
ALTER TABLE "workshop" ADD COLUMN "descriptionSetup" JSONB;

-- The text as it was last taken along, by format.
CREATE TABLE "copied_text" (
    "lessonId" TEXT NOT NULL,
    "format" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "copiedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "copied_text_pkey" PRIMARY KEY ("lessonId","format")
);

ALTER TABLE "copied_text" ADD CONSTRAINT "copied_text_lessonId_fkey" FOREIGN KEY ("lessonId") REFERENCES "lesson"("id") ON DELETE CASCADE ON UPDATE CASCADE;
