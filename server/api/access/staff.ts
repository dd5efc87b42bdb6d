import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { answer } from '../../../shared/schemas/answer.ts';
import {
  linkPassword,
  makePasswordLink,
  personOfLink,
  setPasswordByLink,
} from '../../auth/password-links.ts';
import { passwordFault } from '../../auth/password-rules.ts';
import { kindOfSecret } from '../../auth/secrets.ts';
import {
  addStaff,
  bringBack,
  changeRole,
  disableStaff,
  firstPasswordHash,
  listStaff,
  newRole,
  newStaff,
  type StaffMember,
  showStaff,
  staffView,
} from '../../auth/staff.ts';
import { notFound } from '../../problems/failure.ts';
import { commandRoute, noParams, readRoute } from '../../web/api-route.ts';
import { problemResponses, shownOnce } from '../../web/api-schemas.ts';
import type { Deps } from '../../web/deps.ts';
import { checked } from '../../web/validate.ts';

const staffListView = z.object({ staff: z.array(staffView) });
const addedView = staffView.extend({ secret: shownOnce }).meta({ id: 'AddedStaff' });
const disabledView = z.object({ disabled: z.uuid() });
const linkView = z.object({ expiresAt: z.iso.datetime(), secret: shownOnce });
const onePerson = z.strictObject({ id: z.uuid() });

const showAdded = (person: StaffMember) =>
  answer(addedView, {
    id: person.id,
    name: person.name,
    email: person.email,
    roles: person.roles,
    invited: person.invited,
    disabledAt: person.disabledAt,
    secret: undefined,
  });

function refuseWeak(password: string, near: readonly string[]): void {
  const weak = passwordFault(password, near);
  if (weak.length > 0)
    throw new InputFaults(weak.map(({ detail }) => ({ pointer: '/password', code: 'not-allowed', detail })));
}

/** People of the desk. */
export function staffRoutes(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listStaff',
    tag: 'access',
    summary: 'People of the desk',
    url: '/api/v1/staff',
    params: noParams,
    query: noParams,
    answer: staffListView,
    read: async (tx, { principal }) => answer(staffListView, { staff: await listStaff(tx, principal) }),
  });
  commandRoute(app, deps, {
    operationId: 'addStaff',
    tag: 'access',
    summary: 'Add a person to the desk; without a password they set their own by the link /password/{secret}',
    method: 'POST',
    url: '/api/v1/staff',
    params: noParams,
    body: newStaff,
    status: 201,
    answer: addedView,
    before: async ({ principal, body }) => {
      if (body.password !== undefined) refuseWeak(body.password, [body.email, body.name]);
      const hash = await firstPasswordHash(principal, body.password);
      return async (tx) => {
        const { person, secret } = await addStaff(tx, principal, body, hash, deps.now());
        return { body: showAdded(person), once: { secret } };
      };
    },
  });
  commandRoute(app, deps, {
    operationId: 'disableStaff',
    tag: 'access',
    summary: 'Take a person off the desk and end their sessions and keys',
    method: 'POST',
    url: '/api/v1/staff/:id/disable',
    params: onePerson,
    body: noParams,
    status: 200,
    answer: disabledView,
    run: async (tx, { principal, params }) => {
      await disableStaff(tx, principal, params.id, deps.now());
      return { body: answer(disabledView, { disabled: params.id }) };
    },
  });
  commandRoute(app, deps, {
    operationId: 'changeRole',
    tag: 'access',
    summary: 'Give a person another role; the last administrator stays one',
    method: 'POST',
    url: '/api/v1/staff/:id/role',
    params: onePerson,
    body: newRole,
    status: 200,
    answer: staffView,
    run: async (tx, { principal, params, body }) => ({
      body: showStaff(await changeRole(tx, principal, params.id, body, deps.now())),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'bringBack',
    tag: 'access',
    summary: 'Bring a person back to the desk; they set a new password by the link /password/{secret}',
    method: 'POST',
    url: '/api/v1/staff/:id/bring-back',
    params: onePerson,
    body: noParams,
    status: 200,
    answer: addedView,
    run: async (tx, { principal, params }) => {
      const { person, secret } = await bringBack(tx, principal, params.id, deps.now());
      return { body: showAdded(person), once: { secret } };
    },
  });
}

/** Links by which a person sets their password. */
export function passwordLinkRoutes(app: FastifyInstance, deps: Deps): void {
  commandRoute(app, deps, {
    operationId: 'makePasswordLink',
    tag: 'access',
    summary: 'Make the link /password/{secret} by which a person sets their password, once',
    method: 'POST',
    url: '/api/v1/staff/:id/password-links',
    params: onePerson,
    body: noParams,
    status: 201,
    answer: linkView,
    run: async (tx, { principal, params }) => {
      const { secret, expiresAt } = await makePasswordLink(tx, principal, params.id, deps.now());
      const body = answer(linkView, { expiresAt: expiresAt.toISOString(), secret: undefined });
      return { body, once: { secret } };
    },
  });
  app.post(
    '/api/v1/password-links/use',
    {
      schema: {
        operationId: 'usePasswordLink',
        tags: ['access'],
        security: [],
        summary: 'Set your password by a link; every session of yours ends',
        body: linkPassword,
        response: { 204: z.null(), ...problemResponses },
      },
    },
    async (request, reply) => {
      const { secret, password } = checked(linkPassword, request.body ?? {});
      const person =
        kindOfSecret(secret) === 'password' ? await personOfLink(deps.db, secret, deps.now()) : undefined;
      if (person === undefined) throw notFound('link that is open');
      refuseWeak(password, [person.email, person.name]);
      if (!(await setPasswordByLink(deps.db, person, { secret, password, from: request.ip }, deps.now())))
        throw notFound('link that is open');
      return reply.code(204).header('cache-control', 'no-store').send();
    },
  );
}
