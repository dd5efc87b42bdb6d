import type { Share } from './shares.ts';

/** 95 % of shares of so many keep within this of the true one. */
const within = ({ share, of }: Share): number => 1.96 * Math.sqrt((share * (1 - share)) / of);

const besides = (note: string): string => (note === '' ? '' : `   note ${note}`);

export const told = (name: string, found: Share, note = ''): string =>
  `  ${name.padEnd(30)} ${found.share.toFixed(4)} ± ${within(found).toFixed(4)} of ${found.of}${besides(note)}`;

export const plain = (name: string, value: number, note = ''): string =>
  `  ${name.padEnd(30)} ${value.toFixed(3)}${besides(note)}`;
