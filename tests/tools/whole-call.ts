import sharp from 'sharp';
import { demoCatalogueFile } from '../../server/records/catalogue/demo.ts';
import { METHOD, sendJson } from './call.ts';
import type { Person, TestService } from './service.ts';

/** A call with something of every kind in it, made by JSON alone. Invented. */
export interface WholeCall {
  readonly callId: string;
  readonly buildId: string;
  readonly setUpId: string;
  readonly provenReading: string;
  /** The builder's cookie. */
  readonly bench: { readonly 'benchcall-bench': string };
}

const SPEC = {
  engine: {
    cylinders: 8,
    firingOrder: '1-8-4-3-6-5-7-2',
    lifter: 'solid-flat',
    rockerMounting: 'stud',
    coverBolting: 'perimeter',
  },
  cam: { assumedRatio: 1.5, intake: { lobeLift: '.350 in' }, exhaust: { lobeLift: '.350 in' } },
  springs: {
    installedHeight: '1.900 in',
    seatLoad: '130 lbf',
    rate: '350 lbf/in',
    solidHeight: '1.310 in',
    retainerToSeal: '.700 in',
  },
  rockers: { nominalRatio: 1.6, pivotToTip: '1.455 in' },
  pushrods: { intake: '7.880 in', exhaust: '8.280 in', over: 'ends', taken: 'caliper' },
};

const lift = (cylinder: number, kind: string, reading: string) => ({
  cylinder,
  valve: 'intake',
  kind,
  reading,
});
/** Eight intakes on .350 lobes; the fifth reads low by .035 at the valve. */
const EIGHT = [0.56, 0.561, 0.56, 0.559, 0.525, 0.56, 0.561, 0.56].flatMap((valve, index) => [
  lift(index + 1, 'lobe-lift', '.350 in'),
  lift(index + 1, 'valve-lift', `${valve} in`),
]);
const LIGHT = { spring: 'light', lifter: 'solid', tool: 'indicator' };

const PART = [
  { kind: 'hole-across-trunnion', size: '.4355 in' },
  { kind: 'hole-across-trunnion', size: '.4362 in', place: 'turned a quarter turn' },
  { kind: 'width-across-trunnion', size: '1.600 in' },
  { kind: 'rings', word: 'visible' },
  { kind: 'body-width', size: '.841 in' },
  { kind: 'other-number', mark: 'K7 <cast>', place: 'underside' },
];

export async function wholeCall(
  service: TestService,
  person: Person,
  goal = 'verify-ratio',
): Promise<WholeCall> {
  async function send(
    method: 'POST' | 'PUT',
    url: string,
    body: object,
    headers: Record<string, string> = {},
  ) {
    const { json, status, text } = await sendJson(service, person.bearer, method, url, body, headers);
    if (status >= 300) throw new Error(`${url}: ${status} ${text}`);
    return json;
  }
  const post = (url: string, body: object) => send('POST', `/api/v1${url}`, body);
  await post('/catalogue/loads', { csv: demoCatalogueFile() });
  const call = await post('/calls', {
    goal,
    buildLabel: 'Whole build',
    callerName: 'Lin Marsh',
    callerRole: 'builder',
    callBack: 'ext 7',
  });
  const [callId, buildId] = [String(call.id), String(call.buildId)];
  const at = `/builds/${buildId}`;
  await send('PUT', `/api/v1/calls/${callId}/triage`, { engineState: 'apart', contact: 'none' });
  await send('PUT', `/api/v1${at}/spec`, { spec: SPEC, reason: 'read out' }, { 'if-match': '"1"' });
  const marks = { ratioStamp: '1.6', otherNumber: 'K7', boxLabel: 'says one six' };
  const low = String((await post(`${at}/arms`, { name: 'arm E', ...marks })).id);
  const other = String((await post(`${at}/arms`, { name: 'arm D' })).id);
  const place = (armId: string, cylinder: number, reason: string) =>
    post(`${at}/placements`, { armId, cylinder, valve: 'intake', reason });
  await place(low, 5, 'as found');
  await place(other, 4, 'as found');
  const setUp = await post(`${at}/set-ups`, {
    cylinder: 1,
    valve: 'intake',
    method: { ...METHOD, spring: 'light' },
  });
  const setUpId = String(setUp.id);
  const pass = async (kind: string, peak: string) =>
    String((await post(`${at}/set-ups/${setUpId}/readings`, { kind, peak })).id);
  for (const peak of ['.350 in', '.350 in', '.350 in']) await pass('lobe-lift', peak);
  const wrong = await pass('valve-lift', '.460 in');
  await post(`${at}/readings/${wrong}/corrections`, { reason: 'one turn missed' });
  const provenReading = await pass('valve-lift', '.560 in');
  for (const peak of ['.560 in', '.560 in']) await pass('valve-lift', peak);
  await post(`${at}/answers`, {
    question: 'read-back',
    code: 'read-back',
    found: false,
    answer: 'read back, all as entered',
    setUpId,
  });
  await post(`${at}/sheet`, { ...LIGHT, readings: EIGHT });
  await place(low, 4, 'swap test');
  await place(other, 5, 'swap test');
  await post(`${at}/sheet`, {
    ...LIGHT,
    readings: [lift(4, 'valve-lift', '.525 in'), lift(5, 'valve-lift', '.560 in')],
  });
  await post(`${at}/sheet`, {
    ...LIGHT,
    tool: 'wire',
    readings: [
      lift(1, 'rocker-to-retainer', 'more than .024 in, less than .028 in'),
      lift(1, 'cover', '.100 in'),
      lift(1, 'lash', '.016 in'),
    ],
  });
  for (const reading of PART) await post(`${at}/identification/readings`, reading);
  for (const body of [
    {
      computation: 'roller-sweep',
      inputs: { pivotToTip: '1.455 in', netLift: '.560 in', setAt: 'mid-lift' },
    },
  ])
    await post(`${at}/workings`, body);
  await post(`/calls/${callId}/notes`, {
    kind: 'advice',
    body: 'Do not run it on these springs.',
    restsOn: 'coil bind .060',
  });
  await post(`/calls/${callId}/notes`, {
    kind: 'promise',
    body: 'Look up a longer spring',
    owner: 'Sal Reed',
    due: '2027-02-03',
  });
  const picture = await sharp({ create: { width: 640, height: 400, channels: 3, background: '#567' } })
    .jpeg()
    .toBuffer();
  const about = new URLSearchParams({
    shows: 'dial',
    caption: 'the hand at 60',
    readingId: provenReading,
  });
  const kept = await service.request({
    method: 'POST',
    url: `/api/v1${at}/photographs?${about}`,
    headers: { ...person.bearer, 'content-type': 'image/jpeg' },
    payload: picture,
  });
  if (kept.statusCode !== 201) throw new Error(kept.body);
  const link = await post(`/calls/${callId}/share-links`, { holder: 'Lin', days: 1 });
  const opened = await service.request({ method: 'POST', url: `/b/${String(link.secret)}` });
  const bench = opened.cookies.find(({ name }) => name === 'benchcall-bench')?.value ?? '';
  return { callId, buildId, setUpId, provenReading, bench: { 'benchcall-bench': bench } };
}
