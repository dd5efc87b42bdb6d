import { formatNumber, formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { ButtonData } from '../../../views/parts/button.examples.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { Explained } from '../../assessment/ratio/explain.ts';
import type { CallContext } from '../../call/context.ts';
import { formComponent, type PageForm, type RejectedForm } from '../../call/forms.ts';
import { nominalText } from '../../call/ratio-text.ts';
import { chanceText } from '../../mechanics/explain-readings/words.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import { choiceField, textField } from '../../web/forms/fields.ts';
import { type Action, ASK, causeText } from './cause-words.ts';

type Next = NonNullable<Explained['nextReading']>;

/** What the form begins with that an action leads to, as the query of the ratio step. */
const LEADS: Readonly<Record<Exclude<Action, 'read-back'>, Readonly<Record<string, string>>>> = {
  'one-more-pass': { kind: 'valve-lift' },
  'lash-to-zero': { new: 'yes', 'method.lash': 'zero', 'method.lashSetting': '' },
  'align-plunger': { new: 'yes', 'method.alignment': 'parallel' },
  'valve-lift-at-.200': { kind: 'valve-lift-at', atLobeLift: '.200' },
  'lobe-at-lifter': { kind: 'lobe-lift' },
  'light-spring-solid-lifter': { new: 'yes', 'method.spring': 'light', 'method.lifter': 'solid' },
  'rocker-on-another-valve': {},
};

const LABELS: Readonly<Record<Exclude<Action, 'read-back'>, string>> = {
  'one-more-pass': 'Take the pass',
  'lash-to-zero': 'Set up with the lash at zero',
  'align-plunger': 'Set up with the plunger parallel',
  'valve-lift-at-.200': 'Read it at .200',
  'lobe-at-lifter': 'Read the lobe',
  'light-spring-solid-lifter': 'Ask for a light spring',
  'rocker-on-another-valve': 'Say where the arm sits',
};

/** The button that opens the form for the reading, filled in as far as it is known. */
function leadOf(context: CallContext, setUp: SetUp, action: Exclude<Action, 'read-back'>): ButtonData {
  const key = context.side === 'desk' ? { key: 'l' } : {};
  const label = LABELS[action];
  if (action === 'rocker-on-another-valve') return { label, href: `${context.base}/steps/parts`, ...key };
  const query = new URLSearchParams({ 'set-up': setUp.id, ...LEADS[action] });
  return { label, href: `${context.base}/steps/ratio?${query}`, ...key };
}

const READ_BACK_LABELS = { found: 'Read back, the entries are', answer: 'What was said' };

function readBackForm(context: CallContext, setUp: SetUp): PageForm {
  return {
    name: 'read-back',
    action: `${context.base}/answers`,
    labels: READ_BACK_LABELS,
    hidden: { question: ASK['read-back'], code: 'read-back', setUpId: setUp.id },
    groups: (shown) => [
      {
        slots: [
          choiceField(
            shown,
            'found',
            READ_BACK_LABELS.found,
            { no: 'as they were entered', yes: 'wrong somewhere' },
            { inline: true },
          ),
          textField(shown, 'answer', READ_BACK_LABELS.answer, context.side === 'bench' ? { big: true } : {}),
        ],
      },
    ],
    buttons: [{ label: 'Keep the answer', kind: 'plain' }],
  };
}

type Outcome = Next['outcomes'][number];

function showsText(outcome: Outcome): string {
  if (outcome.expected !== undefined) {
    const lift = formatQuantity(fromSi(outcome.expected, 'in'), { derived: true });
    return `${lift} ± ${formatNumber(fromSi(outcome.plusMinus ?? 0, 'in').value, 3)}`;
  }
  return outcome.chanceFound === undefined ? '' : `asking finds it in ${chanceText(outcome.chanceFound)}`;
}

function outcomesTable(next: Next): Component {
  const data: TableData = {
    caption: 'What each outcome would mean',
    columns: [{ label: 'If' }, { label: 'It would show', number: true }],
    rows: next.outcomes.map((outcome) => {
      const name = outcome.nominal === undefined ? '' : ` and it is a ${nominalText(outcome.nominal)}`;
      return { cells: [`${causeText(outcome.cause)}${name}`, showsText(outcome)] };
    }),
  };
  return { template: '/parts/table', data };
}

export interface NextReading {
  /** What to do, and the way to it. */
  readonly slots: readonly Component[];
  /** What each outcome of it would mean. */
  readonly outcomes: readonly Component[];
  readonly forms: readonly PageForm[];
}

/** From here on a mistake counts as found, once readings free of it stand. */
const FOUND_FROM = 0.8;

const told = (text: string): Component => ({ template: '/parts/notice', data: { text } });

/** The one mistake that is as good as found, with its chance. */
export function foundMistake({ explanations }: Explained): { cause: string; chance: number } | undefined {
  const chances = new Map<string, number>();
  for (const { causes, probability } of explanations)
    for (const cause of causes) chances.set(cause, (chances.get(cause) ?? 0) + probability);
  const [likely] = [...chances].sort(([, a], [, b]) => b - a);
  return likely === undefined || likely[1] < FOUND_FROM ? undefined : { cause: likely[0], chance: likely[1] };
}

/** What is said when no further reading is worth its minutes. */
function endComponents(explained: Explained): Component[] {
  if (explained.settled) return [told('The name is settled on these readings.')];
  const found = foundMistake(explained);
  if (found === undefined) return [];
  const chance = chanceText(found.chance).replaceAll(' %', '\u00a0%');
  return [
    told(
      `Likely found: ${causeText(found.cause)}, ${chance}. Strike out the passes it spoiled, with that reason; those that are free of it stand.`,
    ),
  ];
}

/** The reading most worth its minutes, the way to it, and what each outcome of it would mean. */
export function nextReadingComponents(
  context: CallContext,
  setUp: SetUp,
  explained: Explained,
  rejected: RejectedForm | undefined,
): NextReading {
  const { nextReading: next } = explained;
  if (next === undefined) return { slots: endComponents(explained), outcomes: [], forms: [] };
  const lead = told(`The next reading worth taking, about ${next.minutes} min: ${ASK[next.action]}`);
  const outcomes = [outcomesTable(next)];
  if (context.call.held) return { slots: [lead], outcomes, forms: [] };
  if (next.action === 'read-back') {
    const form = readBackForm(context, setUp);
    return { slots: [lead, formComponent(form, rejected)], outcomes, forms: [form] };
  }
  const button: Component = {
    template: '/pages/call/actions',
    data: { buttons: [leadOf(context, setUp, next.action)] },
  };
  return { slots: [lead, button], outcomes, forms: [] };
}
