import { memberOf } from '../../shared/member.ts';
import { keepReading, openCall, sendJson, startSetUp } from './call.ts';
import type { Person, TestService } from './service.ts';
import { openStream, type StreamClient } from './stream-client.ts';

/** A call that both sides look at: the desk by a session, the builder by a link. */
export interface LiveCall {
  readonly desk: Person;
  readonly callId: string;
  readonly buildId: string;
  readonly setUpId: string;
  readonly linkId: string;
  /** The builder's cookie, as a header. */
  readonly bench: { readonly cookie: string };
  /** The desk's cookie, as a header. */
  readonly cookie: { readonly cookie: string };
  /** Keeps one reading through the first process; answers its id. */
  keep(): Promise<string>;
  /** The newest sequence number in the record. */
  newest(): Promise<number>;
}

export const BUILDER = 'Pat at the engine';

export async function liveCall(service: TestService, deskName = 'Robin at the desk'): Promise<LiveCall> {
  const desk = await service.person({ name: deskName });
  const { callId, buildId } = await openCall(service, desk);
  const setUpId = await startSetUp(service, desk, buildId);
  const shared = await sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${callId}/share-links`, {
    holder: BUILDER,
    days: 1,
  });
  if (shared.status !== 201) throw new Error(`no link: ${shared.status} ${shared.text}`);
  const { secret } = shared.json;
  const opened = await service.request({ method: 'POST', url: `/b/${String(secret)}` });
  const bench = opened.cookies.find((each) => each.name === 'benchcall-bench')?.value ?? '';
  return {
    desk,
    callId,
    buildId,
    setUpId,
    linkId: String(memberOf(shared.json.link, 'id')),
    bench: { cookie: `benchcall-bench=${bench}` },
    cookie: { cookie: `benchcall-desk=${desk.cookies['benchcall-desk']}` },
    keep: () => keepReading(service, desk, buildId, setUpId, 'valve-lift', '.842 in'),
    async newest() {
      const { rows } = await service.database.asOwner(
        'select last_seq::int as seq from build where id = $1',
        [buildId],
      );
      return Number(rows[0]?.seq);
    },
  };
}

/** The builder's stream of the call, from where the record is now or from `after`. */
export async function benchStream(base: string, call: LiveCall, after?: number): Promise<StreamClient> {
  const from = after ?? (await call.newest());
  return openStream(`${base}/live/bench?step=ratio&after=${from}`, call.bench);
}

/** Whole numbers from `first` to `last`. */
export const range = (first: number, last: number): number[] =>
  Array.from({ length: last - first + 1 }, (_, index) => first + index);
