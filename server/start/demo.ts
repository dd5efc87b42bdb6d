import { z } from 'zod';
import demo from '../../seeds/demo.json' with { type: 'json' };
import { hashPassword } from '../auth/passwords.ts';
import { personRow } from '../auth/person-row.ts';
import type { Principal, Role } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { seedCatalogue } from '../records/catalogue/demo.ts';
import { shareCall } from '../records/share-links/share-links.ts';
import type { Deps } from '../web/deps.ts';
import { seedCall } from './demo-call.ts';
import { demoPhotograph } from './demo-photograph.ts';
import type { FirstRun } from './first-run.ts';

const roleList = z.array(z.enum(['desk', 'quality', 'administrator']));

async function seedStaff(tx: Tx, shopId: string): Promise<Principal> {
  const passwordHash = await hashPassword(demo.password);
  const people: { id: string; name: string; roles: Role[] }[] = [];
  for (const person of demo.staff) {
    const roles = roleList.parse(person.roles);
    const { id } = await tx
      .insertInto('staff')
      .values(personRow(shopId, { name: person.name, email: person.email, passwordHash, roles }))
      .returning('id')
      .executeTakeFirstOrThrow();
    people.push({ id, name: person.name, roles });
  }
  const first = people[0];
  if (first === undefined) throw new Error('the demo needs a person at the desk');
  return { kind: 'staff', shopId, ...first, sessionId: '', shortcuts: true };
}

/** Fills an empty development database with the invented shop and its call. */
export async function seedDemo(deps: Deps): Promise<FirstRun> {
  const shopId = crypto.randomUUID();
  const photograph = await demoPhotograph();
  await deps.db.shopTransaction(shopId, async (tx) => {
    await tx.insertInto('shop').values({ id: shopId, name: demo.shop, is_demo: true }).execute();
    const desk = await seedStaff(tx, shopId);
    await seedCatalogue(tx, desk, deps.now());
    await seedCall(tx, desk, { computations: deps.computations, now: deps.now(), photograph });
  });
  return demoCallLink(deps, shopId);
}

/** A fresh link to the demo call for each start: only hashes are kept, so an old one can't be shown again. */
export async function demoCallLink(deps: Deps, shopId: string): Promise<FirstRun> {
  return deps.db.shopTransaction(shopId, async (tx) => {
    const staff = await tx
      .selectFrom('staff')
      .selectAll()
      .where('shop_id', '=', shopId)
      .orderBy('created_at')
      .executeTakeFirstOrThrow();
    const call = await tx
      .selectFrom('call')
      .select('id')
      .where('shop_id', '=', shopId)
      .orderBy('number')
      .executeTakeFirstOrThrow();
    const desk: Principal = {
      kind: 'staff',
      shopId,
      id: staff.id,
      name: staff.name,
      roles: ['desk'],
      sessionId: '',
      shortcuts: true,
    };
    const { secret } = await shareCall(tx, desk, call.id, { holder: 'Builder (demo)', days: 14 }, deps.now());
    return { kind: 'demo', email: staff.email, password: demo.password, callId: call.id, link: secret };
  });
}
