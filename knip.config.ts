import type { KnipConfig } from 'knip';

const config: KnipConfig = {
  entry: [
    'server.ts',
    'worker.ts',
    'scripts/*.{ts,mjs}',
    'tests/**/*.{test,bench}.ts',
    'tests/jobs/stuck-worker.ts',
    'prisma/demo/make-*.ts',
  ],
  project: ['**/*.{ts,tsx,mjs,css}'],
  // Of the system, not of a package.
  ignoreBinaries: ['apt-get', 'useradd', 'espeak-ng', 'ffmpeg', 'prlimit'],
  // A type that its own file uses may be exported for whoever reads a signature.
  ignoreExportsUsedInFile: true,
  // Its fonts are read as files: app/paper/signs.ts.
  ignoreDependencies: ['dejavu-fonts-ttf'],
  compilers: {
    // Styles import the fonts.
    css: (text: string) =>
      [...text.matchAll(/@import\s+['"]([^'"]+)['"]/g)].map(([, from]) => `import '${from}';`).join('\n'),
  },
};

export default config;
