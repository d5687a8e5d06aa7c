-- A workshop's own terms, and what it decided about words that were misheard.
CREATE TABLE "glossary_term" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL,
    "term" TEXT NOT NULL,
    "forms" JSONB NOT NULL,
    "sounds" JSONB NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "glossary_term_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "glossary_term_workshopId_term_key" ON "glossary_term"("workshopId", "term");
ALTER TABLE "glossary_term" ADD CONSTRAINT "glossary_term_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "workshop"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "heard_decision" (
    "workshopId" TEXT NOT NULL,
    "heard" TEXT NOT NULL,
    "instead" TEXT NOT NULL,
    "taken" INTEGER NOT NULL DEFAULT 0,
    "never" BOOLEAN NOT NULL DEFAULT false,
    "updatedAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "heard_decision_pkey" PRIMARY KEY ("workshopId", "heard", "instead")
);
ALTER TABLE "heard_decision" ADD CONSTRAINT "heard_decision_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "workshop"("id") ON DELETE CASCADE ON UPDATE CASCADE;
