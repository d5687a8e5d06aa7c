-- What pupils say is wrong in a lesson (lib/lesson/report.ts). Nothing of the pupil is kept beyond what she wrote.
CREATE TABLE "report" (
  "id" TEXT NOT NULL,
  "lessonId" TEXT NOT NULL,
  "revision" INTEGER NOT NULL,
  "concerns" TEXT NOT NULL,
  "at" TEXT NOT NULL,
  "wrong" TEXT NOT NULL,
  "right" TEXT NOT NULL,
  "createdAt" TIMESTAMP(3) NOT NULL,
  "answer" TEXT,
  "correctionId" TEXT,
  "settledAt" TIMESTAMP(3),
  CONSTRAINT "report_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "report_lessonId_idx" ON "report" ("lessonId");
ALTER TABLE "report" ADD CONSTRAINT "report_lessonId_fkey" FOREIGN KEY ("lessonId") REFERENCES "lesson" ("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Counts of reports by the hash of where they came from (lib/access/report-limit.ts).
CREATE TABLE "report_limit" (
  "key" TEXT NOT NULL,
  "reports" INTEGER NOT NULL,
  "resetsAt" TIMESTAMP(3) NOT NULL,
  CONSTRAINT "report_limit_pkey" PRIMARY KEY ("key")
);

-- The secret that these hashes are made with, a new one each day.
CREATE TABLE "report_salt" (
  "day" DATE NOT NULL,
  "salt" TEXT NOT NULL,
  CONSTRAINT "report_salt_pkey" PRIMARY KEY ("day")
);
