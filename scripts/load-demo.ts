/** Loads the demo lesson into the database that DATABASE_URL names; harmless where it is there. */
import { openBench } from '#lib/bench/bench.ts';
import { loadDemo } from '#lib/bench/load-demo.ts';
import { queueRevisionFiles } from '#lib/bench/queue-revision-files.ts';
import { queue } from '#lib/jobs/queue.ts';

const bench = openBench();
if ((await loadDemo(bench)) === 'loaded') {
  console.log('The demo lesson is loaded: the front page leads to it.');
  await queueRevisionFiles(bench, await queue());
}
process.exit(0);
