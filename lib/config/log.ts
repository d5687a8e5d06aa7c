/** What the program tells its keeper: JSON lines on standard output. Never anything a teacher wrote. */
import { type Logger, pino } from 'pino';
import { logLevel } from './environment.ts';

let opened: Logger | undefined;

/** The process's log. */
export function log(): Logger {
  opened ??= pino({ level: logLevel(), base: null });
  return opened;
}
