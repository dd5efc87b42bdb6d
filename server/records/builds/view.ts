import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { moment } from '../../../shared/schemas/answer-parts.ts';
import { buildSpec } from '../../../shared/schemas/build-spec.ts';
import { keysOf, UNIT_SYSTEMS } from '../../../shared/schemas/words.ts';
import type { Build } from './builds.ts';
import type { Revision } from './revisions.ts';

export const buildView = z
  .object({
    id: z.uuid(),
    label: z.string(),
    revision: z.int(),
    version: z.int(),
    units: z.enum(keysOf(UNIT_SYSTEMS)).meta({ description: 'the units of its calls' }),
    spec: buildSpec,
    createdAt: moment,
  })
  .meta({ id: 'Build' });

export const showBuild = (build: Build) =>
  answer(buildView, {
    id: build.id,
    label: build.label,
    revision: build.revision,
    version: build.version,
    units: build.units,
    spec: build.spec,
    createdAt: build.createdAt.toISOString(),
  });

export const revisionView = z
  .object({ revision: z.int(), spec: buildSpec, reason: z.string(), by: z.string(), at: moment })
  .meta({ id: 'Revision' });

export const showRevision = (revision: Revision) =>
  answer(revisionView, {
    revision: revision.revision,
    spec: revision.spec,
    reason: revision.reason,
    by: revision.by,
    at: revision.at.toISOString(),
  });
