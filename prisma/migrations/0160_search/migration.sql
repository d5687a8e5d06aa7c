-- Words of lessons are found through these indexes. Stems are taken by the
-- rules for English whatever the lesson's language: both sides get the same.
CREATE INDEX "cue_words_idx" ON "cue" USING GIN (to_tsvector('english', "text"));

-- What the latest revision of each lesson says, line by line: a revision's
-- document holds whole transcripts and is too large to be looked through.
CREATE TABLE "published_line" (
    "lessonId" TEXT NOT NULL,
    "place" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "startMs" INTEGER NOT NULL,
    "endMs" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    CONSTRAINT "published_line_pkey" PRIMARY KEY ("lessonId", "place")
);
ALTER TABLE "published_line" ADD CONSTRAINT "published_line_lessonId_fkey"
    FOREIGN KEY ("lessonId") REFERENCES "lesson"("id") ON DELETE CASCADE ON UPDATE CASCADE;
CREATE INDEX "published_line_words_idx" ON "published_line" USING GIN (to_tsvector('english', "text"));

INSERT INTO "published_line" ("lessonId", "place", "kind", "startMs", "endMs", "text")
SELECT latest."lessonId",
    row_number() OVER (PARTITION BY latest."lessonId" ORDER BY said."kind", said."startMs") - 1,
    said."kind", said."startMs", said."endMs", said."text"
FROM (
    SELECT DISTINCT ON ("lessonId") "lessonId", "document"
    FROM "revision" ORDER BY "lessonId", "number" DESC
) AS latest CROSS JOIN LATERAL (
    SELECT 'chapter' AS "kind", (chapter->>'startMs')::int AS "startMs",
        (chapter->>'startMs')::int AS "endMs", chapter->>'title' AS "text"
    FROM jsonb_array_elements(latest."document"->'content'->'chapters') AS chapter
    UNION ALL
    SELECT 'cue', (cue->>'startMs')::int, (cue->>'endMs')::int, cue->>'text'
    FROM jsonb_array_elements(latest."document"->'cues') AS cue
) AS said;
