import { bareFeeler, feeler } from './said.ts';

interface Growth {
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

/** By how much a gap grew, as far as its readings leave it: `.005 to .007 in`, `.005 in`. Told so wherever it is told. */
export function grewBy({ low = 0, high }: Growth): string {
  const most = high === undefined ? feeler(low) : feeler(high);
  return most === feeler(low) ? most : `${bareFeeler(low)} to ${most}`;
}
