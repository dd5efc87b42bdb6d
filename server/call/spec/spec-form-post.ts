import { speaking } from '../../../shared/quantities/spoken-units.ts';
import { reviseBuild as reviseInput } from '../../../shared/schemas/commands.ts';
import { getBuild } from '../../records/builds/builds.ts';
import { reviseBuild } from '../../records/builds/revisions.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import { type Destination, freeForm, type StepForm } from '../step-form.ts';
import { changedFields, mergeSpec } from './merge-spec.ts';

/**
 * A form over a part of the specification: keeps one new revision with it, and what others keep elsewhere is not
 * touched. A form that changes nothing makes no revision.
 */
export function specFormPost(of: {
  readonly path: string;
  /** Why the revision was made, as the log tells it. */
  readonly reason: string;
  to(fields: Fields): Destination;
}): StepForm {
  return freeForm({
    path: of.path,
    run: async ({ tx, req, principal, call }) => {
      const { revision = '', ...fields } = req.fields;
      const build = await getBuild(tx, principal, call.buildId);
      const { units } = build;
      const { merged, changed } = speaking(units, () => ({
        merged: mergeSpec(build.spec, fields),
        changed: changedFields(build.spec, fields),
      }));
      if (!merged.ok) return { faults: merged.faults, typed: req.fields };
      const expected = /^\d{1,9}$/.test(revision) ? Number(revision) : 0;
      const changes = expected !== build.revision || changed.length > 0;
      if (changes) {
        const input = reviseInput.parse({ spec: merged.spec, reason: of.reason });
        await reviseBuild(tx, principal, call.buildId, input, expected);
      }
      return of.to(fields);
    },
  });
}
