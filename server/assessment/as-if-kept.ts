import type { BuildRecord } from '../records/whole-build/build-record.ts';

/** What an entry has that is looked at before it is kept: it comes after all that is on record, and stands. */
export const asIfKept = ({ build }: BuildRecord) => ({
  seq: build.version + 1,
  replaces: undefined,
  replacedBy: undefined,
  struck: false,
  reason: '',
  by: '',
  byKind: '',
  at: build.createdAt,
});
