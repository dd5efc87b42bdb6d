import { expect, test } from 'vitest';
import contract from './computations.json' with { type: 'json' };
import { registryOutline } from './registry-outline.ts';

/**
 * The computations that clients count on, with their fields, as computations.json has them. A change that is meant
 * is written down with `npm run contract`, and what it does to clients is seen in the difference. This is the one
 * place where their names are listed: other tests go through the registry.
 */
const registered = await registryOutline();

test('every computation of the contract is registered, and no other', () => {
  expect(registered.map(({ name }) => name)).toEqual(contract.map(({ name }) => name));
});

test.each(registered)('$name takes and gives what the contract says', (entry) => {
  expect(entry).toEqual(contract.find(({ name }) => name === entry.name));
});
