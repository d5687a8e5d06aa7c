-- Every slug that a workshop has or had. Its addresses stand on labels and sheets, so that none is ever given to another workshop.
CREATE TABLE "workshop_slug" (
    "slug" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL,
    "since" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "workshop_slug_pkey" PRIMARY KEY ("slug")
);

CREATE INDEX "workshop_slug_workshopId_idx" ON "workshop_slug"("workshopId");

ALTER TABLE "workshop_slug" ADD CONSTRAINT "workshop_slug_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "workshop"("id") ON DELETE CASCADE ON UPDATE CASCADE;

INSERT INTO "workshop_slug" ("slug", "workshopId", "since") SELECT "slug", "id", "createdAt" FROM "workshop";
