/** Loads the demo lesson into the database that DATABASE_URL names; harmless where it is there. */
import { openBench } from '#lib/bench/bench.ts';
import { loadDemo } from '#lib/bench/load-demo.ts';

const outcome = await loadDemo(openBench());
if (outcome === 'loaded') console.log('The demo lesson is loaded: the front page leads to it.');
process.exit(0);
