import { picked, pickOf } from '../common/pick.ts';
import { listed } from '../common/said.ts';
import { onlyRatioIn, ratioNamedIn, ratiosIn } from '../common/stamp-read.ts';
import type { Evidence } from '../evidence.ts';
import { amongOf, type CountedReading, choice, type PartDoubt, without } from './doubts.ts';

interface Named {
  readonly id: string;
  readonly text: string;
  readonly ratio: number;
}

/** `16` and `60` are stamped for 1.6: beside another stamp it is held to be one of them. */
export const ratioStamped = (mark: string): number | undefined =>
  ratiosIn(mark).length === 0 ? ratioNamedIn(mark) : onlyRatioIn(mark)?.ratio;

const namedBy = (readings: readonly CountedReading[], kind: string): Named[] =>
  readings.flatMap(({ id, kind: own, typed }) => {
    const ratio = own === kind ? ratioStamped(typed) : undefined;
    return ratio === undefined ? [] : [{ id, text: typed.trim(), ratio }];
  });

const isSame = (a: Named, b: Named): boolean => Math.abs(a.ratio - b.ratio) < 1e-9;

/** Two ratios stamped on one part: one of them was read wrong, or is of another part. */
export function stampsApart(readings: readonly CountedReading[]): PartDoubt[] {
  const stamps = namedBy(readings, 'ratio-stamp').toSorted((a, b) => a.ratio - b.ratio);
  const kinds = stamps.filter((each, at) => stamps.findIndex((other) => isSame(each, other)) === at);
  if (kinds.length < 2) return [];
  const ids = stamps.map(({ id }) => id);
  return [
    {
      code: 'stamps-apart',
      ask: `There are the ratio stamps ${listed(kinds.map(({ text }) => `“${text}”`))} for one part. Which of them is on it?`,
      knownBy: 'which ratio stamp is on the part',
      test: 'look at each stamp on the part again, word for word; no mark proves a ratio, only a valve does',
      restsOn: [...ids].sort(),
      among: amongOf(ids),
      choices: [
        ...kinds.map(({ text }, at) =>
          choice(
            pickOf('stamp', at),
            `“${text}”`,
            kinds.length > 2
              ? 'The others do not count; they are struck out with the reason.'
              : 'The other does not count; it is struck out with the reason.',
          ),
        ),
        choice(
          'both',
          'All of them are on it',
          'They stay as they were typed, and none is taken for its ratio.',
        ),
      ],
      effect: (now, chosen) => {
        const one = picked('stamp', kinds, chosen);
        if (one !== undefined)
          return without(
            now,
            stamps.flatMap((each) => (isSame(each, one) ? [] : [each.id])),
          );
        return chosen === 'both' ? now : without(now, ids);
      },
    },
  ];
}

/** A box that names another ratio than the stamp: it may be the box of another part. */
export function boxAgainstStamp(readings: readonly CountedReading[]): PartDoubt[] {
  const stamps = namedBy(readings, 'ratio-stamp');
  const [stamp] = stamps;
  const boxes = readings.flatMap(({ id, kind, typed }): Named[] => {
    const ratio = kind === 'box-label' ? ratioNamedIn(typed) : undefined;
    return ratio === undefined ? [] : [{ id, text: typed.trim(), ratio }];
  });
  const others = stamp === undefined ? [] : boxes.filter((box) => !stamps.some((each) => isSame(each, box)));
  const [box] = others;
  if (stamp === undefined || box === undefined) return [];
  const ids = [...others.map(({ id }) => id), stamp.id];
  return [
    {
      code: 'box-against-stamp',
      ask: `The part is stamped “${stamp.text}”, and its box says “${box.text}”. Is it the box of this part?`,
      knownBy: 'is it the box of this part',
      test: 'hold the other numbers of part and box beside one another, and ask where the box came from',
      restsOn: [...ids].sort(),
      among: amongOf(ids),
      choices: [
        choice('found', 'No, it is of another part', 'The box does not count for this part.'),
        choice('not-found', 'Yes, it is', 'Both stay as they were typed; only a valve tells the ratio.'),
      ],
      effect: (now, chosen) =>
        chosen === 'found'
          ? without(
              now,
              others.map(({ id }) => id),
            )
          : now,
    },
  ];
}

/** What the part sat on, and how the engine has its rockers: one of them was said wrong, or it is another engine’s. */
export const mountAgainstEngine =
  ({ engine: { mounting, gear = 'pushrod' } }: Evidence) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    const mounts = readings.filter(({ kind, word }) => kind === 'mount' && word !== undefined);
    const [other] = mounts.filter(({ word }) => word !== mounting);
    if (mounting === undefined || gear !== 'pushrod' || other === undefined) return [];
    const ids = mounts.filter(({ word }) => word !== mounting).map(({ id }) => id);
    return [
      {
        code: 'mount-against-engine',
        ask: `The part is of a ${other.word ?? ''} mount, and the engine has its rockers on a ${mounting}. Is this arm for that engine?`,
        knownBy: 'is the arm for the mounting of the engine',
        test: 'look what holds the rockers of that engine, and how the part is bored and seated',
        restsOn: [...ids].sort(),
        choices: [
          choice(
            'other-engine',
            'No, it is of another engine',
            'It is told by itself, and not for this engine.',
          ),
          choice('engine', 'The mounting of the engine was said wrong', 'It is put right on the engine.'),
          choice('found', 'The part was looked at wrong', 'Its mount does not count; it is looked at again.'),
        ],
        effect: (now, chosen) => (chosen === 'found' ? without(now, ids) : now),
      },
    ];
  };
