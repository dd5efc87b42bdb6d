import demo from '../../seeds/demo.json' with { type: 'json' };
import { METHOD, sendJson } from './call.ts';
import type { TestService } from './service.ts';

/** Sixteen valves of the demo's shop, every one read; the fifth intake reads low. Invented. */
export async function sixteenValves(service: TestService): Promise<string> {
  const signedIn = await sendJson(service, {}, 'POST', '/api/v1/sessions', {
    email: demo.staff[0]?.email,
    password: demo.password,
  });
  const bearer = { authorization: `Bearer ${String(signedIn.json.token)}` };
  async function send(
    method: 'POST' | 'PUT',
    url: string,
    body: object,
    headers: Record<string, string> = {},
  ) {
    const { status, json, text } = await sendJson(service, bearer, method, `/api/v1${url}`, body, headers);
    if (status >= 300) throw new Error(`${url}: ${status} ${text}`);
    return json;
  }
  const call = await send('POST', '/calls', {
    goal: 'verify-ratio',
    buildLabel: 'Sixteen valves, invented',
    callerName: 'Lin Marsh',
    callerRole: 'builder',
    callBack: 'ext 7',
  });
  const at = `/builds/${String(call.buildId)}`;
  await send('PUT', `/calls/${String(call.id)}/triage`, { engineState: 'apart', contact: 'none' });
  await send('PUT', `${at}/spec`, { spec: demo.spec, reason: 'read out' }, { 'if-match': '"1"' });
  const lifts = (['intake', 'exhaust'] as const).flatMap((valve) =>
    Array.from({ length: 8 }, (_, index) => {
      const [lobe, lift] = valve === 'intake' ? [0.482, 0.843] : [0.471, 0.824];
      const low = valve === 'intake' && index === 4 ? 0.02 : 0;
      const of = { cylinder: index + 1, valve };
      return [
        { ...of, kind: 'lobe-lift', reading: `${lobe.toFixed(3)} in` },
        { ...of, kind: 'valve-lift', reading: `${(lift - low + (index % 3) * 0.001).toFixed(3)} in` },
        { ...of, kind: 'lash', reading: `${valve === 'intake' ? '.016' : '.018'} in` },
      ];
    }).flat(),
  );
  await send('POST', `${at}/sheet`, { spring: 'light', lifter: 'solid', tool: 'indicator', readings: lifts });
  const setUp = await send('POST', `${at}/set-ups`, {
    cylinder: 1,
    valve: 'intake',
    method: { ...METHOD, spring: 'light' },
  });
  for (const [kind, peak] of [
    ['lobe-lift', '.482 in'],
    ['lobe-lift', '.482 in'],
    ['valve-lift', '.843 in'],
    ['valve-lift', '.843 in'],
  ])
    await send('POST', `${at}/set-ups/${String(setUp.id)}/readings`, { kind, peak });
  return String(call.id);
}
