-- How a cue's times came about, where they were not heard.
ALTER TABLE "cue" ADD COLUMN "timing" TEXT;
