-- Attempts at ingesting that failed by themselves: the queue's own count holds killed workers too.
ALTER TABLE "recording" ADD COLUMN "failures" INTEGER NOT NULL DEFAULT 0;
