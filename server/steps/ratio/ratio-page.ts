import type { Component } from '../../../views/parts/components.ts';
import type { Explained } from '../../assessment/ratio/explain.ts';
import type { SetUpRatio } from '../../assessment/ratio/ratio.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { ratioName } from '../../call/ratio-text.ts';
import type { StepPageInput } from '../../call/step.ts';
import { cautionComponent, noticeComponent, tableComponent } from '../../web/components.ts';
import type { PageAsked } from '../../web/page-route.ts';
import { dialComponent } from './dial-view.ts';
import { explanationsTable, ratioSentence } from './explanations.ts';
import { indicatorComponent } from './indicator-place.ts';
import type { Explanations } from './load.ts';
import { type NextReading, nextReadingComponents } from './next-reading.ts';
import { passesTable } from './passes-table.ts';
import { type Cards, questionCards } from './question-cards.ts';
import { budgetTable, groundsComponents, nominalsTable, resultOf } from './ratio-answer.ts';
import { readingForm } from './reading-form.ts';
import { setUpFacts } from './set-up-facts.ts';
import { setUpForm, setUpScreen } from './set-up-form.ts';
import { throughLiftComponents } from './through-lift.ts';

const CAUTION = cautionComponent(
  'by hand at the crank bolt only, never the starter; nobody in line with a spring, hands out of the belts. Any resistance: stop, back off, find out.',
);

const CLOSED = noticeComponent('On hold: no set-up is started and no pass is kept until the hold is lifted.');

/** The set-up a page is about: the one asked for, or else the newest. */
export function chosenSetUp(context: CallContext, asked: string | undefined): SetUpRatio | undefined {
  return context.ratios.find((found) => found.setUp.id === asked) ?? context.ratios.at(-1);
}

function setUpsComponent(context: CallContext, chosen: SetUpRatio): Component {
  const at = `${context.base}/steps/ratio`;
  const others = context.setUps.filter((setUp) => setUp.id !== chosen.setUp.id);
  return {
    template: '/pages/call/actions',
    data: {
      buttons: [
        { label: 'Start another set-up', href: `${at}?new=yes`, key: 'u' },
        ...others.map((setUp) => ({
          label: `Set-up ${setUp.number}: ${valveName(setUp)}, ${ratioName(setUp.method.spring).toLowerCase()}`,
          href: `${at}?set-up=${setUp.id}`,
        })),
      ],
    },
  };
}

const resultComponent = (found: SetUpRatio): Component => ({
  template: '/parts/result',
  data: resultOf(found),
});

function groundComponents(found: SetUpRatio): Component[] {
  const tables = [nominalsTable(found), budgetTable(found)].filter((table) => table !== undefined);
  return [...tables.map(tableComponent), ...groundsComponents(found)];
}

function passesComponent(context: CallContext, found: SetUpRatio): Component {
  const caption = `Passes of set-up ${found.setUp.number}, ${valveName(found.setUp)}`;
  const correct = ({ id }: { readonly id: string }) => `${context.base}/readings/${id}`;
  return tableComponent(passesTable(found.readings, caption, correct));
}

function dialComponents(found: SetUpRatio): Component[] {
  const last = found.readings.findLast(
    (reading) => reading.replacedBy === undefined && !reading.struck && !reading.kind.startsWith('stated-'),
  );
  const drawn = last === undefined ? undefined : dialComponent(found.setUp, last);
  return drawn === undefined ? [] : [drawn];
}

function starting(
  context: CallContext,
  req: PageAsked,
  found: SetUpRatio | undefined,
  rejected?: RejectedForm,
): StepBody {
  if (context.call.held) return { forms: [], slots: [CLOSED] };
  if (context.side === 'bench' && rejected === undefined) {
    const { form, position } = setUpScreen(context, found?.setUp, req.query);
    return { forms: [form], slots: [CAUTION, formComponent(form, rejected)], screens: { position } };
  }
  const form = setUpForm(context, found?.setUp, req.query);
  return { forms: [form], slots: [CAUTION, formComponent(form, rejected)] };
}

/** At the desk the dial stands beside the entry, to be told over the phone. */
function besideDialComponents(entry: readonly Component[], dial: readonly Component[]): Component[] {
  const form = entry.at(-1);
  if (form === undefined || dial.length === 0) return [...entry];
  return [...entry.slice(0, -1), { template: '/pages/call/side-by-side', data: { slots: [form, ...dial] } }];
}

/** Everything of the step, made once and laid out by its side. */
interface Parts {
  readonly found: SetUpRatio;
  readonly entry: readonly Component[];
  readonly dial: readonly Component[];
  readonly cards: Cards;
  readonly explained: Explained | undefined;
  readonly next: NextReading;
}

const leadComponents = ({ explained, found }: Parts): Component[] =>
  explained === undefined ? [] : [noticeComponent(ratioSentence(explained, found.setUp.method.spring))];
const explanationsComponents = ({ explained }: Parts): Component[] =>
  explained === undefined ? [] : [tableComponent(explanationsTable(explained))];

/** At the desk all of it stands open, the answer first, then what it rests on. */
function deskLayout(context: CallContext, parts: Parts): Component[] {
  const { found, entry, dial, cards, next } = parts;
  return [
    { template: '/parts/facts', data: { block: true, items: setUpFacts(context, found.setUp) } },
    ...besideDialComponents(entry, dial),
    resultComponent(found),
    ...cards.slots,
    ...leadComponents(parts),
    ...next.slots,
    ...next.outcomes,
    ...explanationsComponents(parts),
    passesComponent(context, found),
    ...groundComponents(found),
    foldComponent('through', 'Through the lift', throughLiftComponents(context, found)),
    foldComponent('where', 'Where the indicator sits', [indicatorComponent(found)]),
  ];
}

/** At the bench one thing is asked at a time, and what the answer rests on is one tap away. */
function benchLayout(context: CallContext, parts: Parts): Component[] {
  const { found, entry, dial, cards, next } = parts;
  const [caution, ...form] = entry;
  const isFirst = dial.length === 0 && !context.call.held;
  const [first, ...others] = cards.slots;
  const more = others.length === 1 ? 'One more question' : `${others.length} more questions`;
  const facts = { block: true, items: setUpFacts(context, found.setUp) };
  return [
    ...(caution === undefined ? [] : [caution]),
    ...(isFirst ? [indicatorComponent(found)] : []),
    ...form,
    ...dial,
    resultComponent(found),
    ...(first === undefined ? [] : [first]),
    ...(others.length === 0 ? [] : [foldComponent('more-questions', more, others, parts.cards.faulty)]),
    ...leadComponents(parts),
    ...next.slots,
    ...(parts.explained === undefined
      ? []
      : [
          foldComponent('why', 'What would have to be true, and how likely', [
            ...explanationsComponents(parts),
            ...next.outcomes,
          ]),
        ]),
    foldComponent('passes', `Every pass, ${found.readings.length} so far`, [passesComponent(context, found)]),
    ...(found.result === undefined
      ? []
      : [foldComponent('grounds', 'Each nominal, and where the ± comes from', groundComponents(found))]),
    foldComponent('through', 'Through the lift', throughLiftComponents(context, found)),
    ...(isFirst ? [] : [foldComponent('where', 'Where the indicator sits', [indicatorComponent(found)])]),
    foldComponent('method', 'How this is set up', [{ template: '/parts/facts', data: facts }]),
  ];
}

/** Method first, then passes, the answer with what it rests on, and what must be asked before it is believed. */
export function ratioPage(explanations: Explanations, { context, req, rejected }: StepPageInput): StepBody {
  const asked = rejected?.typed.setUpId ?? req.query['set-up'];
  const found = chosenSetUp(context, asked);
  if (found === undefined || req.query.new !== undefined || rejected?.typed.form === 'set-up') {
    return starting(context, req, found, rejected);
  }
  const explained = explanations.get(found.setUp.id);
  const form = readingForm(context, found, req.query);
  const parts: Parts = {
    found,
    entry: context.call.held ? [CLOSED] : [CAUTION, formComponent(form, rejected)],
    dial: dialComponents(found),
    cards: questionCards(context, found, rejected),
    explained,
    next:
      explained === undefined
        ? { slots: [], outcomes: [], forms: [] }
        : nextReadingComponents(context, found.setUp, explained, rejected),
  };
  const slots = context.side === 'bench' ? benchLayout(context, parts) : deskLayout(context, parts);
  return {
    forms: [form, ...parts.cards.forms, ...parts.next.forms],
    slots: [...slots, setUpsComponent(context, found)],
  };
}
