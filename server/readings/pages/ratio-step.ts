import type { Slot } from '../../../views/parts/part.ts';
import { foldSlot } from '../../calls/pages/fold-slot.ts';
import { type Again, formSlot, type StepBody } from '../../calls/pages/forms-on-page.ts';
import { type Sight, valveName } from '../../calls/pages/sight.ts';
import type { PageRequest } from '../../http/page-route.ts';
import type { Explained } from '../explain.ts';
import type { SetUpRatio } from '../ratio.ts';
import { dialView } from './dial-view.ts';
import { explanationsTable, leadSlot } from './explained-slots.ts';
import { indicatorSlot } from './indicator-slot.ts';
import { type NextReading, nextReadingSlots } from './next-reading.ts';
import { passesTable } from './passes-table.ts';
import { type Cards, questionCards } from './question-cards.ts';
import { budgetTable, groundsOf, nominalsTable, resultOf } from './ratio-answer.ts';
import { ratioName } from './ratio-words.ts';
import { readingForm } from './reading-form.ts';
import { setUpFacts } from './set-up-facts.ts';
import { setUpForm, setUpScreen } from './set-up-form.ts';
import { throughLiftSlots } from './through-lift-slots.ts';

const CAUTION: Slot = {
  template: '/parts/notice',
  data: {
    kind: 'caution',
    text: 'by hand at the crank bolt only, never the starter; nobody in line with a spring, hands out of the belts. Any resistance: stop, back off, find out.',
  },
};

const CLOSED: Slot = {
  template: '/parts/notice',
  data: { text: 'On hold: no set-up is started and no pass is kept until the hold is lifted.' },
};

/** The set-up a page is about: the one asked for, or else the newest. */
export function chosenSetUp(sight: Sight, asked: string | undefined): SetUpRatio | undefined {
  return sight.ratios.find((found) => found.setUp.id === asked) ?? sight.ratios.at(-1);
}

function setUpLinks(sight: Sight, chosen: SetUpRatio): Slot {
  const at = `${sight.base}/steps/ratio`;
  const others = sight.setUps.filter((setUp) => setUp.id !== chosen.setUp.id);
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

const resultSlot = (found: SetUpRatio): Slot => ({ template: '/parts/result', data: resultOf(found) });

function groundSlots(found: SetUpRatio): Slot[] {
  const tables = [nominalsTable(found), budgetTable(found)].filter((slot) => slot !== undefined);
  return [...tables, ...groundsOf(found)];
}

function passesOf(sight: Sight, found: SetUpRatio): Slot {
  const caption = `Passes of set-up ${found.setUp.number}, ${valveName(found.setUp)}`;
  return passesTable(found.readings, caption, (reading) => `${sight.base}/readings/${reading.id}`);
}

function lastDial(found: SetUpRatio): Slot[] {
  const last = found.readings.findLast(
    (reading) => reading.replacedBy === undefined && !reading.struck && !reading.kind.startsWith('stated-'),
  );
  const drawn = last === undefined ? undefined : dialView(found.setUp, last);
  return drawn === undefined ? [] : [drawn];
}

function starting(sight: Sight, given: PageRequest, found: SetUpRatio | undefined, again?: Again): StepBody {
  if (sight.call.held) return { forms: [], slots: [CLOSED] };
  if (sight.side === 'bench' && again === undefined) {
    const { form, position } = setUpScreen(sight, found?.setUp, given.query);
    return { forms: [form], slots: [CAUTION, formSlot(form, again)], screens: { position } };
  }
  const form = setUpForm(sight, found?.setUp, given.query);
  return { forms: [form], slots: [CAUTION, formSlot(form, again)] };
}

/** At the desk the dial stands beside the entry, to be told over the phone. */
function atDesk(entry: readonly Slot[], dial: readonly Slot[]): Slot[] {
  const form = entry.at(-1);
  if (form === undefined || dial.length === 0) return [...entry];
  return [...entry.slice(0, -1), { template: '/pages/call/side-by-side', data: { slots: [form, ...dial] } }];
}

/** Everything of the step, made once and laid out by its side. */
interface Parts {
  readonly found: SetUpRatio;
  readonly entry: readonly Slot[];
  readonly dial: readonly Slot[];
  readonly cards: Cards;
  readonly explained: Explained | undefined;
  readonly next: NextReading;
}

const leadOf = ({ explained, found }: Parts): Slot[] =>
  explained === undefined ? [] : [leadSlot(explained, found.setUp.method.spring)];
const tableOf = ({ explained }: Parts): Slot[] =>
  explained === undefined ? [] : [explanationsTable(explained)];

/** At the desk all of it stands open, the answer first, then what it rests on. */
function deskLayout(sight: Sight, parts: Parts): Slot[] {
  const { found, entry, dial, cards, next } = parts;
  return [
    { template: '/parts/facts', data: { block: true, items: setUpFacts(sight, found.setUp) } },
    ...atDesk(entry, dial),
    resultSlot(found),
    ...cards.slots,
    ...leadOf(parts),
    ...next.slots,
    ...next.outcomes,
    ...tableOf(parts),
    passesOf(sight, found),
    ...groundSlots(found),
    foldSlot('through', 'Through the lift', throughLiftSlots(sight, found)),
    foldSlot('where', 'Where the indicator sits', [indicatorSlot(found)]),
  ];
}

/** At the bench one thing is asked at a time, and what the answer rests on is one tap away. */
function benchLayout(sight: Sight, parts: Parts): Slot[] {
  const { found, entry, dial, cards, next } = parts;
  const [caution, ...form] = entry;
  const isFirst = dial.length === 0 && !sight.call.held;
  const [first, ...others] = cards.slots;
  const more = others.length === 1 ? 'One more question' : `${others.length} more questions`;
  const facts = { block: true, items: setUpFacts(sight, found.setUp) };
  return [
    ...(caution === undefined ? [] : [caution]),
    ...(isFirst ? [indicatorSlot(found)] : []),
    ...form,
    ...dial,
    resultSlot(found),
    ...(first === undefined ? [] : [first]),
    ...(others.length === 0 ? [] : [foldSlot('more-questions', more, others, parts.cards.faulty)]),
    ...leadOf(parts),
    ...next.slots,
    ...(parts.explained === undefined
      ? []
      : [
          foldSlot('why', 'What would have to be true, and how likely', [
            ...tableOf(parts),
            ...next.outcomes,
          ]),
        ]),
    foldSlot('passes', `Every pass, ${found.readings.length} so far`, [passesOf(sight, found)]),
    ...(found.result === undefined
      ? []
      : [foldSlot('grounds', 'Each nominal, and where the ± comes from', groundSlots(found))]),
    foldSlot('through', 'Through the lift', throughLiftSlots(sight, found)),
    ...(isFirst ? [] : [foldSlot('where', 'Where the indicator sits', [indicatorSlot(found)])]),
    foldSlot('method', 'How this is set up', [{ template: '/parts/facts', data: facts }]),
  ];
}

/** Method first, then passes, the answer with what it rests on, and what must be asked before it is believed. */
export function ratioStep(
  sight: Sight,
  given: PageRequest,
  again: Again | undefined,
  explained: Explained | undefined,
): StepBody {
  const asked = again?.typed.setUpId ?? given.query['set-up'];
  const found = chosenSetUp(sight, asked);
  if (found === undefined || given.query.new !== undefined || again?.typed.form === 'set-up') {
    return starting(sight, given, found, again);
  }
  const form = readingForm(sight, found, given.query);
  const parts: Parts = {
    found,
    entry: sight.call.held ? [CLOSED] : [CAUTION, formSlot(form, again)],
    dial: lastDial(found),
    cards: questionCards(sight, found, again),
    explained,
    next:
      explained === undefined
        ? { slots: [], outcomes: [], forms: [] }
        : nextReadingSlots(sight, found.setUp, explained, again),
  };
  const slots = sight.side === 'bench' ? benchLayout(sight, parts) : deskLayout(sight, parts);
  return {
    forms: [form, ...parts.cards.forms, ...parts.next.forms],
    slots: [...slots, setUpLinks(sight, found)],
  };
}
