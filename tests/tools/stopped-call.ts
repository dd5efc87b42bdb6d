import { memberOf } from '../../shared/member.ts';
import { openCall, sendJson } from './call.ts';
import { makeLink } from './filled-call.ts';
import type { Person, TestService } from './service.ts';

export const RAISED_STOPS = ['gap-short', 'lash-grew-again', 'lobe-worn', 'mark-at-the-edge'] as const;
export type RaisedStop = (typeof RAISED_STOPS)[number];

/** A call that its readings stop, as both sides see it. */
export interface StoppedCall {
  readonly callId: string;
  readonly buildId: string;
  /** The entry that a builder would strike to be rid of the stop, and where its correction is posted as JSON. */
  readonly entryId: string;
  readonly corrections: string;
  /** The page on which that entry is put right, below the call. */
  readonly page: string;
  /** The builder’s own: by bearer and by cookie. */
  readonly link: { readonly authorization: string };
  readonly bench: { readonly 'benchcall-bench': string };
}

const HOW = { spring: 'light', lifter: 'solid', tool: 'indicator' };

/** Invented figures: what raises each kind of stop, entry by entry; the last one does. */
const RAISED_BY: Readonly<
  Record<RaisedStop, readonly { readonly to: 'sheet' | 'lash' | 'tip-marks'; readonly body: object }[]>
> = {
  'gap-short': [
    {
      to: 'sheet',
      body: {
        ...HOW,
        readings: [{ cylinder: 3, valve: 'exhaust', kind: 'piston-to-valve', reading: '.051 in' }],
      },
    },
  ],
  'lash-grew-again': (['set', 'found', 'set', 'found'] as const).map((moment, index) => ({
    to: 'lash',
    body: {
      cylinder: 2,
      valve: 'intake',
      lash: moment === 'set' ? '.017 in' : '.026 in',
      moment,
      engine: 'cold',
      nut: 'held',
      readOn: `2026-02-0${index + 1}`,
    },
  })),
  'lobe-worn': [
    {
      to: 'sheet',
      body: {
        ...HOW,
        readings: [0.341, 0.342, 0.329, 0.341].map((lobe, index) => ({
          cylinder: index + 1,
          valve: 'exhaust',
          kind: 'lobe-lift',
          reading: `${lobe} in`,
        })),
      },
    },
  ],
  'mark-at-the-edge': [
    {
      to: 'tip-marks',
      body: {
        cylinder: 4,
        valve: 'intake',
        width: '.120 in',
        side: 'exhaust',
        off: '.125 in',
        stem: '.342 in',
        found: 'fresh-ink',
      },
    },
  ],
};

interface Kept {
  readonly status: number;
  readonly json: Record<string, unknown>;
  readonly text: string;
}

/** The id of the entry that was kept; of a sheet the third, which is the worn lobe, or the only one. */
function idIn({ status, json, text }: Kept): string {
  if (status !== 201) throw new Error(`${status} ${text}`);
  const { kept } = json;
  const entry: unknown = Array.isArray(kept) ? (kept[2] ?? kept[0]) : (json.reading ?? json);
  return String(memberOf(entry, 'id'));
}

/** Raises a stop of one kind by readings alone, on a call of its own; `before` is kept before anything stops it. */
export async function stoppedCall(
  service: TestService,
  desk: Person,
  kind: RaisedStop,
  before: readonly { readonly to: string; readonly body: object }[] = [],
): Promise<StoppedCall> {
  const { callId, buildId } = await openCall(service, desk, `Stopped by ${kind}`);
  const build = `/api/v1/builds/${buildId}`;
  let entryId = '';
  for (const { to, body } of [...before, ...RAISED_BY[kind]])
    entryId = idIn(await sendJson(service, desk.bearer, 'POST', `${build}/${to}`, body));
  const { secret, bench } = await makeLink(service, desk, callId);
  const mark = kind === 'mark-at-the-edge';
  return {
    callId,
    buildId,
    entryId,
    corrections: mark
      ? `${build}/tip-marks/${entryId}/corrections`
      : `${build}/sheet/readings/${entryId}/corrections`,
    page: mark ? `/tip-marks/${entryId}` : `/sheet/readings/${entryId}`,
    link: { authorization: `Bearer ${secret}` },
    bench: { 'benchcall-bench': bench },
  };
}

interface Stop {
  readonly id: string;
  readonly code: string;
  readonly sentence: string;
  readonly from: string;
  readonly answered: boolean;
}

/** The stops that stand, as the assessment of the call says them in JSON. */
export async function stopsOf(
  service: TestService,
  who: { readonly authorization?: string },
  buildId: string,
): Promise<Stop[]> {
  const { json } = await sendJson(service, who, 'GET', `/api/v1/builds/${buildId}/assessment`);
  const stop: unknown = json.stop;
  if (!Array.isArray(stop)) throw new Error('the assessment has no list of stops');
  return stop.map((each: unknown) => ({
    id: String(memberOf(each, 'id')),
    code: String(memberOf(each, 'code')),
    sentence: String(memberOf(each, 'sentence')),
    from: String(memberOf(each, 'from')),
    answered: memberOf(each, 'answered') === true,
  }));
}
