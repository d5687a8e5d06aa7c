/**
 * Uploads of recordings and of portable copies (tus 1.0). Whoever creates one
 * names the lesson, or the workshop alone for a copy, and must be allowed to edit it; the same is asked again at every later request
 * for the upload. Another's upload does not exist.
 */
import { randomUUID } from 'node:crypto';
import { meantMethod, readMetadata, refusedByProtocol } from '#app/http/tus-request.ts';
import { handleUpload } from '#app/http/upload-server.ts';
import { fault, withCaller } from '#app/http/with-member.ts';
import { type Caller, roleSuffices } from '#lib/access/caller.ts';
import { findMembership } from '#lib/access/session.ts';
import { openBench } from '#lib/bench/bench.ts';
import { finishCopyUpload } from '#lib/bench/finish-copy.ts';
import { finishUpload } from '#lib/bench/finish-upload.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { environment } from '#lib/config/environment.ts';
import { findUpload, type UploadRow } from '#lib/data/uploads.ts';
import { queue } from '#lib/jobs/queue.ts';
import { arrived } from '#lib/recording/arriving.ts';

type Params = { tus?: string[] };

const handle = withCaller<Params>(async (received, caller, { tus = [] }) => {
  const request = meantMethod(received);
  if (request.method === 'OPTIONS') return handleUpload(request);
  const refusal = refusedByProtocol(request);
  if (refusal) return refusal;
  if (request.method === 'POST') return tus.length === 0 ? create(request, caller) : fault(404, 'not-found');
  const [id] = tus;
  const upload = id && tus.length === 1 ? await findUpload(openBench().db, id) : null;
  if (!upload || !(await mayUpload(caller, upload.workshopSlug))) return fault(404, 'not-found');
  return goOn(request, upload);
});

async function create(request: Request, caller: Caller): Promise<Response> {
  const metadata = readMetadata(request);
  if (!metadata) return fault(400, 'metadata-not-valid');
  const { workshop = '', lesson = '', filename = '' } = metadata;
  const membership = await findMembership(caller, workshop);
  const opened = membership && lesson !== '' ? await openLesson(membership, lesson) : null;
  if (!membership || (lesson !== '' && !opened)) return fault(404, 'not-found');
  if (!roleSuffices(membership.role, 'editor')) return fault(403, 'role-too-small');
  const name =
    filename
      .replace(/\p{Cc}/gu, ' ')
      .trim()
      .slice(0, 200) || (opened ? 'recording' : 'copy');
  const id = randomUUID();
  return handleUpload(
    request,
    opened
      ? { of: 'recording', id, lessonId: opened.id, name }
      : { of: 'copy', id, workshopId: membership.workshop.id, userId: caller.userId, name },
  );
}

async function mayUpload(caller: Caller, workshopSlug: string): Promise<boolean> {
  const membership = await findMembership(caller, workshopSlug);
  return membership !== null && roleSuffices(membership.role, 'editor');
}

async function goOn(request: Request, upload: UploadRow): Promise<Response> {
  const complete = (): Response =>
    new Response(null, {
      headers: {
        'tus-resumable': '1.0.0',
        'upload-offset': String(upload.sizeBytes),
        'upload-length': String(upload.sizeBytes),
        'cache-control': 'no-store',
      },
    });
  if (!upload.isReceiving) {
    // Its bytes may have been moved already; that they are all there can still be asked.
    return request.method === 'HEAD' ? complete() : fault(410, 'upload-is-complete');
  }
  const { BENCHLEAF_FILES } = environment();
  const { id, sizeBytes } = upload;
  if (request.method === 'HEAD' && (await arrived(BENCHLEAF_FILES, id))?.bytes === sizeBytes) {
    // The process was killed between the last byte and the step after it.
    const finish = upload.of === 'copy' ? finishCopyUpload : finishUpload;
    await finish(openBench(), await queue(), BENCHLEAF_FILES, id);
    return complete();
  }
  return handleUpload(request);
}

export { handle as DELETE, handle as HEAD, handle as OPTIONS, handle as PATCH, handle as POST };
