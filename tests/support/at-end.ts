/**
 * What is to be done when a test, or a test file, is done. Test files share
 * processes, and modules with them, so a hook that a module registers when it
 * loads would be there for one file only: each-file.ts, which runs before every
 * file, asks for what is noted here.
 */
type End = () => void | Promise<void>;

const ofFile: End[] = [];
const ofEachTest: End[] = [];

/** Once, when the present test file is done; the last noted comes first. */
export const atEndOfFile = (end: End): void => void ofFile.push(end);

/** After each test from now on, of whatever file; for modules to call as they load. */
export const atEndOfEachTest = (end: End): void => void ofEachTest.push(end);

export async function endFile(): Promise<void> {
  for (let end = ofFile.pop(); end; end = ofFile.pop()) await end();
}

export async function endTest(): Promise<void> {
  for (const end of ofEachTest) await end();
}
