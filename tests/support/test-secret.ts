/** Signs the sessions of programs under test. By itself, so that benches take it without what runs tests. */
export const TEST_SECRET = 'a secret of tests alone, long enough';
