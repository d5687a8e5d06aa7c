-- Stored files that nothing refers to any more and that are still to be removed.
CREATE TABLE "discarded_file" (
    "storageKey" TEXT NOT NULL,

    CONSTRAINT "discarded_file_pkey" PRIMARY KEY ("storageKey")
);
