/** The worker process: takes jobs from the queue. Any number may run, on any machine that sees the files. */
import { bringInCopy } from '#lib/bench/bring-in-copy.ts';
import { queueComparisons } from '#lib/bench/queue-comparisons.ts';
import { queueRevisionFiles } from '#lib/bench/queue-revision-files.ts';
import { resumeCopies } from '#lib/bench/resume-copies.ts';
import { resumeRecordings } from '#lib/bench/resume-recordings.ts';
import { environment } from '#lib/config/environment.ts';
import { log } from '#lib/config/log.ts';
import { database } from '#lib/data/database.ts';
import { openQueue } from '#lib/jobs/queue.ts';
import { compareRecordings } from '#lib/recording/compare-recordings.ts';
import { ingestRecording } from '#lib/recording/ingest-recording.ts';
import { makeRevisionFile } from '#lib/recording/make-revision-file.ts';
import { openRecordingWork } from '#lib/recording/recording-work.ts';
import { takeStill } from '#lib/recording/take-still.ts';
import { deriveOwnShape } from '#lib/shapes/derive-own-shape.ts';

/** Short jobs may end by themselves; a long one is handed back. */
const GRACE_MS = 3_000;

const queue = await openQueue(environment().DATABASE_URL, 'worker');
const work = await openRecordingWork();
await queue.work('ingest-recording', async (payload, attempt) => {
  await ingestRecording(work, payload, attempt);
  await queueComparisons(work, queue);
});
await queue.work('compare-recordings', (payload, attempt) => compareRecordings(work, payload, attempt));
await queue.work('make-revision-file', (payload, attempt) => makeRevisionFile(work, payload, attempt));
await queue.work('derive-shape', (payload, { signal }) => deriveOwnShape(work, payload, signal));
await queue.work('take-still', async (payload, { signal }) => {
  await takeStill(work, payload, signal);
});
await queue.work('bring-in-copy', async (payload, attempt) => {
  await bringInCopy(work, payload, { ...attempt, largestBytes: environment().BENCHLEAF_LARGEST_RECORDING });
  // Its revisions are published here now.
  await queueRevisionFiles(work, queue);
});
await resumeRecordings(work, queue, new Date());
await resumeCopies(work, queue, new Date());
await queueComparisons(work, queue);
await queueRevisionFiles(work, queue);
process.send?.({ ready: true });
log().info('The worker waits for jobs');

let stopping = false;
async function stop(): Promise<void> {
  if (stopping) return;
  stopping = true;
  await queue.stop(GRACE_MS);
  await database().$disconnect();
  process.exit(0);
}
process.on('SIGTERM', () => void stop());
process.on('SIGINT', () => void stop());
// Whoever started us is gone: nobody would stop us any more.
if (process.send) process.on('disconnect', () => void stop());
