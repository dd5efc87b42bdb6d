import { speaking } from '../../../shared/quantities/spoken-units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { reviseBuild as reviseInput } from '../../../shared/schemas/commands.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { Failure } from '../../problems/failure.ts';
import { type Build, getBuild } from '../../records/builds/builds.ts';
import { listRevisions, reviseBuild } from '../../records/builds/revisions.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import { wantsOutcomeAlone } from '../../web/http/outcome-alone.ts';
import { type Destination, freeForm, type StepForm } from '../step-form.ts';
import { changedFields, mergeSpec } from './merge-spec.ts';
import { againstNow, collisionSaid } from './merge-stale.ts';
import { afterPicks, standsFaults } from './which-stands.ts';

/** The revision that the form was read at; undefined where it names none. */
async function readAt(
  tx: Tx,
  principal: Principal,
  build: Build,
  revision: string,
): Promise<{ readonly revision: number; readonly spec: BuildSpec } | undefined> {
  if (!/^\d{1,9}$/.test(revision)) return undefined;
  if (Number(revision) === build.revision) return build;
  const all = await listRevisions(tx, principal, build.id);
  return all.find((each) => each.revision === Number(revision));
}

/** Nothing of it is kept: what both have changed is looked at by its writer first. */
function stale(
  build: Build,
  read: { readonly revision: number } | undefined,
  collide: readonly string[],
): Failure {
  const at = `you read revision ${read?.revision ?? 'none'}; it is now at revision ${build.revision}`;
  const said =
    collide.length === 0 ? '' : `: ${speaking(build.units, () => collisionSaid(build.spec, collide))}`;
  return new Failure('version-stale', `${at}${said}`);
}

/**
 * A form over a part of the specification: keeps one new revision with it. What others have kept since it was read
 * stays, and it is refused only where both have changed the same. A form that changes nothing makes no revision.
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
      const { revision = '', ...posted } = req.fields;
      const build = await getBuild(tx, principal, call.buildId);
      const read = await readAt(tx, principal, build, revision);
      const { fields, collide, merged, changed } = speaking(build.units, () => {
        const picked = afterPicks(build.spec, posted);
        const own = againstNow(read?.spec ?? build.spec, build.spec, picked.fields);
        return {
          fields: own.fields,
          collide: [...new Set([...own.collide, ...picked.open])],
          changed: changedFields(build.spec, own.fields),
          merged: mergeSpec(build.spec, own.fields),
        };
      });
      if (!merged.ok) return { faults: merged.faults, typed: req.fields };
      const isPage = !wantsOutcomeAlone(req.request);
      if (read !== undefined && collide.length > 0 && isPage) {
        const all = await listRevisions(tx, principal, build.id);
        const who = all.at(-1)?.by ?? 'the other side';
        return {
          faults: speaking(build.units, () => standsFaults(build.spec, req.fields, who, collide)),
          typed: req.fields,
        };
      }
      if (read === undefined || collide.length > 0) throw stale(build, read, collide);
      if (changed.length > 0) {
        const input = reviseInput.parse({ spec: merged.spec, reason: of.reason });
        await reviseBuild(tx, principal, call.buildId, input, build.revision);
      }
      return of.to(fields);
    },
  });
}
