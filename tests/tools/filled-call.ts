import { expect } from 'vitest';
import { memberOf } from '../../shared/member.ts';
import { keepReading, openCall, sendJson, startSetUp } from './call.ts';
import type { Person, TestService } from './service.ts';

/** A share link of the call, opened once. */
export async function makeLink(
  service: TestService,
  owner: Person,
  callId: string,
): Promise<{ id: string; secret: string; bench: string }> {
  const made = await sendJson(service, owner.bearer, 'POST', `/api/v1/calls/${callId}/share-links`, {
    holder: 'B',
    days: 1,
  });
  const secret = String(made.json.secret);
  const link: unknown = made.json.link;
  const opened = await service.request({ method: 'POST', url: `/b/${secret}` });
  const bench = opened.cookies.find((cookie) => cookie.name === 'benchcall-bench')?.value ?? '';
  expect(bench, 'the link must open for this test to mean anything').not.toBe('');
  const id = memberOf(link, 'id');
  return { id: String(id), secret, bench };
}

/** A call of `owner` with something of every kind in it, and the id of each by its name in an address. */
export async function filledCall(
  service: TestService,
  owner: Person,
  words: string,
): Promise<Record<string, string> & { readonly callId: string; readonly buildId: string }> {
  const mine = await openCall(service, owner, words);
  const setUpId = await startSetUp(service, owner, mine.buildId);
  const readingId = await keepReading(service, owner, mine.buildId, setUpId, 'valve-lift', '.842 in');
  const method = { alignment: 'parallel' };
  await sendJson(
    service,
    owner.bearer,
    'POST',
    `/api/v1/builds/${mine.buildId}/set-ups/${setUpId}/corrections`,
    {
      method,
      reason: words,
    },
  );
  const mineLink = await makeLink(service, owner, mine.callId);
  const note = await sendJson(service, owner.bearer, 'POST', `/api/v1/calls/${mine.callId}/notes`, {
    kind: 'promise',
    body: words,
  });
  const key = await sendJson(service, owner.bearer, 'POST', '/api/v1/keys', {
    name: words,
    scopes: ['read'],
  });
  const keyView: unknown = key.json.key;
  return {
    callId: mine.callId,
    buildId: mine.buildId,
    setUpId,
    readingId,
    linkId: mineLink.id,
    noteId: String(note.json.id),
    keyId: String(memberOf(keyView, 'id')),
    staffId: owner.staffId,
    armId: crypto.randomUUID(),
    step: 'ratio',
    secret: 'bcl_none',
  };
}
