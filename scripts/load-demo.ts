/** Loads the demo lesson into the database that DATABASE_URL names; harmless where it is there. */
import { openBench } from '#lib/bench/bench.ts';
import { loadDemo } from '#lib/bench/load-demo.ts';
import { openRecordingWork } from '#lib/recording/recording-work.ts';
import { readDemo } from '../prisma/demo/read-demo.ts';

const outcome = await loadDemo(openBench(), await openRecordingWork(), readDemo());
console.log(outcome === 'loaded' ? 'The demo lesson is loaded.' : 'The demo lesson is there already.');
process.exit(0);
