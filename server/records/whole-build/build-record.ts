import type { RecordedEvent } from '../../events/build-events.ts';
import type { LimitName } from '../../mechanics/kit/limits.ts';
import { notFound } from '../../problems/failure.ts';
import type { Build } from '../builds/builds.ts';
import type { Call } from '../calls/calls.ts';
import type { PartFamily } from '../catalogue/families.ts';
import type { LoggedLash } from '../lash-log/lash-log.ts';
import type { Limit } from '../limits/known-limits.ts';
import type { SetUp } from '../set-ups/set-ups.ts';
import type { ShareLink } from '../share-links/share-links.ts';
import type { ItemsOf } from './record-part.ts';
import type { RECORD_PARTS } from './record-parts.ts';

/** As much of a call as says that nobody turns the engine; a builder’s link has it of every call. */
export type ToldOfStop = Pick<Call, 'id' | 'held' | 'holdReason' | 'contact'>;

/**
 * Everything of a build as it stood at one moment, as far as the reader may see it. What is said about a build is
 * a function of this and of nothing else. Entries that were replaced or struck out are among it.
 */
export interface BuildRecord extends ItemsOf<typeof RECORD_PARTS> {
  readonly build: Build;
  /** First one first; a builder's link has its own call alone. */
  readonly calls: readonly Call[];
  /** What was told on any call about the build that stops it: one engine stands still for all of them. */
  readonly told: readonly ToldOfStop[];
  readonly lashLines: readonly LoggedLash[];
  /** Empty for everybody but the shop's people. */
  readonly shareLinks: readonly ShareLink[];
  /** The newest ones, oldest of them first. */
  readonly events: readonly RecordedEvent[];
  /** The limits that count in the shop now. */
  readonly limits: ReadonlyMap<LimitName, Limit>;
  /** Nominal ratios of the shop's catalogue, each once, the smallest first. */
  readonly catalogueRatios: readonly number[];
  /** The shop's catalogue; undefined where it was not asked for. */
  readonly catalogue: readonly PartFamily[] | undefined;
}

/** The set-up of this id. Identifiers are the same in capitals and in small letters (RFC 9562, section 4). */
export function setUpOf({ setUps }: Pick<BuildRecord, 'setUps'>, setUpId: string): SetUp {
  const found = setUps.find(({ id }) => id === setUpId.toLowerCase());
  if (found === undefined) throw notFound('set-up');
  return found;
}

export function callOf({ calls }: Pick<BuildRecord, 'calls'>, callId: string): Call {
  const found = calls.find(({ id }) => id === callId.toLowerCase());
  if (found === undefined) throw notFound('call');
  return found;
}

export function limitOf({ limits }: Pick<BuildRecord, 'limits'>, name: LimitName): Limit {
  const limit = limits.get(name);
  if (limit === undefined) throw new Error(`there is no limit ${name}`);
  return limit;
}

/** What a part is ranked against; whoever may see the build may see it. */
export function catalogueOf({ catalogue }: Pick<BuildRecord, 'catalogue'>): readonly PartFamily[] {
  if (catalogue === undefined) throw new Error('the catalogue was not read along with this build');
  return catalogue;
}
