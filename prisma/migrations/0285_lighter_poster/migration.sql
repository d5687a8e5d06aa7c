-- Light posters are drawn anew, lighter, so that they can stand inside the page. The former ones are removed.
INSERT INTO "discarded_file" ("storageKey")
SELECT DISTINCT "storageKey" FROM "revision_file" WHERE "name" = 'poster.webp' AND "storageKey" IS NOT NULL
ON CONFLICT DO NOTHING;

UPDATE "revision_file"
SET "state" = 'waiting', "percent" = 0, "fault" = NULL, "storageKey" = NULL, "sizeBytes" = NULL
WHERE "name" = 'poster.webp';
