import { evidenceOf } from '../../server/assessment/evidence.ts';
import type { Evidence } from '../../server/mechanics/assessment/evidence.ts';
import { callOf } from '../../server/records/whole-build/build-record.ts';
import { readBuildRecord } from '../../server/records/whole-build/load-build.ts';
import type { Person, TestService } from '../tools/service.ts';
import type { KnownThen } from '../tools/told/evidence-text.ts';
import type { Entry } from './entry.ts';
import { openToPlay, type Played, type Playing } from './play.ts';

/** What is known is taken after so many entries, and at the end. */
const EVERY = 3;

const ID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;
const DAY = /"day":"(\d{4}-\d\d-\d\d)"/g;
const TIME = /"since":"[^"]*"/g;
/** In place of the day of the playing: later than any day that is told in a call. */
const TODAY = '2030-01-01';
const YESTERDAY = new Date(Date.now() - 86_400_000).toISOString().slice(0, 10);

/** The same evidence with what is another one in each playing put the same: ids by their names, days and times. */
function asInEveryPlaying(): (evidence: Evidence, kept: ReadonlyMap<string, string>) => Evidence {
  const names = new Map<string, string>();
  const nameOf = (id: string): string => {
    const name = names.get(id) ?? `entry-${names.size + 1}`;
    names.set(id, name);
    return name;
  };
  return (evidence, kept) => {
    for (const [name, id] of kept)
      if (!names.has(id)) names.set(id, name.toLowerCase().replaceAll(/\W+/g, '-'));
    const text = JSON.stringify(evidence)
      .replaceAll(ID, nameOf)
      .replaceAll(DAY, (told, day: string) => (day < YESTERDAY ? told : `"day":"${TODAY}"`))
      .replaceAll(TIME, `"since":"${TODAY}T00:00:00.000Z"`);
    const same: Evidence = JSON.parse(text);
    return same;
  };
}

/** The evidence of the build as it stands now, out of its record. */
async function evidenceNow(
  service: TestService,
  person: Person,
  { buildId, callId }: Playing,
): Promise<Evidence> {
  const reader = {
    kind: 'program',
    shopId: person.shopId,
    id: person.staffId,
    name: '',
    scopes: ['read'],
  } as const;
  const record = await service.deps.db.shopTransaction(
    person.shopId,
    (tx) => readBuildRecord(tx, reader, { buildId }),
    'read',
  );
  return evidenceOf(record, callOf(record, callId));
}

/** A call that was played, with what was known in between and at the end. */
export async function playKnown(
  service: TestService,
  person: Person,
  goal: string,
  entries: readonly Entry[],
): Promise<{ played: Played; times: readonly KnownThen[] }> {
  const same = asInEveryPlaying();
  const playing = await openToPlay(service, person, goal);
  const times: KnownThen[] = [];
  for (const [at, entry] of entries.entries()) {
    await playing.enter(entry);
    const after = at + 1;
    if (after % EVERY === 0 || after === entries.length)
      times.push({ after, evidence: same(await evidenceNow(service, person, playing), playing.kept) });
  }
  return { played: playing, times };
}

/** What is known of a call that was only opened. */
export async function knownOfOpened(service: TestService, person: Person): Promise<Evidence> {
  const playing = await openToPlay(service, person, 'verify-ratio');
  return asInEveryPlaying()(await evidenceNow(service, person, playing), playing.kept);
}
