/** Runs before each test file. */
import { afterAll, afterEach } from 'vitest';
import { endFile, endTest } from './at-end.ts';

afterEach(endTest);
afterAll(endFile);
