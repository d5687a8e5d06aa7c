-- The attempt at ingesting that may write to the row.
ALTER TABLE "recording" ADD COLUMN "attempt" TEXT;
