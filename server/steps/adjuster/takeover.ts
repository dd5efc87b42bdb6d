import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';
import { workingText } from '../../call/worked/report.ts';
import { lashText } from './lash-text.ts';
import type { AdjusterData } from './parts.ts';

/** Lashes that were set or found on a day; the last setting, by whom; what the log asks. */
export function adjusterItems({ log, workings, computations }: AdjusterData): TakeoverItem[] {
  const logged = log.lines.filter(({ moment, engine }) => moment === 'set' || engine !== 'not-said');
  const set = log.lines.findLast(({ moment }) => moment === 'set') ?? log.lines.at(-1);
  const worked = workings.findLast(({ computation }) => computation === 'adjuster');
  return [
    ...(logged.length === 0
      ? []
      : [
          {
            card: 'raw' as const,
            label: 'Lash log:',
            text: logged.map((line) => `${line.on} ${lashText(line)}`).join('; '),
          },
        ]),
    set === undefined
      ? { card: 'of-goal', label: 'Last setting:', text: NOT_YET }
      : {
          card: 'of-goal',
          label: 'Last setting:',
          text: lashText(set),
          note: `${set.on}, ${set.doneBy || set.reading.by}`,
        },
    ...(worked === undefined
      ? []
      : [{ card: 'of-goal' as const, label: 'Worked out:', text: workingText(computations, worked) }]),
    ...log.questions.map(({ ask }): TakeoverItem => ({ card: 'of-goal', label: 'Asked:', text: ask })),
  ];
}
