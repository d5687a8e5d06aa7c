-- Shapes of sequences that are none of the stored weaves: derived once, and the same for every lesson that is made like this.
CREATE TABLE "own_shape" (
    "key" TEXT NOT NULL,
    "sequence" JSONB NOT NULL,
    "askedAt" TIMESTAMP(3) NOT NULL,
    "doneAt" TIMESTAMP(3),
    "known" JSONB,

    CONSTRAINT "own_shape_pkey" PRIMARY KEY ("key")
);
