-- Which revision was last taken along to a place outside, and whether it was ticked as being there (lib/description/places.ts).
CREATE TABLE "place_mark" (
  "lessonId" TEXT NOT NULL,
  "place" TEXT NOT NULL,
  "revision" INTEGER NOT NULL,
  "ticked" BOOLEAN NOT NULL,
  "at" TIMESTAMP(3) NOT NULL,
  CONSTRAINT "place_mark_pkey" PRIMARY KEY ("lessonId", "place")
);
ALTER TABLE "place_mark" ADD CONSTRAINT "place_mark_lessonId_fkey" FOREIGN KEY ("lessonId") REFERENCES "lesson" ("id") ON DELETE CASCADE ON UPDATE CASCADE;
