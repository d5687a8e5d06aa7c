/**
 * The web process: a plain HTTP server in front of Next. It gives each answer
 * a Content-Security-Policy with a nonce of its own (Next reads it from the
 * request and puts it on its scripts), turns away what is too large, and keeps
 * slow clients from holding connections without cutting a slow upload.
 */
import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import next from 'next';
import { bodyLimit, refusalOf } from '#app/http/admit-request.ts';
import { isPublicPage, sendPaintedFirst, stylesOfBuild } from '#app/http/first-view.ts';
import {
  contentSecurityPolicy,
  EMBED_POLICY,
  headersBelow,
  isEmbedPath,
  securityHeaders,
} from '#app/http/security-headers.ts';
import { type Told, whileListening } from '#app/http/told-status.ts';
import { BUILD_FOLDER } from '#lib/config/build-folder.ts';
import { environment } from '#lib/config/environment.ts';
import { log } from '#lib/config/log.ts';

/** A request's head must be there within this time. */
const HEAD_MS = 30_000;
/** The whole body of an ordinary request must; an upload takes as long as it takes. */
const BODY_MS = 120_000;
/** A connection on which nothing moves at all is closed. */
const IDLE_MS = 180_000;
/** Answers under way may end within this time after the order to stop. */
const GRACE_MS = 3_000;

const { HOST, PORT, BENCHLEAF_ADDRESS, BENCHLEAF_BEHIND_PROXY } = environment();
const fixedHeaders = securityHeaders(BENCHLEAF_ADDRESS);
const ownHost = new URL(BENCHLEAF_ADDRESS).host;

const app = next({ dev: false, dir: import.meta.dirname, hostname: HOST, port: PORT });
await prepareQuietly();
const handle = app.getRequestHandler();
const styleOf = stylesOfBuild(join(import.meta.dirname, BUILD_FOLDER));

const server = createServer((request, response) => {
  answer(request, response).catch((error: unknown) => {
    log().error({ error: String(error), path: pathOf(request) }, 'A request failed');
    if (!response.headersSent) response.writeHead(500, { 'content-type': 'text/plain; charset=utf-8' });
    response.end('Something went wrong on our side. Please try again.');
  });
});

/** Next announces which settings file it read; the terminal is kept for what its reader can use. Faults still show. */
async function prepareQuietly(): Promise<void> {
  const write = console.log;
  console.log = () => undefined;
  try {
    await app.prepare();
  } finally {
    console.log = write;
  }
}

async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
  const nonce = randomBytes(16).toString('base64');
  const path = pathOf(request);
  const mayBeFramed = isEmbedPath(path);
  const policy = mayBeFramed ? EMBED_POLICY : contentSecurityPolicy(nonce);
  // Whatever a client claims here is replaced: only this server speaks about policy and proxies.
  request.headers['content-security-policy'] = policy;
  delete request.headers['content-security-policy-report-only'];
  // A page cannot learn its own address from Next; the sign-in screen leads back to it, a former one on.
  request.headers['x-benchleaf-path'] = path;
  request.headers['x-benchleaf-query'] = (request.url ?? '').slice(path.length);
  if (BENCHLEAF_BEHIND_PROXY === 'no') dropProxyHeaders(request);
  response.setHeader('content-security-policy', policy);
  for (const [name, value] of Object.entries({ ...fixedHeaders, ...headersBelow(path) })) {
    response.setHeader(name, value);
  }
  // An older word for what the policy's last line says.
  if (mayBeFramed) response.removeHeader('x-frame-options');

  const head = { method: request.method ?? 'GET', path, headers: request.headers };
  const refusal = refusalOf(head, [ownHost, request.headers.host ?? ownHost]);
  if (refusal) {
    const { status, ...fault } = refusal;
    response.writeHead(status, { 'content-type': 'application/json' });
    response.end(JSON.stringify({ fault }));
    // Read on and forget: a client cut off while it sends never sees the answer.
    limitBodyTime(request);
    request.resume();
    return;
  }
  if (bodyLimit(path) !== null) limitBodyTime(request);
  const told: Told = { status: null };
  if (isPublicPage(path)) sendPaintedFirst(response, styleOf, () => told.status);
  await whileListening(told, () => handle(request, response));
}

function limitBodyTime(request: IncomingMessage): void {
  if (request.headers['content-length'] === undefined || request.complete) return;
  const timer = setTimeout(() => request.destroy(), BODY_MS);
  request.once('close', () => clearTimeout(timer));
  request.once('end', () => clearTimeout(timer));
}

function dropProxyHeaders(request: IncomingMessage): void {
  for (const name of Object.keys(request.headers)) {
    if (name === 'forwarded' || name === 'x-real-ip' || name.startsWith('x-forwarded-')) {
      delete request.headers[name];
    }
  }
}

const pathOf = (request: IncomingMessage): string => (request.url ?? '/').split('?', 1)[0] ?? '/';

server.headersTimeout = HEAD_MS;
server.requestTimeout = 0;
server.keepAliveTimeout = 65_000;
server.setTimeout(IDLE_MS);
server.on('error', (error: NodeJS.ErrnoException) => {
  process.send?.({ failed: error.code ?? error.message });
  log().fatal({ error: error.message }, 'The web server cannot listen');
  process.exit(1);
});
server.listen(PORT, HOST, () => {
  const { port } = server.address() as AddressInfo;
  process.send?.({ ready: true, port });
  log().info({ host: HOST, port }, 'The web server listens');
});

let stopping = false;
function stop(): void {
  if (stopping) return;
  stopping = true;
  server.close(() => process.exit(0));
  server.closeIdleConnections();
  setTimeout(() => server.closeAllConnections(), GRACE_MS).unref();
  setTimeout(() => process.exit(0), GRACE_MS + 1_000).unref();
}
process.on('SIGTERM', stop);
process.on('SIGINT', stop);
// Whoever started us is gone: nobody would stop us any more.
if (process.send) process.on('disconnect', stop);
