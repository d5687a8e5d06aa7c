-- A recording may be compared more than once: with the lesson's former one, and with those of other lessons whose transcript is placed on it.
DROP INDEX "recording_comparison_newRecordingId_key";
CREATE INDEX "recording_comparison_newRecordingId_idx" ON "recording_comparison"("newRecordingId");
