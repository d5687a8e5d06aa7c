/** What the tus 1.0 protocol asks of a request, as far as the upload server leaves it to us. */
import { Metadata } from '@tus/server';

const VERSION = '1.0.0';

/** An answer that ends a request early, or null where it may go on. */
export function refusedByProtocol(request: Request): Response | null {
  const version = request.headers.get('tus-resumable');
  if (version !== VERSION) {
    return new Response('Tus-Resumable must be 1.0.0\n', {
      status: 412,
      headers: { 'tus-resumable': VERSION, 'tus-version': VERSION },
    });
  }
  const type = request.headers.get('content-type');
  if (request.method === 'PATCH' && type !== 'application/offset+octet-stream') {
    return new Response('Content-Type must be application/offset+octet-stream\n', {
      status: 415,
      headers: { 'tus-resumable': VERSION },
    });
  }
  return null;
}

/** Some networks let only GET and POST through: the method that was meant stands in a header. */
export function meantMethod(request: Request): Request {
  const meant = request.headers.get('x-http-method-override')?.toUpperCase();
  if (request.method !== 'POST' || !meant || !['PATCH', 'DELETE', 'HEAD'].includes(meant)) return request;
  const headers = new Headers(request.headers);
  headers.delete('x-http-method-override');
  const body = meant === 'PATCH' ? { body: request.body, duplex: 'half' } : {};
  return new Request(request.url, { method: meant, headers, signal: request.signal, ...body } as RequestInit);
}

/** What an upload says about itself; null where the header is not valid. */
export function readMetadata(request: Request): Readonly<Record<string, string>> | null {
  try {
    const pairs = Object.entries(Metadata.parse(request.headers.get('upload-metadata') ?? undefined));
    return Object.fromEntries(pairs.map(([key, value]) => [key, value ?? '']));
  } catch {
    return null;
  }
}
