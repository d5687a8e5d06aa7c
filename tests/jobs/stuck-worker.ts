/** Takes ingest jobs, tells its parent which, and never ends any. */
import { openQueue } from '#lib/jobs/queue.ts';

const queue = await openQueue(process.env['DATABASE_URL'] ?? '', 'worker');
await queue.work('ingest-recording', async ({ recordingId }) => {
  process.send?.(recordingId);
  await new Promise(() => undefined);
});
process.send?.('ready');
