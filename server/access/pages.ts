import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { someWords } from '../../shared/schemas/texts.ts';
import type { Deps } from '../deps.ts';
import { FRESH, type Shown, summaryOf, textField } from '../forms/fields.ts';
import { fieldsOf, readForm } from '../forms/read-form.ts';
import { clearSecretCookie, pageCaller, setOpeningCookie, setSecretCookie } from '../http/callers.ts';
import { renderPage } from '../pages/render.ts';
import { Failure } from '../problems/failure.ts';
import { createFirstAdministrator, wasMadeJustNow } from './first-administrator.ts';
import { passwordFault } from './password-rules.ts';
import { hashOf, kindOfSecret } from './secrets.ts';
import { endSessions, openShareLink, signIn } from './sign-in.ts';

const credentials = z.strictObject({
  email: someWords('E-mail address', 320),
  password: someWords('Password', 1000),
});
const firstPerson = z.strictObject({
  shop: someWords('Name of the shop'),
  name: someWords('Your name'),
  email: someWords('E-mail address', 320),
  password: someWords('Password', 1000),
});
const LABELS = { email: 'E-mail address', password: 'Password', shop: 'Name of the shop', name: 'Your name' };

/** A path of ours to go on to after signing in; anything else is the list of calls. */
function ownPath(next: unknown): string {
  // Visible ASCII alone: it goes into a header.
  const own = /^\/(calls|desk|account|reference|catalogue)([/?][\x21-\x5b\x5d-\x7e]*)?$/;
  return typeof next === 'string' && own.test(next) ? next : '/calls';
}

/** What was typed, without the password: that is never sent back. */
function keep(fields: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const { password: _, ...rest } = fields;
  return rest;
}

function signInPage(
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  shown: Shown,
  next: string,
  status = 200,
): FastifyReply {
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
        {
          template: '/parts/form',
          data: {
            action: '/sign-in',
            hidden: { next },
            slots: [
              textField(shown, 'email', LABELS.email, { type: 'email', autocomplete: 'username' }),
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

/** A page whose address is a secret: not kept, not listed, not told to another address. */
function keepToItself(deps: Deps, reply: FastifyReply): void {
  reply.headers({
    'cache-control': 'no-store',
    'referrer-policy': 'no-referrer',
    'x-robots-tag': 'noindex, nofollow',
  });
  setOpeningCookie(reply, deps);
}

function openingPage(deps: Deps, request: FastifyRequest, reply: FastifyReply, secret: string): FastifyReply {
  keepToItself(deps, reply);
  return renderPage(deps, request, reply, {
    template: 'plain',
    title: 'Open your build',
    side: 'open',
    data: {
      title: 'Your build is ready to look at together',
      intro:
        'The desk sent you this link for one build. Whoever has the link can see it and enter readings, so keep it to yourself.',
      sections: [
        {
          template: '/parts/form',
          data: { action: `/b/${secret}`, slots: [], buttons: [{ kind: 'primary', label: 'Open my build' }] },
        },
      ],
    },
  });
}

const firstPage = (
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  secret: string,
  shown: Shown,
  status = 200,
) => {
  keepToItself(deps, reply);
  return renderPage(deps, request, reply, {
    template: 'plain',
    title: status === 200 ? 'The first administrator' : 'Error: The first administrator',
    status,
    data: {
      title: 'The first administrator',
      intro: 'This link works once. Whoever signs in here first runs the desk and adds the others.',
      errors: summaryOf(shown, LABELS),
      sections: [
        {
          template: '/parts/form',
          data: {
            action: `/first-administrator/${secret}`,
            slots: [
              textField(shown, 'shop', LABELS.shop),
              textField(shown, 'name', LABELS.name, { autocomplete: 'name' }),
              textField(shown, 'email', LABELS.email, { type: 'email', autocomplete: 'username' }),
              textField(shown, 'password', LABELS.password, {
                type: 'password',
                autocomplete: 'new-password',
                hint: 'At least 8 characters; a few words in a row are good.',
              }),
            ],
            buttons: [{ kind: 'primary', label: 'Make me the administrator' }],
          },
        },
      ],
    },
  });
};

/** Signing in and out, opening a share link, and the first administrator. */
export function accessPages(app: FastifyInstance, deps: Deps): void {
  app.get<{ Querystring: { next?: string } }>('/sign-in', { schema: { hide: true } }, (request, reply) =>
    signInPage(deps, request, reply, FRESH, ownPath(request.query.next)),
  );
  app.post('/sign-in', { schema: { hide: true } }, async (request, reply) => {
    const { next, ...fields } = fieldsOf(request.body);
    const target = ownPath(next);
    const read = readForm(credentials, fields, { lengths: 'in' });
    if (!read.ok)
      return signInPage(deps, request, reply, { typed: keep(fields), faults: read.faults }, target, 422);
    try {
      const before = await pageCaller(request, deps, 'desk');
      const signed = await signIn(
        deps.db,
        deps.signInLimits,
        { ...read.data, address: request.ip },
        deps.now(),
      );
      if (before?.kind === 'staff')
        await endSessions(deps.db, before.shopId, { sessionId: before.sessionId }, deps.now());
      setSecretCookie(reply, deps, 'desk', signed.secret, signed.expiresAt);
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
        { typed: keep(fields), faults },
        target,
        error.code === 'quota-exceeded' ? 429 : 422,
      );
    }
  });
  app.post('/sign-out', { schema: { hide: true } }, async (request, reply) => {
    const caller = await pageCaller(request, deps, 'desk');
    if (caller?.kind === 'staff')
      await endSessions(deps.db, caller.shopId, { sessionId: caller.sessionId }, deps.now());
    clearSecretCookie(reply, deps, 'desk');
    return reply.code(303).header('location', '/').header('cache-control', 'no-store').send();
  });

  // Looking at the link spends nothing: scanners of mail and text messages open links too.
  app.get<{ Params: { secret: string } }>('/b/:secret', { schema: { hide: true } }, (request, reply) => {
    if (kindOfSecret(request.params.secret) !== 'link') throw new Failure('not-found', 'nothing is here');
    return openingPage(deps, request, reply, request.params.secret);
  });
  app.post<{ Params: { secret: string } }>(
    '/b/:secret',
    { schema: { hide: true } },
    async (request, reply) => {
      const { secret } = request.params;
      const opened =
        kindOfSecret(secret) === 'link'
          ? await openShareLink(deps.db, hashOf(secret), deps.now())
          : undefined;
      if (opened === undefined) throw new Failure('not-found', 'this link has ended, or was never made');
      setSecretCookie(reply, deps, 'bench', opened.secret, opened.expiresAt);
      return reply
        .code(303)
        .headers({ location: '/bench', 'cache-control': 'no-store', 'referrer-policy': 'no-referrer' })
        .send();
    },
  );

  app.get<{ Params: { secret: string } }>(
    '/first-administrator/:secret',
    { schema: { hide: true } },
    (request, reply) => {
      if (kindOfSecret(request.params.secret) !== 'first') throw new Failure('not-found', 'nothing is here');
      return firstPage(deps, request, reply, request.params.secret, FRESH);
    },
  );
  app.post<{ Params: { secret: string } }>(
    '/first-administrator/:secret',
    { schema: { hide: true } },
    async (request, reply) => {
      const { secret } = request.params;
      if (kindOfSecret(secret) !== 'first') throw new Failure('not-found', 'nothing is here');
      const fields = fieldsOf(request.body);
      const read = readForm(firstPerson, fields, { lengths: 'in' });
      const faults = read.ok
        ? passwordFault(read.data.password, [read.data.email, read.data.name])
        : read.faults;
      if (!read.ok || faults.length > 0)
        return firstPage(deps, request, reply, secret, { typed: keep(fields), faults }, 422);
      const link = hashOf(secret);
      const made =
        (await createFirstAdministrator(deps.db, link, read.data, deps.now())) ||
        (await wasMadeJustNow(deps.db, link, read.data, deps.now()));
      if (!made) {
        throw new Failure('not-found', 'this link has been used, or has ended');
      }
      return reply
        .code(303)
        .headers({ location: '/sign-in', 'cache-control': 'no-store', 'referrer-policy': 'no-referrer' })
        .send();
    },
  );
}
