/** Runs once before tests that need the built program. */
import { prepareSite } from '../../scripts/prepare-build.ts';

export async function setup(): Promise<void> {
  await prepareSite(console.log);
}
