-- What taking a new recording moved, kept so that it can be taken back.
ALTER TABLE "recording_comparison" ADD COLUMN "move" JSONB;
