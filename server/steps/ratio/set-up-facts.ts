import { asEntered } from '../../../shared/quantities/as-entered.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import {
  ALIGNMENTS,
  LASH_STATES,
  LIFT_TOOLS,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
} from '../../../shared/schemas/words.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import { valveName } from '../../call/context.ts';
import type { ShownSetUp } from '../../call/shown-set-up.ts';
import { inches, limitSaid as limitText } from '../../mechanics/assessment/common/said.ts';
import { momentText } from '../../web/dates.ts';

const LIMIT_SOURCE = 'as entered; the default is common practice, no published source';

/** A state as it is known now; where an answer or a statement has changed it, how it was entered. */
function stateFact<Word extends string>(
  label: string,
  words: Readonly<Record<Word, string>>,
  entered: Word,
  now: Word,
): Fact {
  const value = words[now];
  return entered === now ? { label, value } : { label, value, note: `entered as: ${words[entered]}` };
}

function armFact({ detail: { armName, armTaken } }: ShownSetUp): Fact {
  if (armName === undefined) return { label: 'Arm', value: 'not on record' };
  return {
    label: 'Arm',
    value: armName,
    ...(armTaken ? { note: 'not named for this set-up; no other was named on this valve' } : {}),
  };
}

/** The limit as entered, or as its tool has it. */
const limitSaid = (typed: Entered | undefined, now: number): string =>
  typed === undefined ? limitText(now) : asEntered(typed.readAs);

const limitFact = (typed: Entered | undefined, now: number): Fact => ({
  label: 'Error limit, reading',
  value: `± ${limitSaid(typed, now)}`,
  note: typed === undefined ? 'as its tool may be; common practice, no published source' : LIMIT_SOURCE,
});

/** How the readings of a set-up are taken. */
export function methodFacts(found: ShownSetUp): Fact[] {
  const { method, started } = found.setUp;
  const at = started.method;
  const now = found.detail.setUp;
  const lash = stateFact('Lash', LASH_STATES, at.lash, now.lash);
  const setting = now.lashSetting === undefined ? undefined : inches(now.lashSetting);
  return [
    armFact(found),
    stateFact('Spring', SPRINGS, at.spring, now.spring),
    stateFact('Lifter', LIFTERS, at.lifter, now.lifter),
    setting === undefined
      ? lash
      : { ...lash, note: [setting, lash.note].filter((each) => each !== undefined).join(', ') },
    stateFact('Tip rests on', RESTS_ON, at.restsOn, now.restsOn),
    stateFact('Plunger', ALIGNMENTS, at.alignment, now.alignment),
    {
      label: 'Dial',
      value: `${asEntered(method.graduation.readAs)} a division, ${asEntered(method.perTurn.readAs)} a turn`,
    },
    {
      label: 'Travel, pushed in',
      value: `${asEntered(method.travel?.readAs ?? 'not said')}, ${asEntered(method.pushedIn?.readAs ?? 'not said')}`,
    },
    { label: 'Read with', value: LIFT_TOOLS[now.tool ?? 'indicator'] },
    limitFact(method.errorLimit, now.errorLimit),
    {
      label: 'Lobe lift from',
      value: LOBE_SOURCES[method.lobeSource],
      note: `± ${limitSaid(method.lobeErrorLimit, now.lobeErrorLimit)}`,
    },
  ];
}

/** The valve as it is known now; where it was started as another, which. */
function valveFact({ setUp: { started }, detail: { setUp } }: ShownSetUp): Fact {
  const [was, now] = [valveName(started), valveName(setUp)];
  return { label: 'Valve', value: now, ...(was === now ? {} : { note: `entered as: ${was}` }) };
}

/** What was put right of it, each with who said so. */
export const putRight = ({ setUp: { statements } }: ShownSetUp): Fact[] =>
  statements.map(({ seq, reason, by, at }) => ({
    label: `Put right, line ${seq}`,
    value: reason,
    note: `${by}, ${momentText(at)}`,
  }));

/** A set-up as the title block of its readings. */
export const setUpFacts = (found: ShownSetUp): Fact[] => [
  { label: 'Set-up', value: `${found.setUp.number}` },
  valveFact(found),
  ...methodFacts(found),
  { label: 'Build revision', value: String(found.setUp.revision) },
  ...putRight(found),
];
