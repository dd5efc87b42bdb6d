import { CALLER_ROLES, ENGINE_STATES, GOALS, sentence } from '../../../shared/schemas/words.ts';
import type { Card, CardItem } from '../../../views/pages/pages.ts';
import { contactText } from '../../call/contact-text.ts';
import type { CallContext } from '../../call/context.ts';
import { notCoveredTexts } from '../../call/not-covered.ts';
import { openPromises, promiseState } from '../../call/promises.ts';
import type { TakeoverItem } from '../../call/takeover-items.ts';
import { dayText, momentText } from '../../web/dates.ts';
import { type CallFrame, linkOf } from '../frame.ts';
import { provesText, showsText } from '../photographs/report.ts';
import {
  foundSentences,
  nextSentences,
  nothingMissing,
  openQuestions,
  type WholeCall,
} from '../report/call-summary.ts';

/** A card with its lines, or with what is said where there is none. */
const card = (title: string, items: readonly CardItem[], none: string): Card => ({
  title,
  items: items.length === 0 ? [{ text: none }] : items,
});

export function callerCard(context: CallContext): Card {
  const { call, build } = context;
  const role = call.callerRole === '' ? '' : sentence(CALLER_ROLES, call.callerRole);
  return card(
    'Caller and goal',
    [
      {
        label: call.callerName || 'Name not said',
        text: [role, call.callBack || 'no call-back'].filter((each) => each !== '').join(', '),
      },
      { label: 'Goal', text: sentence(GOALS, call.goal) },
      {
        label: 'Engine',
        text: `${sentence(ENGINE_STATES, call.engineState)}. ${contactText(context)}.`,
      },
      {
        label: 'Build',
        text: `${build.label}, revision ${build.revision}`,
        note: `opened ${dayText(call.openedAt, new Date())}`,
      },
    ],
    '',
  );
}

/** What the answer still waits for, step by step; what is said and promised has a card of its own. */
export function missingCard(frame: CallFrame, context: CallContext): Card {
  const { missing } = context.assessment;
  const must = missing.filter((each) => each.must);
  // With all that the answer waits for there, what is not known is said all the same.
  const lacking = must.length > 0 ? must : missing;
  const items = lacking.map(({ step, sentence }, index) => ({
    label: lacking[index - 1]?.step === step ? '' : `${linkOf(frame, step)}:`,
    text: sentence,
  }));
  const asked = openQuestions(context).map((text, index) => ({
    label: index === 0 ? 'Open questions:' : '',
    text,
  }));
  const none = lacking.length === 0 && asked.length > 0 ? [{ text: nothingMissing(context) }] : [];
  return card('What is missing', [...items, ...none, ...asked], nothingMissing(context));
}

/** What is not worked out for this engine. */
export function notCoveredCard(context: CallContext): Card[] {
  const texts = notCoveredTexts(context);
  return texts.length === 0
    ? []
    : [
        card(
          'Not covered for this engine',
          texts.map((text) => ({ text })),
          '',
        ),
      ];
}

export function nextCard(whole: WholeCall): Card {
  const { base, assessment } = whole.context;
  const items: CardItem[] = nextSentences(whole).map((text) => ({ text }));
  const { next } = assessment;
  if (next !== undefined)
    items.push({ label: 'Step', text: linkOf(whole.frame, next.step), href: `${base}/steps/${next.step}` });
  return card('Next', items, '');
}

export function promisesCard({ notes }: CallContext): Card {
  return card(
    'Open promises, owner, date',
    openPromises(notes).map((note) => ({ text: note.body, note: promiseState(note) })),
    'None.',
  );
}

/** How many questions were answered; the report has each in words. */
function answeredItem({ answers, base }: CallContext): CardItem[] {
  if (answers.length === 0) return [];
  const count = answers.length === 1 ? 'one question' : `${answers.length} questions`;
  return [{ label: 'Answered:', text: count, href: `${base}/report` }];
}

/** Advice and notes: what was said, by whom, and on which figures and limits. */
export function saidCard({ context, open }: WholeCall): Card {
  const said = context.notes.filter((note) => note.kind !== 'promise' || note.doneAt !== undefined);
  return card(
    'What was said, by whom, on which limits',
    [
      ...said.map((note) => ({
        label: note.kind === 'note' ? '' : `${note.kind}:`,
        text: note.body,
        note: [note.restsOn, `${note.by}, ${momentText(note.at)}`].filter((each) => each !== '').join('; '),
      })),
      ...answeredItem(context),
      ...itemsFor(open, 'limits'),
    ],
    'Nothing yet.',
  );
}

export const foundCard = (whole: WholeCall): Card =>
  card(
    'Found so far',
    foundSentences(whole).map((text) => ({ text })),
    'Nothing yet.',
  );

type Open = WholeCall['open'];

/** What the steps have for a card, in the order of the steps. */
function itemsFor(open: Open, name: TakeoverItem['card']): CardItem[] {
  return [...open.values()]
    .flatMap((step) => step.takeover())
    .filter(({ card: own }) => own === name)
    .map(({ card: _, ...item }) => item);
}

/** Marks word for word, and which arm is on which valve now. */
export const marksCard = ({ open }: WholeCall): Card =>
  card('Marks word for word; arms and their valves now', itemsFor(open, 'marks'), 'No arm on record yet.');

export function swapsCard({ open }: WholeCall): Card[] {
  const items = itemsFor(open, 'swaps');
  return items.length === 0 ? [] : [card('Swaps, in order', items, '')];
}

/** Every raw reading that counts, struck passes with their reason. */
export const rawCard = ({ open }: WholeCall): Card =>
  card('Raw readings', itemsFor(open, 'raw'), 'No reading yet.');

/** What the kind of call needs beside the rest, and what any call must not lose. */
export function goalCard({ context, open }: WholeCall): Card {
  const { cards } = context.plan;
  const own = new Map(
    cards.flatMap((name) => {
      const step = open.get(name);
      return step === undefined ? [] : [[name, step] as const];
    }),
  );
  return card(
    'For this kind of call',
    [...itemsFor(own, 'of-goal'), ...itemsFor(open, 'of-any-goal')],
    'Nothing more.',
  );
}

const MOST_PHOTOGRAPHS = 6;

export function photographsCard(context: CallContext): Card {
  const { photographs } = context;
  const left = photographs.length - MOST_PHOTOGRAPHS;
  return card(
    `Photographs: ${photographs.length}`,
    [
      ...photographs.slice(-MOST_PHOTOGRAPHS).map((each) => ({
        text: each.caption === '' ? showsText(each) : each.caption,
        href: `${context.base}/photographs/${each.id}`,
        note: provesText(context, each),
      })),
      ...(left > 0 ? [{ text: `${left} more`, href: `${context.base}/photographs` }] : []),
    ],
    'No photograph yet.',
  );
}
