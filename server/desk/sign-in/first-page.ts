import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { someWords } from '../../../shared/schemas/texts.ts';
import { createFirstAdministrator, wasMadeJustNow } from '../../auth/first-administrator.ts';
import { passwordFault } from '../../auth/password-rules.ts';
import { hashOf, kindOfSecret } from '../../auth/secrets.ts';
import { Failure } from '../../problems/failure.ts';
import type { Deps } from '../../web/deps.ts';
import { type FormState, FRESH, textField } from '../../web/forms/fields.ts';
import { fieldsOf, readForm } from '../../web/forms/read-form.ts';
import { LABELS, withoutPassword } from '../settings/access-fields.ts';
import { secretPage } from './secret-page.ts';

const firstPerson = z.strictObject({
  shop: someWords('Name of the shop'),
  name: someWords('Your name'),
  email: someWords('E-mail address', 320),
  password: someWords('Password', 1000),
});

const firstPage = (
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  secret: string,
  shown: FormState,
) =>
  secretPage(deps, request, reply, {
    title: 'The first administrator',
    intro: 'This link works once. Whoever signs in here first runs the desk and adds the others.',
    shown,
    form: {
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
  });

/** The link that makes the first administrator. */
export function firstAdministratorRoutes(app: FastifyInstance, deps: Deps): void {
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
        return firstPage(deps, request, reply, secret, { typed: withoutPassword(fields), faults });
      const link = hashOf(secret);
      const person = { ...read.data, from: request.ip };
      const made =
        (await createFirstAdministrator(deps.db, link, person, deps.now())) ||
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
