/** @type {import('next').NextConfig} */
const config = {
  // Each checkout or test run may build beside another one.
  distDir: process.env['BENCHLEAF_BUILD_DIR'] ?? '.next',
  // A server in front compresses; compressing here would hold back media and uploads.
  compress: false,
  poweredByHeader: false,
  // A member whose role is too small gets a screen of its own, with status 403.
  experimental: { authInterrupts: true },
  images: { unoptimized: true },
  serverExternalPackages: [
    '@napi-rs/canvas',
    'better-auth',
    '@prisma/client',
    '@prisma/adapter-pg',
    'pg',
    'pg-boss',
    'pdfmake',
    'fontkit',
    'pino',
    'iconv-lite',
    'yauzl',
    'yazl',
  ],
  // Types and lint are checks of their own; a build need not repeat them.
  typescript: { ignoreBuildErrors: true },
  turbopack: { root: import.meta.dirname },
};

export default config;
