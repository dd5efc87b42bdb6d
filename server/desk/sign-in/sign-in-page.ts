import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { someWords } from '../../../shared/schemas/texts.ts';
import { hashOf } from '../../auth/secrets.ts';
import { endBuilderSession, endSessions, signIn } from '../../auth/sign-in.ts';
import { Failure } from '../../problems/failure.ts';
import { noticeComponent } from '../../web/components.ts';
import type { Deps } from '../../web/deps.ts';
import { type FormState, FRESH, summaryOf, textField } from '../../web/forms/fields.ts';
import { fieldsOf, readForm } from '../../web/forms/read-form.ts';
import { renderPage } from '../../web/pages/render.ts';
import {
  clearSecretCookie,
  knownSecret,
  pagePrincipal,
  pageSecret,
  setKnownCookie,
  setSecretCookie,
} from '../../web/principals.ts';
import { LABELS, withoutPassword } from '../settings/access-fields.ts';

const credentials = z.strictObject({
  email: someWords('E-mail address', 320),
  password: someWords('Password', 1000),
});

/** A path of ours to go on to after signing in; anything else is the list of calls. */
function ownPath(next: unknown): string {
  // Visible ASCII alone: it goes into a header.
  const own = /^\/(calls|desk|account|reference|catalogue)([/?][\x21-\x5b\x5d-\x7e]*)?$/;
  return typeof next === 'string' && own.test(next) ? next : '/calls';
}

function signInPage(
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  shown: FormState,
  { next, signedOut = false }: { readonly next: string; readonly signedOut?: boolean },
  status = 200,
): Promise<FastifyReply> {
  return renderPage(deps, request, reply, {
    template: 'plain',
    title: status === 200 ? 'Sign in' : 'Error: Sign in',
    status,
    place: '/sign-in',
    data: {
      title: 'Sign in',
      intro: 'For the people of the support desk. Builders open the link they were sent.',
      errors: summaryOf(shown, LABELS),
      sections: [
        ...(signedOut
          ? [noticeComponent('You are signed out: this browser opens no call and no build any more.')]
          : []),
        {
          template: '/parts/form',
          data: {
            action: '/sign-in',
            hidden: { next },
            slots: [
              textField(shown, 'email', LABELS.email, {
                type: 'email',
                autocomplete: 'username',
                autofocus: true,
              }),
              textField(shown, 'password', LABELS.password, {
                type: 'password',
                autocomplete: 'current-password',
              }),
            ],
            buttons: [{ kind: 'primary', label: 'Sign in' }],
          },
        },
      ],
    },
  });
}

/** Signing in and out. */
export function signInRoutes(app: FastifyInstance, deps: Deps): void {
  app.get<{ Querystring: { next?: string; out?: string } }>(
    '/sign-in',
    { schema: { hide: true } },
    (request, reply) => {
      const { next, out } = request.query;
      return signInPage(deps, request, reply, FRESH, { next: ownPath(next), signedOut: out !== undefined });
    },
  );
  app.post('/sign-in', { schema: { hide: true } }, async (request, reply) => {
    const { next, ...fields } = fieldsOf(request.body);
    const target = ownPath(next);
    const read = readForm(credentials, fields, { lengths: 'in' });
    if (!read.ok)
      return signInPage(
        deps,
        request,
        reply,
        { typed: withoutPassword(fields), faults: read.faults },
        { next: target },
        422,
      );
    try {
      const before = await pagePrincipal(request, deps, 'desk');
      const signed = await signIn(
        deps.db,
        deps.signInLimits,
        { ...read.data, address: request.ip, browser: { secret: knownSecret(request, deps) } },
        deps.now(),
      );
      if (before?.kind === 'staff')
        await endSessions(deps.db, before.shopId, { sessionId: before.sessionId }, deps.now());
      setSecretCookie(reply, deps, 'desk', signed.secret, signed.expiresAt);
      if (signed.device !== undefined)
        setKnownCookie(reply, deps, signed.device.secret, signed.device.expiresAt);
      return await reply.code(303).header('location', target).header('cache-control', 'no-store').send();
    } catch (error) {
      if (
        !(error instanceof Failure) ||
        (error.code !== 'sign-in-refused' && error.code !== 'quota-exceeded')
      )
        throw error;
      reply.headers(error.headers);
      const faults = [{ field: '', detail: error.detail }];
      return signInPage(
        deps,
        request,
        reply,
        { typed: withoutPassword(fields), faults },
        { next: target },
        error.code === 'quota-exceeded' ? 429 : 422,
      );
    }
  });
  app.post('/sign-out', { schema: { hide: true } }, async (request, reply) => {
    const principal = await pagePrincipal(request, deps, 'desk');
    if (principal?.kind === 'staff')
      await endSessions(deps.db, principal.shopId, { sessionId: principal.sessionId }, deps.now());
    // What was opened by a builder's link in this browser ends as well: nothing is left to go on with.
    const bench = pageSecret(request, deps, 'bench');
    if (bench !== undefined) await endBuilderSession(deps.db, hashOf(bench));
    for (const side of ['desk', 'bench'] as const) clearSecretCookie(reply, deps, side);
    return reply.code(303).header('location', '/sign-in?out=1').header('cache-control', 'no-store').send();
  });
}
