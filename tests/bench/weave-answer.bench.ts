/**
 * How long a teacher waits for what other rings do: from a changed wire on the
 * making screen to the words that are shown for it, and of that what the
 * worker of the screen takes; in Chromium, through the built program. Beside
 * it, in the same page and run, the least that asking a worker and showing its
 * words can cost: an empty worker that sends back what it gets, and a
 * paragraph. Nothing is asserted about times.
 * `node tests/bench/weave-answer.bench.ts`, after a build.
 */
import { content, emptyContent } from '#lib/lesson/content.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { aRingKind } from '#tests/support/a-making.ts';
import { browserForBench, programForBench } from '#tests/support/program-for-bench.ts';
import { signedInOwner } from '#tests/support/signed-in.ts';

/** Inner diameter 5 mm; all of them wires at which the weave exists, each asked for once. */
const WIRES = ['1.25', '1.2', '1.15', '1.1', '1.05'];
const WEAVES = ['chain-1-1', 'half-persian-3-in-1', 'jens-pind-3'];

const program = await programForBench();
const { address, db } = program;
const browser = await browserForBench();

interface Measured {
  /** Change to shown words, ms. */
  readonly shown: number;
  /** Of that between asking the worker and hearing from it, ms. */
  readonly worker: number;
  /** The empty worker and the paragraph, ms. */
  readonly least: number;
}

async function measure(weaveId: string): Promise<readonly Measured[]> {
  const weave = findWeave(weaveId);
  if (!weave) throw new Error(weaveId);
  const owner = await signedInOwner({ address, db });
  const ringKinds = weave.roles.map(({ id }) =>
    aRingKind({
      id,
      innerDiameter: { stated: '5 mm', mm: 5 },
      wire: { stated: '0.9 mm', mm: 0.9 },
    }),
  );
  const whole = content.parse({
    ...emptyContent('Rings', 'en', 'EUR'),
    ...weave.piece,
    weave: weave.name,
    ringKinds,
  });
  await db.lesson.update({
    where: { id: owner.lessonId },
    data: { content: JSON.parse(JSON.stringify(whole)) },
  });
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.addCookies(owner.cookies.map((cookie) => ({ ...cookie, url: address })));
  const page = await context.newPage();
  // Notes when the screen's worker is asked and when it answers.
  await page.addInitScript(`
    window.trips = [];
    const Plain = window.Worker;
    window.PlainWorker = Plain;
    window.Worker = class extends Plain {
      constructor(...from) {
        super(...from);
        const asked = [];
        const post = this.postMessage.bind(this);
        this.postMessage = (message) => { asked.push(performance.now()); post(message); };
        this.addEventListener('message', () => window.trips.push(performance.now() - asked.shift()));
      }
    };`);
  await page.goto(`${owner.bench}/making`);
  await page.getByText('Computed from the shape').waitFor();
  await page
    .getByLabel('Wire', { exact: true })
    .first()
    .evaluate((field) => field.setAttribute('data-wire', ''));
  const found: Measured[] = [];
  for (const wire of WIRES) {
    found.push(
      (await page.evaluate(`(async () => {
        const rest = (ms) => new Promise((done) => setTimeout(done, ms));
        const field = document.querySelector('[data-wire]');
        const words = () => [...document.querySelectorAll('figcaption')].map((one) => one.textContent).find((text) => text.includes('Computed from the shape'));
        const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
        const before = words();
        field.focus();
        await rest(900);
        window.trips.length = 0;
        const from = performance.now();
        const shown = new Promise((done) => {
          const watch = new MutationObserver(() => {
            if (words() === before) return;
            watch.disconnect();
            done(performance.now() - from);
          });
          watch.observe(document.body, { subtree: true, childList: true, characterData: true });
        });
        set.call(field, '${wire} mm');
        field.dispatchEvent(new Event('input', { bubbles: true }));
        field.blur();
        const took = await shown;
        const worker = window.trips[0] ?? Number.NaN;
        const empty = new window.PlainWorker(URL.createObjectURL(new Blob(['onmessage = ({ data }) => postMessage(data)'])));
        const line = document.body.appendChild(document.createElement('p'));
        const trip = () => new Promise((done) => {
          const begun = performance.now();
          empty.onmessage = ({ data }) => { line.textContent = data; done(performance.now() - begun); };
          empty.postMessage(before);
        });
        const trips = [];
        for (let n = 0; n < 9; n++) trips.push(await trip());
        const least = trips.sort((a, b) => a - b)[4];
        empty.terminate();
        line.remove();
        return { shown: took, worker, least };
      })()`)) as Measured,
    );
  }
  await context.close();
  return found;
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

try {
  console.log(
    'weave: change to shown words, of that the worker, an empty worker and a paragraph (ms), times the least',
  );
  for (const weave of WEAVES) {
    const found = await measure(weave);
    const [shown, worker, least] = [
      median(found.map((each) => each.shown)),
      median(found.map((each) => each.worker)),
      median(found.map((each) => each.least)),
    ];
    console.log(
      `${weave}: ${shown.toFixed(1)}, ${worker.toFixed(1)}, ${least.toFixed(1)}, ${(shown / least).toFixed(1)}`,
    );
  }
} finally {
  await browser.close();
  await program.stop();
}
