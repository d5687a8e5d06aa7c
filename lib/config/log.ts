/** What the program tells its keeper: JSON lines on standard output. Never anything a teacher wrote. */
import { type Logger, pino } from 'pino';
import { environment } from './environment.ts';

let opened: Logger | undefined;

/** The process's log, opened at first use so that a build needs no environment. */
export function log(): Logger {
  opened ??= pino({ level: environment().BENCHLEAF_LOG, base: null });
  return opened;
}
