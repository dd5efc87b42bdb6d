import { isIPv6 } from 'node:net';
import { hashOf } from './secrets.ts';

/** The eight groups of an IPv6 address, written out (RFC 4291, 2.2). */
function groupsOf(address: string): string[] {
  const [head = '', tail] = address.split('::');
  const before = head === '' ? [] : head.split(':');
  if (tail === undefined) return before;
  const after = tail === '' ? [] : tail.split(':');
  return [...before, ...Array<string>(8 - before.length - after.length).fill('0'), ...after];
}

/**
 * What attempts from an address are counted under. An IPv6 customer has a /64 and 2^64 addresses in it (RFC
 * 6177), so its network is counted; an IPv4 address counts the same in either notation.
 */
export function addressKey(address: string): string {
  const plain = (address.split('%')[0] ?? '').toLowerCase().replace(/^::ffff:(?=\d+\.)/, '');
  if (!isIPv6(plain)) return hashOf(plain);
  const network = groupsOf(plain).slice(0, 4);
  return hashOf(network.map((group) => Number.parseInt(group, 16).toString(16)).join(':'));
}
