// The house has one direction: pure core <- bench <- app, with the rim doing I/O.
const PURE =
  '^lib/(time|transcript|glossary|chapters|search|rings|weave|kit|lesson|retiming|facts|description|feeds|portable)/|^lib/(result|thing)\\.ts$';
const RIM = '^lib/(recording|storage|data|jobs|access|config|copies|shapes)/';
// Each pure folder may import those that stand above it, and itself.
const ORDER = [
  'time',
  'transcript',
  'glossary',
  'chapters',
  'search',
  'rings',
  'weave',
  'kit',
  'lesson',
  'retiming',
  'facts',
  'description',
  'feeds',
  'portable',
];

module.exports = {
  forbidden: [
    {
      name: 'no-circles',
      severity: 'error',
      from: {},
      to: { circular: true, dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'the-core-is-pure',
      comment: 'The craft knows no file, no database, no clock and no screen.',
      severity: 'error',
      from: { path: PURE },
      to: {
        pathNot: `${PURE}|^node_modules/(zod|entities|cmu-pronouncing-dictionary|diff|feedsmith|schema-dts|stemmer)/`,
      },
    },
    ...ORDER.map((folder, index) => ({
      name: `${folder}-imports-upwards-only`,
      severity: 'error',
      from: { path: `^lib/${folder}/` },
      to: {
        path:
          ORDER.slice(index + 1)
            .map((later) => `^lib/${later}/`)
            .join('|') || '^$',
      },
    })),
    {
      name: 'the-rim-imports-no-action',
      severity: 'error',
      from: { path: RIM },
      to: { path: '^lib/bench/|^app/' },
    },
    { name: 'nothing-imports-app', severity: 'error', from: { path: '^lib/' }, to: { path: '^app/' } },
    {
      name: 'screens-do-no-io',
      comment: 'A page or route asks an action or a query; it never talks to the database itself.',
      severity: 'error',
      from: { path: '^app/' },
      to: { path: '^lib/data/generated/|^node_modules/(pg|pg-boss|@prisma)/' },
    },
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    exclude: { path: '^lib/data/generated|\\.next' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default'],
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.cjs', '.json'],
    },
  },
};
