/**
 * npm run new-password -- someone@example.org: prints a one-time address by
 * which this person chooses a new password. For whoever keeps the server.
 */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { issueNewPassword, NEW_PASSWORD_HOURS } from '#lib/access/new-password.ts';
import { openDatabase } from '#lib/data/database.ts';
import { databaseAddress, portOfRunning } from '#lib/data/embedded-server.ts';
import { PlainFault } from './plain-fault.ts';
import { addressNote, databaseFolder, keepSecrets, stateFolder } from './state-folder.ts';

const ROOT = join(import.meta.dirname, '..');

try {
  await main(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof PlainFault)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}

async function main([email, ...more]: readonly string[]): Promise<void> {
  if (!email || more.length > 0)
    throw new PlainFault('Say whose, by e-mail address: npm run new-password -- someone@example.org');
  if (existsSync(join(ROOT, '.env'))) process.loadEnvFile(join(ROOT, '.env'));
  const folder = stateFolder(ROOT);
  const db = openDatabase(process.env['DATABASE_URL'] ?? (await runningDatabase(folder)));
  try {
    const issued = await issueNewPassword(db, email, new Date());
    if (!issued) throw new PlainFault(`Nobody has an account under ${email} here.`);
    const site =
      process.env['BENCHLEAF_ADDRESS'] ?? (await readFile(addressNote(folder), 'utf8').catch(() => ''));
    console.log(`For ${issued.name}, once, within ${NEW_PASSWORD_HOURS} hours:  ${site}${issued.path}`);
    console.log('Give it to nobody else: whoever opens it can choose the password.');
  } finally {
    await db.$disconnect();
  }
}

async function runningDatabase(folder: string): Promise<string> {
  const port = await portOfRunning(databaseFolder(folder));
  if (port === null)
    throw new PlainFault(
      'Benchleaf does not run from this folder, or not as this user. Start it with npm start, then do this in a second terminal.',
    );
  return databaseAddress((await keepSecrets(folder)).database, port, 'benchleaf');
}
