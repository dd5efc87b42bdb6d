import type { Person, TestService } from './service.ts';

interface Opened {
  readonly callId: string;
  readonly buildId: string;
}

/** Sends JSON as a person and answers the parsed body with the status. */
export async function sendJson(
  service: TestService,
  who: { readonly authorization?: string },
  method: 'GET' | 'POST' | 'PUT' | 'DELETE',
  url: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<{
  status: number;
  headers: Record<string, unknown>;
  json: Record<string, unknown>;
  text: string;
}> {
  const response = await service.request({
    method,
    url,
    headers: { ...who, ...headers, ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
    ...(body === undefined ? {} : { payload: JSON.stringify(body) }),
  });
  const parsed: unknown = response.headers['content-type']?.toString().includes('json')
    ? response.json()
    : {};
  const json =
    typeof parsed === 'object' && parsed !== null ? Object.fromEntries(Object.entries(parsed)) : {};
  return { status: response.statusCode, headers: response.headers, json, text: response.body };
}

export const METHOD = {
  spring: 'running',
  lifter: 'solid',
  lash: 'zero',
  restsOn: 'retainer-flat',
  alignment: 'parallel',
  graduation: { value: 0.001, unit: 'in' },
  perTurn: { value: 0.1, unit: 'in' },
  errorLimit: { value: 0.0025, unit: 'in' },
  lobeSource: 'indicator',
  lobeErrorLimit: { value: 0.002, unit: 'in' },
};

export async function openCall(
  service: TestService,
  person: Person,
  label = 'Test build',
  goal = 'verify-ratio',
): Promise<Opened> {
  const { json, status, text } = await sendJson(service, person.bearer, 'POST', '/api/v1/calls', {
    goal,
    buildLabel: label,
    callerName: 'A caller',
  });
  if (status !== 201) throw new Error(`no call: ${status} ${text}`);
  return { callId: String(json.id), buildId: String(json.buildId) };
}

/** Puts a description of a build in the place of what it has. */
export async function describeBuild(
  service: TestService,
  person: Person,
  buildId: string,
  spec: object,
): Promise<void> {
  const url = `/api/v1/builds/${buildId}`;
  const { headers } = await sendJson(service, person.bearer, 'GET', url);
  const match = { 'if-match': String(headers.etag) };
  const body = { spec, reason: 'test' };
  const { status, text } = await sendJson(service, person.bearer, 'PUT', `${url}/spec`, body, match);
  if (status !== 200) throw new Error(`not described: ${status} ${text}`);
}

export async function startSetUp(
  service: TestService,
  person: Person,
  buildId: string,
  method: object = METHOD,
): Promise<string> {
  const { json, status, text } = await sendJson(
    service,
    person.bearer,
    'POST',
    `/api/v1/builds/${buildId}/set-ups`,
    {
      cylinder: 1,
      valve: 'intake',
      method,
    },
  );
  if (status !== 201) throw new Error(`no set-up: ${status} ${text}`);
  return String(json.id);
}

export async function keepReading(
  service: TestService,
  person: Person,
  buildId: string,
  setUpId: string,
  kind: string,
  peak: unknown,
): Promise<string> {
  const { json, status, text } = await sendJson(
    service,
    person.bearer,
    'POST',
    `/api/v1/builds/${buildId}/set-ups/${setUpId}/readings`,
    { kind, peak },
  );
  if (status !== 201) throw new Error(`no reading: ${status} ${text}`);
  return String(json.id);
}
