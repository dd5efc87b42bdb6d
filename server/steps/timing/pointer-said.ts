import { degreesText } from './timing-chain.ts';

/** What a pointer that was left where it stood does to a reading after TDC, in one sign everywhere. */
interface PointerSaid {
  /** `add .75° to what is read after TDC` */
  readonly todo: string;
  /** `.75° was added to` */
  readonly done: string;
  /** `.75° too little` */
  readonly reads: string;
}

/** `correction`: how much the wheel reads too much after TDC, in degrees; too little where it is negative. */
export function pointerSaid(correction: number): PointerSaid {
  const off = `${degreesText(Math.abs(correction))}°`;
  return correction < 0
    ? {
        todo: `add ${off} to what is read after TDC`,
        done: `${off} was added to`,
        reads: `${off} too little`,
      }
    : {
        todo: `take ${off} off what is read after TDC`,
        done: `${off} was taken off`,
        reads: `${off} too much`,
      };
}
