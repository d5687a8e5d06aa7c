-- Revisions that were published before pages had a lighter poster: the worker makes theirs when it starts.
INSERT INTO "revision_file" ("revisionId", "name")
SELECT "id", 'poster.webp' FROM "revision"
WHERE ("document"->'recording'->>'posterKey') IS NOT NULL
ON CONFLICT DO NOTHING;
