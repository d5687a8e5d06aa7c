/**
 * The environment, read once and checked whole. The only file that may look
 * at `process.env`. `npm start` sets what is not set; .env.example lists all.
 */
import { z } from 'zod';

const schema = z.object({
  /** PostgreSQL connection address. */
  DATABASE_URL: z.string().regex(/^postgres(ql)?:\/\//, 'must start with postgresql://'),
  /** Folder, absolute, for recordings and what is made from them. */
  BENCHLEAF_FILES: z.string().startsWith('/', 'must be an absolute path'),
  /** The address under which people reach the site, without a slash at its end. */
  BENCHLEAF_ADDRESS: z.url().refine((text) => !text.endsWith('/'), 'must not end with a slash'),
  /** Signs sessions; at least 32 characters. */
  BENCHLEAF_SECRET: z.string().min(32, 'must have at least 32 characters'),
  PORT: z.coerce.number().int().min(0).max(65_535).default(3000),
  HOST: z.string().default('127.0.0.1'),
  /** Largest recording that is accepted, bytes. */
  BENCHLEAF_LARGEST_RECORDING: z.coerce
    .number()
    .int()
    .positive()
    .default(20 * 1024 ** 3),
  /** ffmpeg, where it is not found by itself. */
  FFMPEG_BIN: z.string().optional(),
  /**
   * Whether a server in front of ours sets the X-Forwarded headers. Otherwise
   * they are dropped, since anybody could have written them.
   */
  BENCHLEAF_BEHIND_PROXY: z.enum(['yes', 'no']).default('no'),
  BENCHLEAF_LOG: z.enum(['silent', 'error', 'warn', 'info', 'debug']).default('info'),
});

/** Names of all settings, for .env.example to be held against. */
export const SETTINGS: readonly string[] = Object.keys(schema.shape);

export type Environment = Readonly<z.infer<typeof schema>>;

/** How much is logged; does not ask for the other settings, so that tools can log too. */
export const logLevel = (): Environment['BENCHLEAF_LOG'] =>
  schema.shape.BENCHLEAF_LOG.catch('info').parse(process.env['BENCHLEAF_LOG']);

let parsed: Environment | undefined;

/**
 * The environment, parsed at first use so that a build needs none of it.
 * @throws one Error that lists every setting that is missing or wrong.
 */
export function environment(): Environment {
  parsed ??= parse();
  return parsed;
}

function parse(): Environment {
  const result = schema.safeParse(process.env);
  if (result.success) return Object.freeze(result.data);
  const faults = result.error.issues.map((issue) => `  ${issue.path.join('.')}: ${issue.message}`);
  throw new Error(`These settings are missing or wrong:\n${faults.join('\n')}`);
}
