import { feelersBetween } from '../../kit/say-inches.ts';

interface Growth {
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

/** By how much a gap grew, as far as its readings leave it: `.005 to .007 in`, `.005 in`. Told so wherever it is told. */
export const grewBy = ({ low = 0, high }: Growth): string => feelersBetween(low, high);
