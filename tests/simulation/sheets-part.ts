import { chanceFrom } from '../mechanics/explain-readings/random.ts';
import { chanceNamed } from './odd-theory.ts';
import type { Odd } from './odd-valve.ts';
import { scoreSheets } from './score-sheets.ts';
import { told } from './told.ts';

const OFFS = [0.006, 0.008, 0.01, 0.012, 0.016, 0.02];

function lines(title: string, calls: number, seed: number, odd?: Odd): string[] {
  const found = scoreSheets(chanceFrom(seed), calls, odd);
  return [
    title,
    ...(odd === undefined
      ? []
      : [told('named', found.named, `by theory ${chanceNamed(odd.off).toFixed(4)}`)]),
    told('others named', found.falseAlarms),
    told('sheets with a row in doubt', found.inDoubt),
    ...[...found.causes].map(([cause, share]) => told(`of those ${cause}`, share)),
  ];
}

export function* sheets(calls: number, seed: number): Generator<string> {
  yield* lines(`sixteen valves, none odd, ${calls} sheets, seed ${seed}`, calls, seed);
  for (const what of ['arm', 'lobe'] as const)
    for (const off of OFFS)
      yield* lines(`one ${what} off by ${off.toFixed(3)} in of lift, ${calls} sheets`, calls, seed, {
        what,
        off,
      });
}
