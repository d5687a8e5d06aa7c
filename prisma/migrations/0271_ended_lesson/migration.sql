-- A published lesson that was deleted. Its address stands on labels and sheets, so that it must answer, and is never given to another lesson.
CREATE TABLE "ended_lesson" (
    "workshopId" TEXT NOT NULL,
    "slug" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "endedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "ended_lesson_pkey" PRIMARY KEY ("workshopId", "slug")
);

ALTER TABLE "ended_lesson" ADD CONSTRAINT "ended_lesson_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "workshop"("id") ON DELETE CASCADE ON UPDATE CASCADE;
