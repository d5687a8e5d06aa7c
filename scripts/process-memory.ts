/**
 * How V8 is told to spend memory in our processes. Bytes of recordings pass
 * through them as short-lived buffers; a small nursery gives them back soon,
 * and keeps a web process that receives a gigabyte some 45 MB smaller
 * (measured with tests/http/large-upload.test.ts).
 */
export const MEMORY_FLAGS = ['--max-semi-space-size=2'] as const;
