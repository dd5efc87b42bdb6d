import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { someWords } from '../../../shared/schemas/texts.ts';
import { type LinkedPerson, personOfLink, setPasswordByLink } from '../../auth/password-links.ts';
import { passwordFault } from '../../auth/password-rules.ts';
import { kindOfSecret } from '../../auth/secrets.ts';
import { Failure } from '../../problems/failure.ts';
import type { Deps } from '../../web/deps.ts';
import { type FormState, FRESH, textField } from '../../web/forms/fields.ts';
import { fieldsOf, readForm } from '../../web/forms/read-form.ts';
import { LABELS } from '../settings/access-fields.ts';
import { secretPage } from './secret-page.ts';

const typed = z.strictObject({ password: someWords('Password', 1000) });

interface Opened {
  readonly secret: string;
  readonly person: LinkedPerson;
}

const passwordPage = (
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  { secret, person }: Opened,
  shown: FormState,
) =>
  secretPage(deps, request, reply, {
    title: 'Set your password',
    intro: `For ${person.name}, who signs in as ${person.email}. This link works once; your sessions end.`,
    shown,
    form: {
      action: `/password/${secret}`,
      slots: [
        textField(shown, 'password', LABELS.password, {
          type: 'password',
          autocomplete: 'new-password',
          autofocus: true,
          hint: 'At least 8 characters; a few words in a row are good.',
        }),
      ],
      buttons: [{ kind: 'primary', label: 'Set the password' }],
    },
  });

async function openedBy(deps: Deps, secret: string): Promise<Opened> {
  const person =
    kindOfSecret(secret) === 'password' ? await personOfLink(deps.db, secret, deps.now()) : undefined;
  if (person === undefined)
    throw new Failure('not-found', 'this link has been used, or has ended; ask for another');
  return { secret, person };
}

/** The link by which a person of the desk sets their password. */
export function passwordRoutes(app: FastifyInstance, deps: Deps): void {
  const url = '/password/:secret';
  app.get<{ Params: { secret: string } }>(url, { schema: { hide: true } }, async (request, reply) =>
    passwordPage(deps, request, reply, await openedBy(deps, request.params.secret), FRESH),
  );
  app.post<{ Params: { secret: string } }>(url, { schema: { hide: true } }, async (request, reply) => {
    const opened = await openedBy(deps, request.params.secret);
    const { secret, person } = opened;
    const read = readForm(typed, fieldsOf(request.body), { lengths: 'in' });
    const faults = read.ok ? passwordFault(read.data.password, [person.email, person.name]) : read.faults;
    if (!read.ok || faults.length > 0)
      return passwordPage(deps, request, reply, opened, { typed: {}, faults });
    const set = { secret, password: read.data.password, from: request.ip };
    if (!(await setPasswordByLink(deps.db, person, set, deps.now())))
      throw new Failure('not-found', 'this link has been used, or has ended; ask for another');
    return reply
      .code(303)
      .headers({ location: '/sign-in', 'cache-control': 'no-store', 'referrer-policy': 'no-referrer' })
      .send();
  });
}
