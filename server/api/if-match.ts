import { Failure } from '../problems/failure.ts';

const ETAG = /^"(\d{1,9})"$/;

/** The revision that `If-Match` names, where it is sent. */
export function revisionMatched(header: string | undefined): number | undefined {
  if (header === undefined || header.trim() === '*') return undefined;
  const revision = ETAG.exec(header.trim())?.[1];
  if (revision === undefined)
    throw new Failure('version-stale', 'If-Match must be the strong ETag of the build');
  return Number(revision);
}

/** The same where it must be: without it a change could overwrite another's unseen. */
export function expectedRevision(header: string | undefined): number {
  const revision = revisionMatched(header);
  if (revision === undefined)
    throw new Failure('version-required', 'send If-Match with the ETag of the build you read');
  return revision;
}
