-- What a workshop's own term means, shown to pupils where the term occurs
ALTER TABLE "glossary_term" ADD COLUMN "meaning" TEXT NOT NULL DEFAULT '';
