import { allowance } from '../../../kit/allowances.ts';
import type { AnswerChoice, AssessedQuestion } from '../../assessment.ts';
import { asked } from '../../common/asked.ts';
import { beforeNamed } from '../../common/named-late.ts';
import { inches, listed, placeOf, ratioSaid, upperFirst, valveSubject } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import { answerLack, type RatioLack } from '../read/lack.ts';
import { meanOf } from '../read/passes.ts';
import type { SetUpKnown } from './known.ts';

/** The lobe that was read in this very set-up. */
export const lobeOf = ({ read: { lobe } }: SetUpKnown): number | undefined =>
  lobe.source === 'indicator' && lobe.from === undefined ? lobe.value : undefined;

/** Lobes of one valve by as much as makes a valve odd, or by what their tools allow. */
export function lobesAlike(a: SetUpKnown, b: SetUpKnown): boolean {
  const [lobe, other] = [lobeOf(a), lobeOf(b)];
  if (lobe === undefined || other === undefined) return true;
  const tools = a.read.setUp.lobeErrorLimit + b.read.setUp.lobeErrorLimit;
  return Math.abs(lobe - other) <= Math.max(allowance('odd-beyond'), tools);
}

/** What is in doubt: the valve lifts, and the lobes where they are not alike. */
const inQuestion = (own: readonly SetUpKnown[]): string[] => {
  const alike = own.every((each) => own.every((other) => lobesAlike(each, other)));
  return own.flatMap(({ read: { valve, lobe } }) =>
    [...valve.used, ...(alike || lobe.from !== undefined ? [] : lobe.passes.used)].map(({ id }) => id),
  );
};

const numbersOf = (own: readonly SetUpKnown[]): string[] => own.map(({ read }) => String(read.setUp.number));

/** `set-up 2`, `set-ups 1 and 3` */
export const setUpsSaid = (own: readonly SetUpKnown[]): string =>
  `set-up${own.length > 1 ? 's' : ''} ${listed(numbersOf(own))}`;

/** Those that come to the same hold together: they are one answer. */
function holding(own: readonly SetUpKnown[], most: readonly SetUpKnown[]): AnswerChoice[] {
  const said = (each: SetUpKnown) => `${ratioSaid(each.result?.ratio ?? 0)}`;
  const [first] = most;
  return own.flatMap((each) => {
    const { number } = each.read.setUp;
    const changes = 'It is told and calculated with; the other stays on record and is put aside.';
    if (most.length < 2 || !most.includes(each))
      return [{ code: `set-up-${number}`, label: `Set-up ${number} holds, ${said(each)}`, changes }];
    if (each !== first) return [];
    const label = `${upperFirst(setUpsSaid(most))} hold, ${listed([...new Set(most.map(said))])}`;
    return [
      {
        code: `set-up-${number}`,
        label,
        changes: 'They are told and calculated with; the other stays on record and is put aside.',
      },
    ];
  });
}

const choicesOf = (own: readonly SetUpKnown[], most: readonly SetUpKnown[]): AnswerChoice[] => [
  ...holding(own, most),
  {
    code: 'other-arm',
    label: 'Another arm was on in one of them',
    changes: 'That arm is named in its set-up: each is then told by itself.',
  },
  {
    code: 'both',
    label: 'Now the one comes up, now the other',
    changes:
      'Both stay, and no word stands: base, lifter or lash moves between them, and is looked at first.',
  },
];

interface Beside {
  /** Those that most of them come to, if they do. */
  readonly most: readonly SetUpKnown[];
  /** The same arm on other valves, with nothing in doubt. */
  readonly elsewhere: readonly SetUpKnown[];
}

/** What the arm gives on another valve decides nothing here, and is worth knowing. */
function elsewhereSaid(elsewhere: readonly SetUpKnown[]): string {
  const said = elsewhere.map(
    ({ read, result }) => `${ratioSaid(result?.ratio ?? 0)} on ${placeOf(read.setUp)}`,
  );
  return said.length === 0 ? '' : ` The same arm came out ${listed(said)}.`;
}

/** Which of set-ups that differ holds. */
export function whichHolds(
  evidence: Evidence,
  own: readonly SetUpKnown[],
  { most, elsewhere }: Beside,
): AssessedQuestion {
  const [first] = own;
  const { setUp } = first?.read ?? {};
  const place = setUp === undefined ? '' : placeOf(setUp);
  const name = evidence.arms.find(({ id }) => id === setUp?.armId)?.name;
  const cameOut = own.map(
    ({ read, result }) => `${ratioSaid(result?.ratio ?? 0)} in set-up ${read.setUp.number}`,
  );
  const lifts = own.map(({ read }) => inches(meanOf(read.valve.used)));
  const lobes = own.flatMap((each) => lobeOf(each) ?? []);
  const over = new Set(lobes).size > 1 ? ` over lobes of ${listed(lobes.map(inches))}` : '';
  return asked(
    {
      code: 'set-ups-differ',
      weight: most.length > 0 ? 'weak' : 'strong',
      ask: `${place}${name === undefined ? '' : ` with ${name}`} came out ${listed(cameOut)}. Which one holds?`,
      knownBy: 'which of the set-ups holds',
      size: `Valve lifts of ${listed(lifts)}${over}, read the same way${name === undefined ? ', and no arm is named' : ''}.${elsewhereSaid(elsewhere)}`,
      test:
        most.length > 1
          ? `${upperFirst(setUpsSaid(most))} come to the same: say that they hold, or which holds after all, and why.`
          : 'Set it up once more the same way, and read three passes: what they agree with holds.',
      ...(most.length > 1 ? { byLooking: true } : {}),
      restsOn: inQuestion(own),
    },
    {
      about: setUp === undefined ? { of: 'build' } : valveSubject(setUp),
      step: 'ratio',
      among: [...(setUp?.armId === undefined ? [] : [setUp.armId]), setUp?.spring, ...numbersOf(own)].join(
        '-',
      ),
      ...beforeNamed(
        setUp?.armId,
        own.flatMap(({ read }) => read.standing),
        [setUp?.spring, ...numbersOf(own)].join('-'),
      ),
      answers: evidence.answers,
      choices: choicesOf(own, most),
    },
  );
}

/** What each of them lacks until it is known which holds. */
export function openLack(
  question: AssessedQuestion,
  own: readonly SetUpKnown[],
  chosen: string | undefined,
): RatioLack {
  if (chosen === 'other-arm') return { code: 'which-arm', setUps: setUpsSaid(own) };
  if (chosen === 'both') return { code: 'what-moves', setUps: setUpsSaid(own) };
  return answerLack(question);
}
