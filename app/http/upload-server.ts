/**
 * Receives recordings and portable copies over tus 1.0: resumable, counted, each upload known to
 * the database from its first byte. Who may do it is asked by the route before
 * a request comes here.
 */
import { statfs } from 'node:fs/promises';
import { FileStore } from '@tus/file-store';
import { MemoryLocker, Server, Upload } from '@tus/server';
import { finishCopyUpload } from '#lib/bench/finish-copy.ts';
import { finishUpload } from '#lib/bench/finish-upload.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { addCopy, dropCopy } from '#lib/data/portable-copies.ts';
import { addUpload, dropUpload, findUpload } from '#lib/data/uploads.ts';
import { queue } from '#lib/jobs/queue.ts';
import { uploadsFolder } from '#lib/recording/recording-work.ts';

export const UPLOADS_PATH = '/api/uploads';

/** What an upload is for, found out by the route when it checked the rights. */
export type UploadTarget = { readonly id: string; readonly name: string } & (
  | { readonly of: 'recording'; readonly lessonId: string }
  | { readonly of: 'copy'; readonly workshopId: string; readonly userId: string }
);

/** A copy of a whole workshop holds many recordings. */
const COPY_OF_RECORDINGS = 50;

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
    return row?.isReceiving
      ? new Upload({ id, size: row.sizeBytes, offset: 0, creation_date: row.createdAt.toISOString() })
      : undefined;
  },
  /** The row was made when the upload was created. */
  async set(): Promise<void> {},
  async delete(id: string): Promise<void> {
    await dropUpload(database(), id);
    await dropCopy(database(), id);
  },
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
    // Later requests are held to the length that the first one announced.
    maxSize: (request, id) => {
      const target = targets.get(request);
      const isMany = target ? target.of === 'copy' : id !== null;
      return BENCHLEAF_LARGEST_RECORDING * (isMany ? COPY_OF_RECORDINGS : 1);
    },
    allowedOrigins: [BENCHLEAF_ADDRESS],
    namingFunction: (request) => targetOf(request).id,
    async onUploadCreate(request, upload) {
      const target = targetOf(request);
      const { size } = upload;
      if (size === undefined || !Number.isSafeInteger(size) || size < 1) {
        throw refuse(400, 'Upload-Length must be at least 1\n');
      }
      await checkRoom(BENCHLEAF_FILES, size);
      await addTarget(target, size);
      return {};
    },
    async onResponseError(_request, error) {
      const full = 'code' in error && (error.code === 'ENOSPC' || error.code === 'EDQUOT');
      return full ? refuse(507, NO_ROOM) : undefined;
    },
    async onUploadFinish(_request, upload) {
      const row = await findUpload(database(), upload.id);
      const finish = row?.of === 'copy' ? finishCopyUpload : finishUpload;
      await finish({ db: database() }, await queue(), BENCHLEAF_FILES, upload.id);
      return {};
    },
  });
}

async function addTarget(target: UploadTarget, sizeBytes: number): Promise<void> {
  const { id, name } = target;
  const row = { name, sizeBytes, createdAt: new Date() };
  if (target.of === 'recording') {
    await addUpload(database(), { ...row, recordingId: id, lessonId: target.lessonId });
  } else {
    await addCopy(database(), { ...row, id, workshopId: target.workshopId, userId: target.userId });
  }
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
