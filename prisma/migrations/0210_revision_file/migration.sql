CREATE TYPE "made_state" AS ENUM ('waiting', 'making', 'ready', 'failed');

-- What the worker makes of a revision after it is published.
CREATE TABLE "revision_file" (
    "revisionId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "state" "made_state" NOT NULL DEFAULT 'waiting',
    "percent" INTEGER NOT NULL DEFAULT 0,
    "fault" TEXT,
    "storageKey" TEXT,
    "sizeBytes" BIGINT,

    CONSTRAINT "revision_file_pkey" PRIMARY KEY ("revisionId","name")
);

ALTER TABLE "revision_file" ADD CONSTRAINT "revision_file_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "revision"("id") ON DELETE CASCADE ON UPDATE CASCADE;
