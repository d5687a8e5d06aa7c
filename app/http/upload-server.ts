/**
 * Receives recordings over tus 1.0: resumable, counted, each upload known to
 * the database from its first byte. Who may do it is asked by the route before
 * a request comes here.
 */
import { statfs } from 'node:fs/promises';
import { FileStore } from '@tus/file-store';
import { MemoryLocker, Server, Upload } from '@tus/server';
import { finishUpload } from '#lib/bench/finish-upload.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { addUpload, dropUpload, findUpload } from '#lib/data/uploads.ts';
import { queue } from '#lib/jobs/queue.ts';
import { uploadsFolder } from '#lib/recording/recording-work.ts';

export const UPLOADS_PATH = '/api/uploads';

/** Which lesson an upload is for, found out by the route when it checked the rights. */
export interface UploadTarget {
  readonly recordingId: string;
  readonly lessonId: string;
  readonly name: string;
}

/** Room that an upload leaves on the disk: a database cannot work without any, bytes. */
const ROOM_LEFT_BYTES = 300 * 1024 ** 2;
const NO_ROOM = 'The disk of the server is full. What was sent is kept; make room, then go on.\n';

const refuse = (status_code: number, body: string): { status_code: number; body: string } => ({
  status_code,
  body,
});

/** What the store remembers of an upload is its recording's row: written whole or not at all. */
const rows = {
  async get(id: string): Promise<Upload | undefined> {
    const row = await findUpload(database(), id);
    return row?.state === 'receiving'
      ? new Upload({ id, size: row.sizeBytes, offset: 0, creation_date: row.createdAt.toISOString() })
      : undefined;
  },
  /** The row was made when the upload was created. */
  async set(): Promise<void> {},
  delete: (id: string): Promise<void> => dropUpload(database(), id),
};

function openServer(targets: WeakMap<object, UploadTarget>): Server {
  const { BENCHLEAF_FILES, BENCHLEAF_LARGEST_RECORDING, BENCHLEAF_ADDRESS } = environment();
  const datastore = new FileStore({ directory: uploadsFolder(BENCHLEAF_FILES), configstore: rows });
  datastore.extensions = ['creation', 'creation-with-upload', 'termination'];
  const targetOf = (request: object): UploadTarget => {
    const target = targets.get(request);
    if (!target) throw refuse(404, 'Not found\n');
    return target;
  };
  return new Server({
    path: UPLOADS_PATH,
    datastore,
    locker: new MemoryLocker(),
    relativeLocation: true,
    maxSize: BENCHLEAF_LARGEST_RECORDING,
    allowedOrigins: [BENCHLEAF_ADDRESS],
    namingFunction: (request) => targetOf(request).recordingId,
    async onUploadCreate(request, upload) {
      const { recordingId, lessonId, name } = targetOf(request);
      const { size } = upload;
      if (size === undefined || !Number.isSafeInteger(size) || size < 1) {
        throw refuse(400, 'Upload-Length must be at least 1\n');
      }
      await checkRoom(BENCHLEAF_FILES, size);
      await addUpload(database(), { recordingId, lessonId, name, sizeBytes: size, createdAt: new Date() });
      return {};
    },
    async onResponseError(_request, error) {
      const full = 'code' in error && (error.code === 'ENOSPC' || error.code === 'EDQUOT');
      return full ? refuse(507, NO_ROOM) : undefined;
    },
    async onUploadFinish(_request, upload) {
      await finishUpload({ db: database() }, await queue(), BENCHLEAF_FILES, upload.id);
      return {};
    },
  });
}

/** @throws a refusal where the disk cannot hold the whole file: better said before than after an hour of sending. */
async function checkRoom(folder: string, bytes: number): Promise<void> {
  const { bavail, bsize } = await statfs(folder);
  if (bavail * bsize < bytes + ROOM_LEFT_BYTES) throw refuse(507, NO_ROOM);
}

const kept = globalThis as {
  benchleafUploads?: { server: Server; targets: WeakMap<object, UploadTarget> };
};

/** Hands a request to the upload server; `target` for one that creates an upload. */
export async function handleUpload(request: Request, target?: UploadTarget): Promise<Response> {
  if (!kept.benchleafUploads) {
    const targets = new WeakMap<object, UploadTarget>();
    kept.benchleafUploads = { server: openServer(targets), targets };
  }
  const { server, targets } = kept.benchleafUploads;
  if (target) targets.set(request, target);
  return server.handleWeb(request);
}
