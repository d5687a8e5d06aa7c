-- A secret address under which a draft can be seen until it is withdrawn.
CREATE TABLE "preview_address" (
    "id" TEXT NOT NULL,
    "lessonId" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "preview_address_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "preview_address_tokenHash_key" ON "preview_address"("tokenHash");

CREATE INDEX "preview_address_lessonId_idx" ON "preview_address"("lessonId");

ALTER TABLE "preview_address" ADD CONSTRAINT "preview_address_lessonId_fkey" FOREIGN KEY ("lessonId") REFERENCES "lesson"("id") ON DELETE CASCADE ON UPDATE CASCADE;
