import { momentText } from '../../web/dates.ts';
import type { CallContext } from '../context.ts';
import type { RejectedForm } from '../forms.ts';
import type { OtherSide } from './spec-form.ts';
import { specText } from './spec-texts.ts';
import { askedOf } from './which-stands.ts';

/** A form of the specification that came back, against the newest revision. */
interface AgainstNewest {
  readonly rejected: RejectedForm | undefined;
  /** What the others have now, where the form was read at an older revision. */
  readonly other: OtherSide | undefined;
}

/**
 * A form that was read at an older revision comes back with both sides: what its writer changed as typed, what
 * they left alone as it is now, and beside each the entry of the newer revision where they differ.
 */
export function againstNewest(context: CallContext, rejected: RejectedForm | undefined): AgainstNewest {
  const { revision, spec } = context.build;
  const read = Number(rejected?.typed.revision);
  const newest = context.revisions.at(-1);
  const asked = askedOf(rejected?.typed ?? {});
  const isNewest = !Number.isInteger(read) || (read === revision && asked.length === 0);
  if (rejected === undefined || isNewest || newest === undefined) return { rejected, other: undefined };
  const then = context.revisions.find((each) => each.revision === read)?.spec ?? {};
  const typed: Record<string, string> = { ...rejected.typed };
  const fields = new Set(asked.filter((path) => typed[path] !== specText(spec, path)));
  for (const path of Object.keys(rejected.typed).filter((name) => name.includes('.'))) {
    const now = specText(spec, path);
    if (typed[path] === specText(then, path)) typed[path] = now;
    else if (typed[path] !== now && now !== specText(then, path)) fields.add(path);
  }
  return {
    rejected: { ...rejected, typed },
    other: { who: newest.by, when: momentText(newest.at), spec, fields },
  };
}
