import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { formatNumber, formatQuantity } from '../../../shared/quantities/format.ts';
import type { Quantity } from '../../../shared/quantities/units.ts';
import { READING_KINDS } from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/components.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { sentenceComponents } from '../../call/headline.ts';
import { readingWords } from '../../call/reading-text.ts';
import {
  besideComponent,
  type ReportSides,
  runComponents,
  saidComponents,
  sectionComponent,
  withoutNote,
} from '../../call/report-parts.ts';
import { type ShownSetUp, shownSetUps } from '../../call/shown-set-up.ts';
import type { AssessedExplanation } from '../../mechanics/assessment/assessment.ts';
import { listed } from '../../mechanics/assessment/common/said.ts';
import { groupKey } from '../../mechanics/assessment/ratio/read/group-key.ts';
import { saidOfSetUp, toldOf } from '../../mechanics/assessment/ratio/read/said-of-set-up.ts';
import { toldShares } from '../../mechanics/ratio-readings/told-shares.ts';
import { tableComponent } from '../../web/components.ts';
import { explainedTable, keptTogether } from './explanation.ts';
import { nominalsTable, resultOf, shareText } from './figures.ts';
import { stateOf } from './passes-table.ts';
import { questionsTable, settledTable } from './report-questions.ts';
import { methodFacts, putRight } from './set-up-facts.ts';
import { asidesOf, passesText } from './takeover.ts';

/** The likeliest few; the step shows more. */
const MOST_EXPLANATIONS = 3;

/** Where the uncertainty comes from, in a line: the step has it as a table. */
function budgetComponents({ result }: ShownSetUp['detail']): Component[] {
  if (result === undefined) return [];
  const shares = toldShares(result.budget);
  return runComponents(
    'Where the ± comes from',
    result.budget.map(({ source, contribution }, index) => ({
      label: source,
      value: formatNumber(contribution, 5),
      note: shareText(shares[index]),
    })),
  );
}

function explainedComponents(explanation: AssessedExplanation | undefined): Component[] {
  if (explanation === undefined) return [];
  const table = explainedTable(explanation, MOST_EXPLANATIONS);
  // With the table below it, the sentence would say the same twice on paper.
  return table === undefined
    ? saidComponents('What would explain the readings', [keptTogether(explanation.summary)])
    : [tableComponent(withoutNote(table))];
}

/** A part of a thousandth is told in inches, as the passes beside it are. */
const zeroText = ({ value, unit }: Quantity): string =>
  unit === 'thou'
    ? formatQuantity({ value: value / 1000, unit: 'in' }, { places: 4 })
    : formatQuantity({ value, unit }, { places: 3 });

/** Where the hand came back to after each pass, kind by kind; nothing where nobody looked. */
function zerosOf({ readings }: ShownSetUp): string[] {
  const read = readings.filter(({ struck }) => !struck);
  const kinds = [...new Set(read.map(({ kind }) => kind))];
  return kinds.flatMap((kind) => {
    const passes = read.filter((each) => each.kind === kind);
    if (passes.every(({ zeroReturn }) => zeroReturn === undefined)) return [];
    const backs = passes.map(({ pass, zeroReturn }) =>
      zeroReturn === undefined ? `pass ${pass} not looked at` : `pass ${pass} ${zeroText(zeroReturn)}`,
    );
    return [`${READING_KINDS[kind].toLowerCase()}: ${backs.join(', ')}`];
  });
}

/** What is said of the arm, less its headlines, which the summary has: paper has no room to say them twice. */
function besidesInShort({ assessment }: CallContext, detail: ShownSetUp['detail']): Component[] {
  const inShort = new Set(assessment.headlines.map(({ sentence }) => sentence));
  const told = toldOf(saidOfSetUp(assessment, detail));
  return sentenceComponents(told).filter((_, at) => !inShort.has(told[at]?.sentence ?? ''));
}

/** One set-up where the sheet is read first: the figures, what is said of them, every pass. */
function setUpComponent(context: CallContext, found: ShownSetUp, isNewest: boolean): Component {
  const { setUp, detail } = found;
  return sectionComponent(
    `Set-up ${setUp.number}: ${valveName(setUp)}, read against build revision ${setUp.revision}`,
    [
      // What is said of the arm on the valve stands once, with its newest set-up.
      ...(isNewest ? besidesInShort(context, detail) : []),
      besideComponent(
        { template: '/parts/result', data: resultOf(context, found, `ratio-${setUp.number}`) },
        // Who read each, and when, is on the tape, the back page of this sheet.
        ...saidComponents('Every pass; what is in no figure in brackets', [
          [passesText(context, found), ...asidesOf(detail)].join('. '),
        ]),
      ),
    ],
  );
}

/** The same set-up on the back: method, what is not in the figures, questions, grounds. */
function behindComponent(context: CallContext, found: ShownSetUp, isNewest: boolean): Component {
  const { setUp, detail } = found;
  const said = saidOfSetUp(context.assessment, detail);
  const nominals = nominalsTable(found);
  return sectionComponent(`How set-up ${setUp.number} was read: ${valveName(setUp)}`, [
    ...runComponents('How it was read', [...methodFacts(found), ...putRight(found)]),
    ...(nominals === undefined ? [] : [tableComponent(nominals)]),
    ...saidComponents('Hand back on the base circle', zerosOf(found)),
    ...saidComponents(
      'Not in the figures',
      found.readings.flatMap((each) => {
        const state = each.replacedBy === undefined ? undefined : stateOf(each, found.readings);
        return state === undefined
          ? []
          : [`${readingWords(each)} (${asEntered(each.peak.readAs)}): ${state}`];
      }),
    ),
    ...budgetComponents(detail),
    ...questionsTable(
      context,
      isNewest ? said.questions : said.questions.filter(({ about }) => about.of === 'set-up'),
    ),
    ...settledTable(context, setUp.id),
    ...(isNewest ? explainedComponents(said.explanation) : []),
  ]);
}

/** What every figure above rests on, each once; what holds for some set-ups alone is said of those. */
function assumptionsOf(all: readonly ShownSetUp[]): string[] {
  const told = [...new Set(all.flatMap(({ detail }) => detail.assumptions))];
  return told.map((text) => {
    const here = all.filter(({ detail }) => detail.assumptions.includes(text));
    const numbers = listed(here.map(({ setUp }) => String(setUp.number)));
    return here.length === all.length ? text : `${text} (set-up ${numbers})`;
  });
}

/** Every set-up of the call; what is said of an arm on a valve stands with the newest set-up of the two. */
export function ratioReport(context: CallContext): ReportSides {
  const all = shownSetUps(context);
  const keyOf = ({ detail }: ShownSetUp) => groupKey(detail.setUp);
  const newest = new Map(all.map((found) => [keyOf(found), found]));
  const isNewest = (found: ShownSetUp) => newest.get(keyOf(found)) === found;
  const told = (found: ShownSetUp) => setUpComponent(context, found, isNewest(found));
  return {
    components: all.filter(isNewest).map(told),
    back: [
      // An earlier set-up of the same arm on the same valve is history: its figures are with its method.
      ...all.flatMap((found) => [
        ...(isNewest(found) ? [] : [told(found)]),
        behindComponent(context, found, isNewest(found)),
      ]),
      ...questionsTable(
        context,
        context.assessment.questions.filter(({ step }) => step === 'cam'),
        'Questions about the card',
      ),
      ...settledTable(context, undefined),
      ...saidComponents('Assumptions of the ratios', assumptionsOf(all)),
    ],
  };
}
